/**
 * A part marked out in plan as the cutter saws it: x to the right, y up the page, z down from its upper face.
 */
import { between, hull, lessThan, lofted, type Solid, together } from "../solids/manifold.ts";
import { direction, outer, plus, type V } from "../solids/vectors.ts";
import type { Mouth } from "./mates.ts";
import type { Read, SheetRead } from "./reading.ts";

export function cutFlat(sheet: SheetRead): Solid {
  const corners = sheet.all("corner");
  const layers = [...new Set(corners.map((corner) => corner.mark.datum))];
  const slabs = layers.map((layer) => {
    const of = (kind: string) => sheet.all(kind).filter((corner) => corner.mark.datum === layer);
    const numbers = [...new Set(of("opening").map((corner) => corner.number("number")))];
    const openings = numbers.map((number) =>
      of("opening").filter((corner) => corner.number("number") === number),
    );
    return openings.map(lofting).reduce(lessThan, lofting(of("corner")));
  });
  return [...hollowOf(sheet), ...boresOf(sheet)].reduce(lessThan, together(slabs));
}

/** What lies on the outline runs out of it there: no skin thinner than this is left, mm. */
const SKIN = 1;
const ON = 0.12;

/** The way out of an outline for a point on it, none for others. */
function outOf(edge: readonly [number, number][], [x, y]: V): V {
  for (const [k, [ax, ay]] of edge.entries()) {
    const [bx, by] = edge[(k + 1) % edge.length]!;
    const long = Math.hypot(bx - ax, by - ay);
    if (long === 0) continue;
    const along = ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / long;
    const out: V = [(by - ay) / long, (ax - bx) / long, 0];
    if (along > -ON && along < long + ON && Math.abs((x - ax) * out[0] + (y - ay) * out[1]) < ON) return out;
  }
  return [0, 0, 0];
}

/** A hollow is cut from each of its contours down to the next, at the depths told. */
function hollowOf(sheet: SheetRead): Solid[] {
  const spots = sheet.all("hollow");
  // At the face it is cut in, or where a bevel ends below that.
  const edge = sheet
    .all("corner")
    .filter((corner) => corner.mark.datum === "seat")
    .map((corner): [number, number] => [corner.long("right"), corner.long("up")]);
  const numbers = [...new Set(spots.map((spot) => spot.number("number")))];
  const contours = numbers.map((number) =>
    spots
      .filter((spot) => spot.number("number") === number)
      .map((spot): V => [spot.longOr("right", 0), spot.longOr("up", 0), -spot.longOr("deep", 0)])
      .map((p) => plus(p, outOf(edge, p), SKIN)),
  );
  const [rim] = contours;
  if (!rim) return [];
  // From above the face, so that nothing is left of it.
  const above = rim.map(([x, y, z]): V => [x, y, z + OUT]);
  return [above, ...contours].slice(0, -1).map((contour, k) => between(contour, contours[k]!));
}

/** Beyond a face, so that nothing is left of a bore; mm. */
const OUT = 6;

/** Each socket bored from the face it is set out on, along its sight line, and reamed where it tapers. */
function boresOf(sheet: SheetRead): Solid[] {
  return placedBores(sheet).map(({ mark, from, along, lean, thick }) => {
    const u = direction(outer(along, [1, 0, 0]));
    const v = outer(along, u);
    const run = mark.longOr("tapers over", thick / Math.cos(lean));
    const mouth = mark.long("diameter") / 2;
    const rate = (mark.longOr("at its end", 2 * mouth) / 2 - mouth) / run;
    const far = mark.longOr("deep", run + OUT / Math.cos(lean) + mouth);
    const ring = (at: number) =>
      Array.from({ length: FLATS }, (_, k): V => {
        const [c, s] = [Math.cos((2 * Math.PI * k) / FLATS), Math.sin((2 * Math.PI * k) / FLATS)];
        const r = mouth + rate * at;
        return plus(plus(plus(from, along, at), u, r * c), v, r * s);
      });
    return hull([...ring(-OUT - mouth), ...ring(far)]);
  });
}

/** Each socket as something that is entered. */
export const socketsOf = (sheet: SheetRead): Mouth[] =>
  placedBores(sheet).map(({ mark, from, along }) => ({ mark, at: from, into: along }));

interface Bore {
  mark: Read;
  /** On the face that it is set out on, and its way in. */
  from: V;
  along: V;
  lean: number;
  thick: number;
}

function placedBores(sheet: SheetRead): Bore[] {
  const corners = sheet.all("corner");
  const rights = corners.map((corner) => corner.long("right"));
  const middle = (Math.min(...rights) + Math.max(...rights)) / 2;
  const thick = Math.max(...corners.map((corner) => corner.long("to")));
  return sheet.all("bore", "through-bore").map((mark) => {
    const side = mark.word("side") === "right" ? -1 : 1;
    const way = mark.word("towards") === "right" ? -1 : 1;
    const [sight, lean] = [mark.angle("sight line"), leanOf(mark)];
    const down = mark.mark.face === "top";
    // Into the seat: away from the way that the far end leans.
    const along: V = [
      -way * Math.sin(sight) * Math.sin(lean),
      -Math.cos(sight) * Math.sin(lean),
      (down ? -1 : 1) * Math.cos(lean),
    ];
    const from: V = [middle + side * mark.longOr("out", 0), mark.long("behind"), down ? 0 : -thick];
    return { mark, from, along, lean, thick };
  });
}

/** By the rise in a run where that is printed: the finer figure. */
const leanOf = (mark: Read): number =>
  mark.has("rise in 200") ? Math.atan(mark.long("rise in 200") / 200) : mark.angle("lean");

const FLATS = 64;

function lofting(corners: readonly Read[]): Solid {
  const top = corners.map((corner): [number, number] => [corner.long("right"), corner.long("up")]);
  const under = corners.map((corner): [number, number] => [
    corner.longOr("right below", corner.long("right")),
    corner.longOr("up below", corner.long("up")),
  ]);
  return lofted(top, under, corners[0]!.long("from"), corners[0]!.long("to"));
}
