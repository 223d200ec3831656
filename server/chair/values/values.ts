import { vocabulary } from "../../../grammar/vocabulary/index.ts";
import { dimensionOf } from "../../design/values.ts";
import { moveDirection, movePoint } from "../../geometry/motion.ts";
import type { Body, Motion, Vec3 } from "../../geometry/solid.ts";
import { distance, dot } from "../../geometry/vec.ts";
import type { Chair, SeatSurface, Worked } from "../chair.ts";
import { angleOf } from "./angles.ts";
import { backrestOf } from "./backrest.ts";
import { partValues } from "./part-values.ts";

/** A chair before its values are worked out. */
export type Built = Omit<Chair, "values">;

const meanings = new Map(
  vocabulary.words.filter((word) => word.sort === "value").map((word) => [word.word, word.meaning]),
);
/** Right-hand values that differ from the left by more than this, of themselves, are listed too. */
const SAME = 1e-9;

/** Every worked-out value as the chair stands, by dotted name, in the order to list them; right-hand twins only where they differ. */
export function valuesOf(chair: Built): Map<string, Worked> {
  const values = new Map<string, Worked>();
  const put = (name: string, number: number | undefined, part?: string) => {
    if (number === undefined || !Number.isFinite(number) || sameAsTwin(values, name, number)) return;
    const worked: Worked = {
      name,
      number,
      ...kindOf(name),
    };
    if (part !== undefined) worked.part = part;
    values.set(name, worked);
  };
  wholeValues(chair, put);
  if (chair.seat) seatValues(chair.seat, chair.stance, put);
  const back = backrestOf(chair);
  if (back) {
    put("backrest.rake", back.rake);
    put("backrest.top", movePoint(chair.stance, back.top)[2]);
  }
  partValues(chair, (part, tail, number) => put(`${part}.${tail}`, number, part));
  for (const angle of chair.design.angles.values()) {
    const number = angleOf(chair, angle);
    if (number === undefined || values.has(angle.name)) continue;
    const meaning = angle.description ?? "The angle declared under this name, as the chair stands.";
    values.set(angle.name, { name: angle.name, number, dimension: "angle", meaning });
  }
  return values;
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

type Put = (name: string, number: number | undefined) => void;

function wholeValues(chair: Built, put: Put): void {
  const bodies = [...chair.members.values()].map(({ body }) => body);
  if (bodies.length > 0) {
    const [x, y, z] = chair.stance.rotation.map((row) => extent(bodies, row)) as [Extent, Extent, Extent];
    put("height", z.high + chair.stance.shift[2]);
    put("width", x.high - x.low);
    put("depth", y.high - y.low);
  }
  put("joints", chair.joints.size);
}

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

function seatValues(seat: SeatSurface, stance: Motion, put: Put): void {
  const level = movePoint(stance, seat.front.middle)[2];
  const [, y, z] = moveDirection(stance, seat.plane.normal);
  put("seat.height", level);
  put("seat.loaded-height", level - (seat.design.sag?.value ?? 0));
  put("seat.slope", Math.atan2(y, z));
  put("seat.depth", distance(seat.front.middle, seat.back.middle));
  put("seat.front-width", width(seat.front));
  put("seat.back-width", width(seat.back));
}

const width = (edge: { left: Vec3; right: Vec3 }): number => distance(edge.left, edge.right);

function sameAsTwin(values: ReadonlyMap<string, Worked>, name: string, number: number): boolean {
  const at = name.indexOf(".right");
  if (at < 0 || (name.length > at + 6 && name[at + 6] !== ".")) return false;
  const twin = values.get(`${name.slice(0, at)}.left${name.slice(at + 6)}`);
  return twin !== undefined && Math.abs(twin.number - number) <= SAME * Math.max(1, Math.abs(number));
}

/** A value's dimension and meaning hang on its last word, or its whole name, alone. */
const kinds = new Map<string, Pick<Worked, "dimension" | "meaning">>();

function kindOf(name: string): Pick<Worked, "dimension" | "meaning"> {
  const key = meanings.has(name) ? name : name.slice(name.lastIndexOf(".") + 1);
  let kind = kinds.get(key);
  if (!kind) {
    kind = { dimension: dimensionOf(name) ?? "angle", meaning: meanings.get(key) ?? "" };
    if (meanings.has(key)) kinds.set(key, kind);
  }
  return kind;
}
