/**
 * Pieces made by their sheets alone, put where they stand in the chair: how far the wood of one lies in that of another it is joined to.
 */
import type { Chair } from "../../../server/chair/chair.ts";
import type { SheetPart, Sheets } from "../../../server/drawing/markout/sheet/sheet.ts";
import { placed, type Solid, sweepSolids } from "../solids/manifold.ts";
import { carried } from "./carried.ts";
import { strayOf } from "./compare.ts";
import { cutPart } from "./cutter.ts";
import { SheetRead } from "./reading.ts";

export interface Overlap {
  joint: string;
  /** mm */
  by: number;
}

/** The overlaps of every joint between two parts that are drawn, not mirrored; `every` so many of the joints are looked at. */
export function overlapsOf(chair: Chair, sheets: Sheets, every = 1): Overlap[] {
  const drawn = new Map(
    sheets.parts
      .filter(({ marks }) => marks[0]?.kind !== "mirror")
      .map((part) => [part.name.split(", ")[0]!, part] as const),
  );
  const joints = [...chair.joints.values()].filter(
    ({ part, entered, tenon }) => drawn.has(part) && drawn.has(entered.name) && tenon.length > 0,
  );
  return joints
    .filter((_, k) => k % every === 0)
    .map(({ name, part, entered }) => {
      const stands = (each: string): Solid =>
        placed(cutPart(drawn.get(each)!, sheets.unit), carried(chair, each, each, false)!.place);
      const [one, other] = [stands(part), stands(entered.name)];
      const into = (a: Solid, b: Solid) => strayOf(a, { wood: [a], out: [b] }).proud;
      const by = Math.min(into(one, other), into(other, one));
      sweepSolids();
      return { joint: name, by: Math.max(0, by - runsOn(drawn.get(part)!, sheets.unit)) };
    });
}

/** How far wood runs on past its shoulders, to be hollowed until it fits round work, mm. */
const runsOn = (part: SheetPart, unit: Sheets["unit"]): number =>
  Math.max(0, ...new SheetRead(part, unit).all("end").map((end) => end.longOr("runs on", 0)));
