/**
 * Rebates, grooves and strips as the cutter makes them: from station to station along the stick.
 */
import { beyond, hull, type Solid, together } from "../solids/manifold.ts";
import { direction, inner, minus, outer, times, type V } from "../solids/vectors.ts";
import type { Read, SheetRead } from "./reading.ts";
import type { Section, Stick } from "./stick.ts";

/** Further out than any wood. */
const OPEN = 100;

interface Box {
  up: [number, number];
  out: [number, number];
}

/** What is cut away along the stick. */
export const restCuts = (sheet: SheetRead, stick: Stick): Solid[] =>
  sheet.all("rebate", "groove").map((mark) => {
    const box = mark.mark.kind === "rebate" ? rebate(mark) : groove(mark);
    const solid = swept(stick, box);
    if (!mark.has("from")) return solid;
    return beyond(beyond(solid, [mark.long("from"), 0, 0], [1, 0, 0]), [mark.long("to"), 0, 0], [-1, 0, 0]);
  });

/** What is fixed to it. */
export const restStrips = (sheet: SheetRead, stick: Stick): Solid[] =>
  sheet.all("strip").map((mark) => {
    const [at, wide, thick] = [mark.long("at"), mark.long("wide"), mark.long("thick")];
    const inside = mark.mark.face === "inside";
    const solid = swept(stick, ({ inside: y, outside, square }) => ({
      up: [-at - wide, -at],
      out: inside ? [y - thick * square, y] : [outside, outside + thick * square],
    }));
    return (["from", "to"] as const).reduce((left, end) => {
      const near = mark.long(end);
      const across = (x: number, far: boolean) => {
        const { inside: y, outside, square } = stick.sectionAt(x);
        return inside ? y - (far ? thick * square : 0) : outside + (far ? thick * square : 0);
      };
      const point = (x: number, up: number, far: boolean): V => [x, up, across(x, far)];
      const on = point(near, -at, false);
      const far = point(mark.longOr(`${end} at its far side`, near), -at, true);
      const below = point(mark.longOr(`${end} below`, near), -at - wide, false);
      const out = direction(outer(minus(far, on), minus(below, on)));
      const inward = (end === "from" ? 1 : -1) * out[0] > 0 ? out : times(out, -1);
      expectUpright(inner(inward, [1, 0, 0]));
      return beyond(left, on, inward);
    }, solid);
  });

function expectUpright(rate: number): void {
  if (Math.abs(rate) < 0.2) throw new Error("a strip's end runs along it");
}

function rebate(mark: Read): (section: Section) => Box {
  const [wide, deep] = [mark.long("wide"), mark.long("deep")];
  const top = mark.word("edge") === "top";
  const inside = mark.mark.face === "inside";
  return ({ inside: y, outside, straightBottom, square }) => ({
    up: top ? [-deep, OPEN] : [straightBottom - OPEN, straightBottom + deep],
    out: inside ? [y - OPEN, y + wide * square] : [outside - wide * square, outside + OPEN],
  });
}

function groove(mark: Read): (section: Section) => Box {
  const [wide, deep, at] = [mark.long("wide"), mark.long("deep"), mark.long("at")];
  const { face } = mark.mark;
  return ({ inside, outside, straightBottom, square }) => {
    if (face === "inside") return { up: [-at - wide, -at], out: [inside - OPEN, inside + deep * square] };
    if (face === "outside") return { up: [-at - wide, -at], out: [outside - deep * square, outside + OPEN] };
    const out: [number, number] = [outside - (at + wide) * square, outside - at * square];
    return face === "top"
      ? { up: [-deep, OPEN], out }
      : { up: [straightBottom - OPEN, straightBottom + deep], out };
  };
}

function swept(stick: Stick, box: (section: Section) => Box): Solid {
  const rings = stick.sections().map((section) => {
    const { up, out } = box(section);
    return up.flatMap((u) => out.map((o): V => [section.at, u, o]));
  });
  const [first, second] = [rings[0]!, rings[1]!];
  const [before, last] = [rings[rings.length - 2]!, rings[rings.length - 1]!];
  const on = (from: V[], to: V[]) =>
    to.map((p, k): V => {
      const run = minus(p, from[k]!);
      const t = OPEN / Math.abs(run[0]);
      return [p[0] + run[0] * t, p[1] + run[1] * t, p[2] + run[2] * t];
    });
  const all = [on(second, first), ...rings, on(before, last)];
  return together(all.slice(1).map((ring, k) => hull([...all[k]!, ...ring])));
}
