/**
 * Which part of a chair is meant, and which joint. Names are only how these print: `seat-side.left`, `ladder.2.left`,
 * `seat-side.left to front.left`. They are made and read here and nowhere else.
 */

/** The sitter's; `middle` is a part that stands once. */
export type Side = "left" | "right" | "middle";

/** One part. */
export interface PartId {
  /** What its header in the text calls it. */
  stem: string;
  /** Which of a row, from 1; absent for a part that does not repeat. */
  row?: number;
  side: Side;
}

/** The joint by which one part is let into another. */
interface JointId {
  part: PartId;
  into: PartId;
}

/** The one seat of a chair, which the text gives no name. */
export const SEAT: PartId = { stem: "seat", side: "middle" };

const INTO = " to ";
const WITH = " and ";

/** `ladder.2.left`. */
export function partName({ stem, row, side }: PartId): string {
  const member = row === undefined ? stem : `${stem}.${row}`;
  return side === "middle" ? member : `${member}.${side}`;
}

/** A part by how it prints; what follows its name (the tail of a value's name) is left out. */
export const partId = (name: string): PartId => readPart(name).id;

/** A part at the head of a dotted name, and the segments that follow it: `seat-side.left.front.tenon-thick`. */
export function readPart(name: string): { id: PartId; rest: string[] } {
  const [stem = "", ...rest] = name.split(".");
  const id: PartId = { stem, side: "middle" };
  if (isRow(rest[0])) id.row = Number(rest.shift());
  if (isSide(rest[0])) id.side = rest.shift() as Side;
  return { id, rest };
}

const isRow = (segment: string | undefined): boolean => segment !== undefined && /^\d+$/.test(segment);

const isSide = (segment: string | undefined): boolean => segment === "left" || segment === "right";

/** `seat-side.left to front.left`. */
export const jointName = (part: string, into: string): string => `${part}${INTO}${into}`;

/** A joint by how it prints; undefined for what names no joint. */
export function jointId(name: string): JointId | undefined {
  const [part, into, more] = name.split(INTO);
  if (!part || !into || more !== undefined) return undefined;
  return { part: partId(part), into: partId(into) };
}

/** Two parts that a finding speaks of at once. */
export const bothNames = (a: string, b: string): string => `${a}${WITH}${b}`;

/** The parts that a finding's subject speaks of: one, both of a joint, or several alike. */
export const partsNamed = (subject: string): string[] =>
  subject.split(WITH).flatMap((each) => each.split(INTO));

/** The subjects that stand side by side in one: joints stay whole. */
export const subjectsNamed = (subject: string): string[] => subject.split(WITH);

/** What the text calls a part: `ladder` of `ladder.2.left`. */
export const stemOf = (name: string): string => partId(name).stem;

/** A part, a joint or several, without their sides: both of a pair are reported together. */
export const withoutSides = (subject: string): string => mapped(subject, (id) => ({ ...id, side: "middle" }));

/** The mirrored twin of a part or joint; itself for one that stands once. */
export const twinName = (subject: string): string => mapped(subject, twinOf);

/** The same on the other side of the chair. */
const twinOf = (id: PartId): PartId =>
  id.side === "middle" ? id : { ...id, side: id.side === "left" ? "right" : "left" };

/** The left-hand twin of a part or joint; itself for one that has none. */
export const leftName = (subject: string): string =>
  mapped(subject, (id) => (id.side === "right" ? twinOf(id) : id));

/** A finding's subject as an `accept` line names it, for both sides of a pair at once. */
export const asAccepted = (subject: string): string => partsNamed(withoutSides(subject)).join(INTO);

/** Whether a part, or any part of a joint, is a right-hand one. */
export const isRight = (subject: string): boolean =>
  partsNamed(subject).some((name) => partId(name).side === "right");

/** Whether one name covers another part: itself, both sides of a pair, or all members of a row. */
export function covers(name: string, part: string): boolean {
  const [wide, narrow] = [partId(name), partId(part)];
  return (
    wide.stem === narrow.stem &&
    (wide.row === undefined || wide.row === narrow.row) &&
    (wide.side === "middle" || wide.side === narrow.side)
  );
}

function mapped(subject: string, change: (id: PartId) => PartId): string {
  const each = (name: string): string => {
    const { id, rest } = readPart(name);
    return [partName(change(id)), ...rest].join(".");
  };
  return subject
    .split(WITH)
    .map((one) => one.split(INTO).map(each).join(INTO))
    .join(WITH);
}
