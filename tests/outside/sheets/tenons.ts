/**
 * Tenons by what the sheet says of them.
 */
import { bar, beyond, hull, lessThan, roundBar, type Solid, together } from "../solids/manifold.ts";
import { direction, inner, minus, outer, plus, times, type V } from "../solids/vectors.ts";
import type { Tenon } from "./mates.ts";
import type { Read, SheetRead } from "./reading.ts";
import type { Flat } from "./stick.ts";

/** What a tenon is set out on: the shoulder, the stick's way out, and its faces there. */
export interface TenonPlace {
  shoulder: Flat;
  outward: V;
  faces: readonly string[];
  way: (face: number) => V;
  /** How far a point lies inside a face. */
  inside: (face: number, p: V) => number;
}

interface Section {
  root: V;
  along: V;
  thick: V;
  wide: V;
  halfThick: number;
  halfWide: number;
}

const FAR = 150;

/** What stands beyond the shoulder, and what is bored into the end. */
export function tenonOf(sheet: SheetRead, end: string, place: TenonPlace): { stands?: Solid; bored?: Solid } {
  const mark = sheet.all(...TENONS).find((each) => each.mark.face === end);
  if (!mark) return {};
  const kind = mark.mark.kind;
  const over = widthOver(mark);
  const section = sectionOf(mark, place, over);
  const { root, along, thick, wide, halfThick } = section;
  const long = mark.long("long");
  const at = (w: number) => plus(root, wide, w);
  const within = (solid: Solid, deep: number) =>
    beyond(
      beyond(solid, place.shoulder.at, place.shoulder.out),
      plus(place.shoulder.at, place.shoulder.out, deep),
      times(place.shoulder.out, -1),
    );
  if (kind === "round-tenon") {
    if (mark.has("at its end")) return { stands: within(coneOf(section, mark, place), long) };
    return { stands: within(roundBar(root, along, FAR, thick, wide, halfThick), long) };
  }
  if (kind === "dowels") {
    const { at: mouth, out } = place.shoulder;
    const bores = middles(mark).map((middle) => {
      // Each hole begins where its own line meets the shoulder, which may slant.
      const root = at(over / 2 - middle);
      const from = plus(root, along, inner(minus(mouth, root), out) / inner(along, out));
      return beyond(
        roundBar(from, along, mark.long("bore"), thick, wide, halfThick),
        plus(from, along, 3),
        times(along, -1),
      );
    });
    return { bored: together(bores) };
  }
  if (kind === "fork") {
    const [outer0, outer1] = [0, 2].map((by) => {
      const face = place.faces.indexOf(mark.word("cheeks"));
      return mark.long(place.faces[(face + by) % 4]!);
    }) as [number, number];
    const whole = hull(
      [halfThick + outer0, -halfThick - outer1].flatMap((t) =>
        [section.halfWide, -section.halfWide].flatMap((w) =>
          [-FAR, FAR].map((s) => plus(plus(at(w), thick, t), along, s)),
        ),
      ),
    );
    const tines = lessThan(within(whole, long), bar(root, along, FAR, thick, halfThick, wide, 2 * FAR));
    return { stands: mitred(tines, sheet, end, mark, section, place) };
  }
  const cheeks = mark.has("count")
    ? middles(mark).map((middle) =>
        bar(at(over / 2 - middle), along, FAR, thick, halfThick, wide, mark.long("wide") / 2),
      )
    : [bar(root, along, FAR, thick, halfThick, wide, section.halfWide)];
  if (kind === "loose-tenon") {
    const { at: mouth, out } = place.shoulder;
    const deep = beyond(together(cheeks), plus(mouth, out, -mark.long("bore")), out);
    return { bored: beyond(deep, plus(mouth, out, 3), times(out, -1)) };
  }
  const parts = [within(together(cheeks), long), ...haunch(sheet, end, section, place)];
  return { stands: mitred(together(parts), sheet, end, mark, section, place) };
}

/** Each tenon, dowel, tongue or tine at an end as something that enters: its middle at the shoulder, its way, and the way its cheeks look. */
export function tenonsAt(sheet: SheetRead, end: Read, place: TenonPlace): Tenon[] {
  const mark = sheet.all(...TENONS).find((each) => each.mark.face === end.mark.face);
  if (!mark) return [];
  const over = widthOver(mark);
  const { root, along, thick, wide, halfThick } = sectionOf(mark, place, over);
  const { at: mouth, out } = place.shoulder;
  const isRound = mark.mark.kind === "round-tenon" || mark.mark.kind === "dowels";
  const tenon = (off: V): Tenon => {
    const p = plus(root, off);
    const at = plus(p, along, inner(minus(mouth, p), out) / inner(along, out));
    // Round work turns in its hole until its shoulder closes.
    return { end, at, into: along, ...(isRound ? {} : { thick, face: out }) };
  };
  if (mark.mark.kind !== "fork") return middles(mark).map((middle) => tenon(times(wide, over / 2 - middle)));
  const face = place.faces.indexOf(mark.word("cheeks"));
  return [1, -1].map((sign) => {
    const tine = mark.long(place.faces[(face + 1 - sign) % 4]!);
    return tenon(times(thick, sign * (halfThick + tine / 2)));
  });
}

const TENONS = ["tenon", "round-tenon", "loose-tenon", "dowels", "fork"];

function mitred(
  tenon: Solid,
  sheet: SheetRead,
  end: string,
  mark: Read,
  section: Section,
  place: TenonPlace,
): Solid {
  let stands = tenon;
  for (const mitre of sheet.all("mitre").filter((each) => each.mark.face === end)) {
    const flat = mitreOf(mitre, mark, section, place);
    stands = beyond(stands, flat.at, times(flat.out, -1));
  }
  return stands;
}

/** A tapered tenon: as thick as told where its line meets the shoulder, and where it is as deep as it is long. */
function coneOf(
  { root, along, thick, wide, halfThick }: Section,
  mark: Read,
  { shoulder }: TenonPlace,
): Solid {
  const run = mark.long("long") / inner(along, shoulder.out);
  const rate = (mark.long("at its end") / 2 - halfThick) / run;
  const ring = (at: number) =>
    Array.from({ length: 64 }, (_, k): V => {
      const [c, s] = [Math.cos((2 * Math.PI * k) / 64), Math.sin((2 * Math.PI * k) / 64)];
      const r = halfThick + rate * at;
      return plus(plus(plus(root, along, at), thick, r * c), wide, r * s);
    });
  return hull([...ring(-halfThick), ...ring(run + halfThick)]);
}

/** From the first edge's face to the middles, less that face's shoulder: from the upper side of all of them. */
function middles(mark: Read): number[] {
  if (!mark.has("count")) return [mark.longOr("wide", mark.long("thick")) / 2];
  const edge = mark.long(mark.word("edges"));
  return Array.from({ length: mark.number("count") }, (_, k) => mark.long(`middle ${k + 1}`) - edge);
}

function widthOver(mark: Read): number {
  const wide = mark.longOr("wide", mark.long("thick"));
  if (!mark.has("count")) return wide;
  const all = middles(mark);
  return all[all.length - 1]! - all[0]! + wide;
}

/** The section's middle where it meets the shoulder, and how it lies. */
function sectionOf(mark: Read, place: TenonPlace, over: number): Section {
  const { faces, way, shoulder, outward } = place;
  const face = (name: string) => faces.indexOf(name);
  const [cheek, edge] = [face(mark.word("cheeks")), face(mark.word("edges"))];
  const opposite = (k: number) => (k + 2) % 4;
  const lean = (k: number) => Math.tan(mark.towards("leans to", faces[k]!, faces[opposite(k)]!, "angle"));
  const along = direction(plus(plus(outward, way(cheek), lean(cheek)), way(edge), lean(edge)));
  const sign = mark.has("turned to") && mark.word("turned to") !== faces[edge] ? -1 : 1;
  const turn = sign * mark.angleOr("turn", 0);
  const flat = plus(times(way(cheek), Math.cos(turn)), way(edge), Math.sin(turn));
  const across = direction(outer(along, flat));
  const wide = inner(across, way(edge)) < 0 ? times(across, -1) : across;
  const cross = direction(outer(wide, along));
  const thick = inner(cross, way(cheek)) < 0 ? times(cross, -1) : cross;
  // Halfway between the places that its distances from two opposite faces give.
  let root = shoulder.at;
  for (let round = 0; round < 8; round++) {
    for (const k of [cheek, edge]) {
      const [one, other] = [k, opposite(k)];
      const told = mark.has(faces[one]!) ? mark.long(faces[one]!) - mark.long(faces[other]!) : 0;
      const now = place.inside(one, root) - place.inside(other, root);
      root = plus(root, way(k), (now - told) / 2);
    }
    const off = inner(minus(shoulder.at, root), shoulder.out) / inner(outward, shoulder.out);
    root = plus(root, outward, off);
  }
  return { root, along, thick, wide, halfThick: mark.long("thick") / 2, halfWide: over / 2 };
}

function haunch(sheet: SheetRead, end: string, section: Section, place: TenonPlace): Solid[] {
  const mark = sheet.all("haunch", "sloped-haunch").find((each) => each.mark.face === end);
  if (!mark) return [];
  const { root, along, thick, wide, halfThick, halfWide } = section;
  const sloped = mark.mark.kind === "sloped-haunch";
  const long = mark.long("long");
  const { shoulder } = place;
  const rate = inner(along, shoulder.out);
  const meets = (p: V) => plus(p, along, inner(minus(shoulder.at, p), shoulder.out) / rate);
  const points = [halfThick, -halfThick].flatMap((t) =>
    [
      [halfWide, long],
      [halfWide + mark.long("wide"), sloped ? 0 : long],
    ].flatMap(([w, deep]) => {
      const p = meets(plus(plus(root, thick, t), wide, w!));
      return [p, plus(p, along, deep! / rate)];
    }),
  );
  return [hull(points)];
}

function mitreOf(mitre: Read, tenon: Read, section: Section, { shoulder, faces }: TenonPlace): Flat {
  const { root, along, thick, wide, halfThick, halfWide } = section;
  const sign = mitre.word("cheek") === tenon.word("cheeks") ? 1 : -1;
  const edge = tenon.word("edges");
  const other = faces[(faces.indexOf(edge) + 2) % 4]!;
  const rate = inner(along, shoulder.out);
  const on = (w: number, at: number): V => {
    const p = plus(plus(root, thick, sign * halfThick), wide, w);
    return plus(p, along, inner(minus(shoulder.at, p), shoulder.out) / rate + at);
  };
  const a = on(halfWide, mitre.long(`at ${edge}`));
  const b = on(-halfWide, mitre.long(`at ${other}`));
  const angle = mitre.angle("angle");
  const run = plus(times(along, Math.cos(angle)), thick, -sign * Math.sin(angle));
  const out = direction(outer(minus(a, b), run));
  return { at: a, out: inner(out, along) < 0 ? times(out, -1) : out };
}
