/**
 * What enters and what is entered, by nothing but the sheets: where a part is put together with others.
 */
import type { SheetPart, Sheets } from "../../../server/drawing/markout/sheet/sheet.ts";
import type { V } from "../solids/vectors.ts";
import { Bow } from "./bow.ts";
import { placeOf } from "./cutter.ts";
import { socketsOf } from "./flat.ts";
import { lapsOf, mouthsOf } from "./mortises.ts";
import { type Read, SheetRead } from "./reading.ts";
import { Stick } from "./stick.ts";
import { tenonsAt } from "./tenons.ts";
import { TurnedStick } from "./turned.ts";

/** A place of a joint as one part has it, mm in the cutter's own directions. */
interface Mate {
  /** The tenon's middle at its shoulder; the mortise's at its mouth. */
  at: V;
  /** Unit: into the part that is entered. */
  into: V;
  /** Unit: the way that a cheek looks, one or the other; none of round work. */
  thick?: V;
  /** Unit: square to the shoulder, or to the face that is entered, into the wood; none where that is round. */
  face?: V;
}

export interface Tenon extends Mate {
  end: Read;
}

export interface Mouth extends Mate {
  mark: Read;
}

/** A notch that another rail lies in, as that one's notch has this. */
export interface Lap {
  mark: Read;
  /** The middle of its floor. */
  at: V;
  /** Unit: out of it, the way that the other rail lies in it, and along the rail it is cut in. */
  out: V;
  through: V;
  axis: V;
}

export interface Mates {
  tenons: Tenon[];
  mouths: Mouth[];
  laps: Lap[];
  /** The middles of its ends: where it is, told of what has no joint there. */
  ends: V[];
}

/** All places where a part is joined. */
export function matesOf(part: SheetPart, unit: Sheets["unit"]): Mates {
  const sheet = new SheetRead(part, unit);
  switch (sheet.stock.word("is")) {
    case "flat":
      return { tenons: [], mouths: socketsOf(sheet), laps: [], ends: [] };
    case "bent":
      return new Bow(sheet).mates();
    case "turned": {
      const stick = new TurnedStick(sheet);
      return { tenons: stick.tenons(), mouths: stick.mouths(), laps: [], ends: stick.ends() };
    }
    default: {
      const stick = new Stick(sheet);
      const cuts = stick.ends.map((end) => stick.cut(end, sheet));
      const tenons = stick.ends.flatMap((end, k) => tenonsAt(sheet, end, placeOf(stick, end, cuts[k]!)));
      return {
        tenons,
        mouths: mouthsOf(sheet, stick),
        laps: lapsOf(sheet, stick),
        ends: cuts.map(({ at }) => at),
      };
    }
  }
}
