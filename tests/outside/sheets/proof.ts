/**
 * Every part of a chair cut from its sheet and compared with the chair's own solid.
 */

import type { Chair } from "../../../server/chair/chair.ts";
import { railNamed } from "../../../server/chair/member.ts";
import { facesAt } from "../../../server/chair/posts/post-query.ts";
import type { Step } from "../../../server/drawing/markout/figures.ts";
import { sheetsAsked } from "../../../server/drawing/markout/pages.ts";
import type { Sheets } from "../../../server/drawing/markout/sheet/sheet.ts";
import { height } from "../../../server/geometry/plane.ts";
import type { Convex, Plane } from "../../../server/geometry/solid.ts";
import { dot } from "../../../server/geometry/vec.ts";
import { sweepSolids } from "../solids/manifold.ts";
import { strayOf, type Wanted } from "./compare.ts";
import { cutPart } from "./cutter.ts";
import { inMillimetres } from "./reading.ts";
import { overStock } from "./stock.ts";
import { poseOf, poseOfBow, wantedFlat, wantedOf } from "./wanted.ts";

export interface Stray {
  part: string;
  /** Left standing and cut away, mm. */
  proud: number;
  missing: number;
  /** How much larger than the stock its sheet names, mm. */
  over?: number;
}

/** What a sheet's step lets a cut stray: the hundredths of a template's joint aside, 0.3 mm; in inches one step. */
export const allowed = (sheets: Sheets): number => (sheets.unit === "in" ? stepOf(sheets) : 0.3);

/** The smallest step of its printed lengths, mm. */
export const stepOf = ({ step, unit }: Sheets): number => step * inMillimetres[unit];

/** A tenon this near to a face beside it breaks out there, or as good as, mm. */
const THIN = 0.4;

/**
 * Whether a mortise breaks out of squared stuff beside itself, in a post or in a rail's own end: its wall runs out through the face at so flat
 * an angle that a twentieth of a millimetre of rounding moves the place by half of one.
 */
export const breaksOut = (chair: Chair): boolean =>
  [...chair.joints.values()].some(({ part, entered, root, direction, tenon, socket }) => {
    const runsOut = (faces: readonly Plane[], solids: readonly Convex[]) =>
      faces
        .filter(({ normal }) => Math.abs(dot(normal, direction)) < 0.5)
        .some((face) => solids.some(({ points }) => points.some((p) => height(face, p) > -THIN)));
    const post = chair.posts.get(entered.name);
    const own = (chair.members.get(part)?.faces ?? []).map(({ plane }) => plane);
    return runsOut(post ? Object.values(facesAt(post, root[2]) ?? {}) : [], tenon) || runsOut(own, socket);
  });

/** The sheets as anyone else would read them: through their text. */
export const readSheets = (chair: Chair, step?: Step): Sheets =>
  JSON.parse(JSON.stringify(sheetsAsked(chair, step === undefined ? {} : { step }))) as Sheets;

/** The farthest that a part is out in any way, mm. */
export const farthestOut = ({ proud, missing, over = 0 }: Stray): number => Math.max(proud, missing, over);

/** `every` so many of the parts are cut. */
export function straysOf(chair: Chair, sheets: Sheets, every = 1): Stray[] {
  return sheets.parts
    .filter(({ marks }) => marks[0]?.kind !== "mirror")
    .filter((_, k) => k % every === 0)
    .flatMap((part) => {
      const [name = ""] = part.name.split(", ");
      const cut = cutPart(part, sheets.unit);
      // Nothing strays from nothing.
      if (!(cut.volume() > 0)) throw new Error(`nothing is left of ${name}`);
      const stray = strayOf(cut, wantedFor(chair, name));
      const over = overStock(part, sheets.unit, cut);
      sweepSolids();
      return [{ part: name, ...stray, ...(over !== undefined && { over }) }];
    });
}

function wantedFor(chair: Chair, name: string): Wanted {
  const stick = railNamed(chair, name) ?? chair.posts.get(name);
  if (stick) return wantedOf(chair, stick, poseOf(chair, stick)!);
  const bow = chair.bows.get(name);
  if (bow) return wantedOf(chair, bow, poseOfBow(bow));
  return wantedFlat(chair, chair.blocks.get(name) ?? chair.seat!);
}
