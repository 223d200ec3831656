/**
 * How the wood of a chair moves across the grain between the ends of its climate, and what that does to joints and seats.
 */
import type { Chair, Joint, Member } from "../chair/chair.ts";
import type { ClimateDesign, GrainDesign } from "../design/design.ts";
import { dot } from "../geometry/vec.ts";
import { equilibrium } from "./equilibrium.ts";
import { strengthsOf } from "./strengths.ts";

/** A climate as moisture of the wood, shares of its dry weight. */
export interface Climate {
  dry: number;
  damp: number;
  given: ClimateDesign;
  /** Nobody wrote it. */
  assumed: boolean;
}

/** What holds when the file says nothing (common practice: rooms that are heated in winter). */
const usual: ClimateDesign = { of: "humidity", low: 0.35, high: 0.65 };
/** Above this wood swells no further (fibre saturation; Wood Handbook, FPL-GTR-190, seen). */
const SATURATED = 0.3;

/** The climate of a file. */
export function climateOf({ climate }: Pick<Chair["design"], "climate">): Climate {
  const given = climate?.value ?? usual;
  const moisture = (share: number) =>
    Math.min(SATURATED, given.of === "moisture" ? share : equilibrium(share));
  return { dry: moisture(given.low), damp: moisture(given.high), given, assumed: climate === undefined };
}

/** Moisture of a part when it is made: what its timber says, else the middle of the climate. */
export const madeAt = ({ timber }: Pick<Member, "timber">, { dry, damp }: Climate): number =>
  timber?.moisture === undefined ? (dry + damp) / 2 : Math.min(SATURATED, timber.moisture / 100);

/** How much a part grows across the grain, as shares of its width, from made to each end of the climate; negative shrinks. */
export interface Moves {
  /** As it is taken to be sawn: flat unless its board says. */
  sawn: GrainDesign;
  made: number;
  dry: number;
  damp: number;
}

/** The movement of a part's wood; nothing where its species is not in the table. */
export function movesOf(
  { design }: Pick<Chair, "design">,
  member: Member,
  climate: Climate,
): Moves | undefined {
  const known = strengthsOf(member.timber?.species ?? "");
  if (!known) return undefined;
  const sawn = sawnAs(design, member);
  const [radial, tangential] = [known.movementRadial, known.movementTangential];
  const coefficient = sawn === "quarter" ? radial : sawn === "flat" ? tangential : middle(radial, tangential);
  if (coefficient === null) return undefined;
  const made = madeAt(member, climate);
  return {
    sawn,
    made,
    dry: growth(coefficient, made, climate.dry),
    damp: growth(coefficient, made, climate.damp),
  };
}

/**
 * How much wood grows, as a share of its width, from one moisture to another (shares of its dry weight): ΔD = D·C·(M₂ − M₁), C for one
 * percent of moisture (Wood Handbook, FPL-GTR-190, table 13-5, for 6 to 14 %; seen).
 */
export const growth = (coefficient: number, from: number, to: number): number =>
  coefficient * (to - from) * 100;

const middle = (a: number | null, b: number | null): number | null =>
  a === null || b === null ? null : (a + b) / 2;

/** What the board that a part is sawn from says. */
function sawnAs(design: Chair["design"], member: Member): GrainDesign {
  const board = "sawnFrom" in member.design ? member.design.sawnFrom?.value.name : undefined;
  return (board === undefined ? undefined : design.boards.get(board)?.grain?.value) ?? "flat";
}

/** All that the climate does to a chair. */
export interface WoodMoves {
  climate: Climate;
  parts: PartMoves[];
  joints: JointMoves[];
  panel?: PanelRoom;
}

export function woodMoves(chair: Chair): WoodMoves {
  const climate = climateOf(chair.design);
  const panel = panelRoom(chair, climate);
  return {
    climate,
    parts: partMoves(chair, climate),
    joints: jointMoves(chair, climate),
    ...(panel && { panel }),
  };
}

/** A part with its movement over its width, mm. */
export interface PartMoves extends Moves {
  part: string;
  what: Exclude<Member["is"], "block">;
  /** Across the grain. */
  width: number;
  /** Signed change of the width at each end. */
  toDry: number;
  toDamp: number;
}

/** Every part that moves across its width, widest movement first; loose seats of a frame are left out. */
export function partMoves(chair: Chair, climate: Climate): PartMoves[] {
  return [...chair.members.values()]
    .flatMap((member): PartMoves[] => {
      const width = widthAcross(member);
      const moves = width === undefined ? undefined : movesOf(chair, member, climate);
      if (width === undefined || !moves || member.is === "block") return [];
      return [
        {
          part: member.name,
          what: member.is,
          width,
          ...moves,
          toDry: width * moves.dry,
          toDamp: width * moves.damp,
        },
      ];
    })
    .sort((a, b) => spanOf(b) - spanOf(a));
}

const spanOf = ({ toDry, toDamp }: PartMoves): number => toDamp - toDry;

/** The width of a part across its grain, mm; nothing of a seat that is no board. */
export function widthAcross(member: Member): number | undefined {
  if (member.is === "seat") {
    if (member.design.kind !== "board" && member.design.kind !== "solid") return undefined;
    const [x, y] = member.grain;
    const size = Math.hypot(x, y) || 1;
    const across = member.outline.map((point) => dot(point, [-y / size, x / size, 0]));
    return Math.max(...across) - Math.min(...across);
  }
  if (member.is === "rail" || member.is === "slat") return Math.max(member.wide, member.thick);
  if (member.is !== "post") return undefined;
  const { section, round } = member.design;
  return round?.value ?? (section && Math.max(section.value.first, section.value.second));
}

/** What the climate does to a joint, mm. */
export interface JointMoves {
  joint: Joint;
  /** From the first tenon's edge to the last's, across the grain of the part. */
  wide: number;
  /** How far that grows and shrinks between the ends of the climate. */
  across: number;
  /** How far the host's face draws back from the shoulder at the dry end: its wood between the face and the middle of the tenon. */
  shoulderGap: number;
  /** How much the tenon grows against its mortise across its thickness: at the dry and at the damp end; negative is looser. */
  tightness: { dry: number; damp: number };
}

/** Every joint of two parts whose movement is known. */
export function jointMoves(chair: Chair, climate: Climate): JointMoves[] {
  return [...chair.joints.values()].flatMap((joint): JointMoves[] => {
    const part = chair.members.get(joint.part);
    const host = chair.members.get(joint.entered.name);
    const own = part && movesOf(chair, part, climate);
    const other = host && movesOf(chair, host, climate);
    if (!own || !other || joint.sections.length === 0) return [];
    const places = joint.sections.flatMap(({ wide }) => wide);
    const wide = Math.max(...places) - Math.min(...places);
    return [
      {
        joint,
        wide,
        across: wide * (own.damp - own.dry),
        shoulderGap: Math.max(0, (-other.dry * joint.long) / 2),
        tightness: {
          dry: joint.thick * (own.dry - other.dry),
          damp: joint.thick * (own.damp - other.damp),
        },
      },
    ];
  });
}

/** A board seat that lies in rebates or grooves: how much it swells across the grain, and how much room it has, mm. */
export interface PanelRoom {
  part: string;
  width: number;
  swells: number;
  room: number;
  /** In all at the damp end, what is left at each edge, negative when it presses; and at the dry end. */
  clearance: { damp: number; dry: number };
}

/** Gap of a loose seat to each rail when none is given, mm. */
const GAP = 1;

/** Seats that move between two rails. */
export function panelRoom(chair: Chair, climate: Climate): PanelRoom | undefined {
  const { seat } = chair;
  const rests = seat?.design.rests?.value;
  if (seat?.design.kind !== "board" || (rests !== "rebates" && rests !== "grooves")) return undefined;
  const width = widthAcross(seat);
  const moves = movesOf(chair, seat, climate);
  if (width === undefined || !moves) return undefined;
  const gap = seat.design.gap?.value ?? GAP;
  return {
    part: seat.name,
    width,
    swells: width * moves.damp,
    room: 2 * gap,
    clearance: { damp: gap - (width * moves.damp) / 2, dry: gap - (width * moves.dry) / 2 },
  };
}
