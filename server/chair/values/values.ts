/**
 * Every worked-out value of a chair, and how those of the whole chair, its seat and its backrest are worked out: one function for each
 * row of the table of values.
 */
import { sentence } from "../../../grammar/sentences/sentence.ts";
import { type ValueName, type ValueRow, valueTable } from "../../../grammar/vocabulary/values.ts";
import { moveDirection, movePoint } from "../../geometry/motion.ts";
import type { Body, Vec3 } from "../../geometry/solid.ts";
import { distance, dot } from "../../geometry/vec.ts";
import type { Chair, SeatSurface, Worked } from "../chair.ts";
import type { Fault } from "../fault.ts";
import { lowestOfHollow } from "../seat/solid/hollow.ts";
import { angleOf } from "./angles.ts";
import { type Backrest, backrestOf } from "./backrest.ts";
import { partValues } from "./part-values.ts";

/** A chair before its values are worked out. */
type Built = Omit<Chair, "values" | "endless">;

/** Right-hand values that differ from the left by more than this, of themselves, are listed too. */
const SAME = 1e-9;

/** Rows that are worked out from the shape alone; `server/floor/tips.ts` has weight and tipping, `server/strength/values.ts` strength. */
type OfShape = Exclude<
  ValueName,
  "weight" | "strength.margin" | `tip.${string}` | `${"PART" | "POST" | "RAIL" | "STICK" | "BOW"}.${string}`
>;

const workings: Record<OfShape, (measured: Measured) => number | undefined> = {
  height: ({ extents, chair }) => extents && extents[2].high + chair.stance.shift[2],
  width: ({ extents }) => extents && extents[0].high - extents[0].low,
  depth: ({ extents }) => extents && extents[1].high - extents[1].low,
  joints: ({ chair }) => chair.joints.size,
  "seat.height": (measured) => levelOf(measured),
  "seat.loaded-height": (measured) => {
    const level = levelOf(measured);
    return level === undefined ? undefined : level - (measured.chair.seat?.design.sag?.value ?? 0);
  },
  "seat.slope": ({ chair: { seat, stance } }) => {
    if (!seat) return undefined;
    const [, y, z] = moveDirection(stance, seat.plane.normal);
    return Math.atan2(y, z);
  },
  "seat.depth": ({ chair: { seat } }) => seat && distance(seat.front.middle, seat.back.middle),
  "seat.front-width": ({ chair: { seat } }) => endWidth(seat, "front"),
  "seat.back-width": ({ chair: { seat } }) => endWidth(seat, "back"),
  "seat.low": ({ chair: { seat, stance } }) => seat && lowestOfHollow(seat, (p) => movePoint(stance, p)[2]),
  "seat.width": ({ chair: { seat } }) => seat?.plan?.widest,
  "backrest.rake": ({ back }) => back?.rake,
  "backrest.top": ({ back, chair }) => back && movePoint(chair.stance, back.top)[2],
};

/** A chair with what several values are worked out from, each measured when it is first asked for. */
interface Measured {
  chair: Built;
  /** Along the standing chair's three directions; nothing without parts. */
  readonly extents: [Extent, Extent, Extent] | undefined;
  readonly back: Backrest | undefined;
}

function measured(chair: Built): Measured {
  let extents: { known: Measured["extents"] } | undefined;
  let back: { known: Measured["back"] } | undefined;
  return {
    chair,
    get extents() {
      extents ??= { known: extentsOf(chair) };
      return extents.known;
    },
    get back() {
      back ??= { known: backrestOf(chair) };
      return back.known;
    },
  };
}

/**
 * Every worked-out value as the chair stands, by dotted name, in the order to list them; right-hand twins only where they differ. A value
 * whose working throws is left out and reported once among the chair's faults.
 */
export function valuesOf(chair: Built): Pick<Chair, "values" | "endless"> {
  const values = new Map<string, Worked>();
  const endless: string[] = [];
  const guarded = guardedBy(chair);
  const put = (
    name: string,
    number: number | undefined,
    row: Pick<Worked, "dimension" | "meaning">,
    part?: string,
  ) => {
    if (number === undefined || sameAsTwin(values, name, number)) return;
    if (!Number.isFinite(number)) return void endless.push(name);
    const { dimension, meaning } = row;
    values.set(name, { name, number, dimension, meaning, ...(part !== undefined && { part }) });
  };
  const whole = measured(chair);
  for (const [name, working] of Object.entries(workings))
    put(
      name,
      guarded(name, () => working(whole)),
      rowOf(name as OfShape),
    );
  partValues(chair, (part, rest, workOut, row) =>
    put(`${part}.${rest}`, guarded(lastWord(rest), workOut), row, part),
  );
  for (const angle of chair.design.angles.values()) {
    if (values.has(angle.name)) continue;
    const meaning = angle.description ?? sentence("meaning.angle");
    put(
      angle.name,
      guarded(angle.name, () => angleOf(chair, angle)),
      { dimension: "angle", meaning },
    );
  }
  return { values, endless };
}

const rowOf = (name: ValueName): ValueRow => valueTable[name];
const lastWord = (name: string): string => name.slice(name.lastIndexOf(".") + 1);

/** Runs a working; what throws gives nothing, and one fault for all values of that name. */
function guardedBy(chair: Built) {
  const failed = new Map<string, Fault>();
  return (name: string, workOut: () => number | undefined): number | undefined => {
    try {
      return workOut();
    } catch (thrown) {
      if (!failed.has(name)) {
        const fault: Fault = {
          is: "failed",
          part: "",
          at: chair.design.titleAt,
          what: sentence("stage.value", { name }),
          thrown,
        };
        failed.set(name, fault);
        chair.faults.push(fault);
      }
      return undefined;
    }
  };
}

/**
 * A worked-out value by its dotted name: a right-hand twin has the left one's, and a pair's value may be asked for without a side
 * (`seat-side.length`).
 */
export function workedValue(chair: Pick<Chair, "values">, name: string): Worked | undefined {
  const { values } = chair;
  const parts = name.split(".");
  const own =
    values.get(name) ?? values.get(parts.map((part) => (part === "right" ? "left" : part)).join("."));
  if (own) return own;
  for (let k = 1; k < parts.length; k++) {
    const found = values.get([...parts.slice(0, k), "left", ...parts.slice(k)].join("."));
    if (found) return found;
  }
  return undefined;
}

function extentsOf(chair: Built): Measured["extents"] {
  const bodies = [...chair.members.values()].map(({ body }) => body);
  if (bodies.length === 0) return undefined;
  const [across, back, up] = chair.stance.rotation;
  return [extent(bodies, across), extent(bodies, back), extent(bodies, up)];
}

/** The height of the sitting surface at the middle of its front edge, mm. */
const levelOf = ({ chair: { seat, stance } }: Measured): number | undefined =>
  seat && movePoint(stance, seat.front.middle)[2];

interface Extent {
  low: number;
  high: number;
}

function extent(bodies: readonly Body[], along: Vec3): Extent {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const { pieces } of bodies) {
    for (const { points } of pieces) {
      for (const point of points) {
        const at = dot(along, point);
        if (at < low) low = at;
        if (at > high) high = at;
      }
    }
  }
  return { low, high };
}

/** A round seat has no front and back edge of their own. */
const endWidth = (seat: SeatSurface | undefined, which: "front" | "back"): number | undefined =>
  seat && (!seat.plan || seat.plan.stations) ? width(seat[which]) : undefined;

const width = (edge: SeatSurface["front"]): number => distance(edge.left, edge.right);

function sameAsTwin(values: ReadonlyMap<string, Worked>, name: string, number: number): boolean {
  const at = name.indexOf(".right");
  if (at < 0 || (name.length > at + 6 && name[at + 6] !== ".")) return false;
  const twin = values.get(`${name.slice(0, at)}.left${name.slice(at + 6)}`);
  return twin !== undefined && Math.abs(twin.number - number) <= SAME * Math.max(1, Math.abs(number));
}
