/**
 * Cuts a part from nothing but its sheet.
 */
import type { SheetPart, Sheets } from "../../../server/drawing/markout/sheet/sheet.ts";
import { beyond, lessThan, type Solid, together } from "../solids/manifold.ts";
import { inner, minus, plus, times, type V } from "../solids/vectors.ts";
import { Bow } from "./bow.ts";
import { cutFlat } from "./flat.ts";
import { mortisesOf } from "./mortises.ts";
import { type Read, SheetRead } from "./reading.ts";
import { restCuts, restStrips } from "./rests.ts";
import { Stick } from "./stick.ts";
import { type TenonPlace, tenonOf } from "./tenons.ts";
import { TurnedStick } from "./turned.ts";

export function cutPart(part: SheetPart, unit: Sheets["unit"]): Solid {
  const sheet = new SheetRead(part, unit);
  switch (sheet.stock.word("is")) {
    case "flat":
      return cutFlat(sheet);
    case "bent":
      return new Bow(sheet).cut();
    case "turned":
      return new TurnedStick(sheet).cut();
    default:
      return cutSquared(sheet);
  }
}

function cutSquared(sheet: SheetRead): Solid {
  const stick = new Stick(sheet);
  let wood = stick.wood();
  const cuts = stick.ends.map((end) => stick.cut(end, sheet));
  stick.ends.forEach((end, k) => {
    const { at, out } = cuts[k]!;
    wood = beyond(wood, plus(at, out, end.longOr("runs on", 0)), times(out, -1));
  });
  // From shoulder to shoulder: the tenons stay as they are.
  wood = restCuts(sheet, stick).reduce(lessThan, wood);
  const strips = restStrips(sheet, stick);
  if (strips.length > 0) wood = together([wood, ...strips]);
  stick.ends.forEach((end, k) => {
    const { stands, bored } = tenonOf(sheet, end.mark.face, placeOf(stick, end, cuts[k]!));
    if (stands) wood = together([wood, stands]);
    if (bored) wood = lessThan(wood, bored);
  });
  return mortisesOf(sheet, stick).reduce(lessThan, wood);
}

/** What the tenon at an end is set out on. */
export function placeOf(stick: Stick, end: Read, shoulder: { at: V; out: V }): TenonPlace {
  const run = stick.run(end.mark.datum);
  return {
    shoulder,
    outward: stick.outward(end),
    faces: stick.faces,
    way: (face) => stick.wayAt(face, end),
    inside: (face, p) => {
      const { at, out } = stick.flat(face, run, inner(minus(p, run.origin), run.way));
      const way = stick.wayAt(face, end);
      // Square to the stick, not to a face that slopes along it.
      return inner(minus(at, p), out) / inner(way, out);
    },
  };
}
