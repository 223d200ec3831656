/**
 * The stock list: equal parts together, each with the blank it is planed from.
 */
import type { TimberDesign } from "../design/design.ts";
import type { PartId } from "../design/identity.ts";
import type { Allowances } from "./allowances.ts";
import type { Hides } from "./hidden.ts";
import { areaOf, extents, grown, type Outline } from "./outline.ts";
import type { FinishedPart, Size } from "./parts.ts";

/** Parts of one design that come out of equal blanks. */
export interface StockLine {
  /** `seat-side`; with its members where a row comes out in several sizes: `back-slat 1, 4`. */
  name: string;
  /** Full names of the chair's parts that it stands for; of a seat glued up of staves, `seat` once for each. */
  members: string[];
  /** The part that the text has it in. */
  stem: string;
  /** What a sentence calls it: its part, or `strip of seat-front`. */
  called: string;
  /** Of all chairs. */
  number: number;
  timber?: TimberDesign;
  is: FinishedPart["is"];
  finished: Size;
  blank: Size;
  /** Of a curved part: the outline it is sawn to, planing allowed for, from the lower left corner of its blank. */
  outline?: Outline;
  grainSlope: number;
  /** How many edges of it are glued to others. */
  glued: number;
  /** Where a defect may lie in its blank. */
  hides?: Hides;
}

/** Blanks of one design that differ by less than this are made alike, to the larger, mm. */
const ALIKE = 1;

/**
 * The blank a part is planed from: `plane` off each face and each edge; a curved part's grows square to its outline. Ends are sawn to
 * length, so its length is the finished one.
 */
function blankOf(
  part: Pick<FinishedPart, "finished" | "outline">,
  { plane }: Pick<Allowances, "plane">,
): { blank: Size; outline?: Outline } {
  const { finished } = part;
  const thick = finished.thick + 2 * plane;
  if (!part.outline) return { blank: { thick, wide: finished.wide + 2 * plane, long: finished.long } };
  const full = grown(part.outline, plane);
  const box = extents(full);
  const outline: Outline = {
    low: full.low.map(([x, y]) => [x - box.from, y - box.low]),
    high: full.high.map(([x, y]) => [x - box.from, y - box.low]),
  };
  return { blank: { thick, wide: box.high - box.low, long: box.to - box.from }, outline };
}

/**
 * A curved part that is thicker square to its curve than its curve is wide lies on edge: its outline is sawn through the blank's width, and
 * the blank is a plain one.
 */
function lying(part: FinishedPart, allowances: Allowances): Laid {
  const { blank, outline } = blankOf(part, allowances);
  const { hides } = part;
  if (!outline || blank.thick <= blank.wide)
    return { blank, ...(outline && { outline }), ...(hides && { hides }) };
  const onEdge = hides && hidesOnEdge(hides);
  return {
    blank: { thick: blank.wide, wide: blank.thick, long: blank.long },
    ...(onEdge && { hides: onEdge }),
  };
}

interface Laid {
  blank: Size;
  outline?: Outline;
  hides?: Hides;
}

/** Faces along its edges come to lie flat, and flat ones along an edge. */
function hidesOnEdge({ flat, low, high, joints, firstEnd }: Hides): Hides {
  const lies = low ?? high;
  return { ...(lies && { flat: lies }), ...(flat && { low: flat, eitherEdge: true }), joints, firstEnd };
}

/** Sizes to a hundredth of a millimetre: what is printed is what is planned. */
const exact = (mm: number): number => Math.round(mm * 100) / 100;
const exactSize = ({ thick, wide, long }: Size): Size => ({
  thick: exact(thick),
  wide: exact(wide),
  long: exact(long),
});

/**
 * Every part's blank, equal ones together, for `make` chairs. `widest` says how wide a board of a thickness may be at most, so that a
 * seat wider than that is glued up of staves.
 */
export function stockOf(
  parts: readonly FinishedPart[],
  allowances: Allowances,
  make: number,
  widest: (timber: TimberDesign | undefined, thick: number) => number,
): StockLine[] {
  const byName = new Map<string, StockLine[]>();
  const lines: StockLine[] = [];
  for (const part of parts) {
    const made = lineOf(part, allowances, make, widest);
    const alike = (byName.get(made.called) ?? []).find((line) => sameBlank(line, made));
    if (alike) join(alike, made);
    else {
      lines.push(made);
      byName.set(made.called, [...(byName.get(made.called) ?? []), made]);
    }
  }
  const ids = new Map(parts.map(({ name, id }) => [name, id]));
  for (const group of byName.values()) {
    if (group.length < 2) continue;
    for (const line of group)
      line.name = `${line.called} ${which(line.members.flatMap((name) => ids.get(name) ?? []))}`;
  }
  return lines;
}

/** `1, 4`, or `left`. */
function which(ids: readonly PartId[]): string {
  const said = ids.map(({ row, side }) => (row === undefined ? side : String(row)));
  return [...new Set(said)].join(", ");
}

function lineOf(
  part: FinishedPart,
  allowances: Allowances,
  make: number,
  widest: (timber: TimberDesign | undefined, thick: number) => number,
): StockLine {
  const { name, id, timber, is, grainSlope, called = id.stem } = part;
  const { blank, outline, hides } = lying(part, allowances);
  const common = {
    name: called,
    stem: id.stem,
    called,
    ...(timber && { timber }),
    is,
    grainSlope,
    ...(hides && { hides }),
  };
  if (is === "seat") {
    const staves = part.boards ?? stavesOf(blank, allowances, widest(timber, blank.thick));
    const { plane, jointing } = allowances;
    const wide = part.finished.wide / staves;
    const off = staves === 1 ? 2 * plane : Math.max(plane + jointing, staves > 2 ? 2 * jointing : 0);
    return {
      ...common,
      members: Array.from({ length: staves }, () => name),
      number: staves * make,
      finished: exactSize({ ...part.finished, wide }),
      blank: exactSize({ ...blank, wide: wide + off }),
      glued: staves === 1 ? 0 : staves > 2 ? 2 : 1,
    };
  }
  return {
    ...common,
    members: [name],
    number: make,
    finished: exactSize(part.finished),
    blank: exactSize(blank),
    ...(outline && { outline }),
    glued: 0,
  };
}

/** The fewest staves of one width that boards so wide give. */
function stavesOf(blank: Size, { plane, jointing }: Allowances, widest: number): number {
  const finished = blank.wide - 2 * plane;
  if (blank.wide <= widest) return 1;
  const room = widest - Math.max(plane + jointing, 2 * jointing);
  return room > 0 ? Math.max(2, Math.ceil(finished / room)) : 2;
}

const sizes = ["thick", "wide", "long"] as const;

const sameBlank = (a: StockLine, b: StockLine): boolean =>
  a.is === b.is &&
  a.timber?.species === b.timber?.species &&
  (a.outline === undefined) === (b.outline === undefined) &&
  sizes.every((size) => Math.abs(a.blank[size] - b.blank[size]) < ALIKE) &&
  (!a.outline || !b.outline || Math.abs(areaOf(a.outline) - areaOf(b.outline)) < ALIKE * a.blank.long * 0.1);

/** Takes up another part of the same blank; the larger sizes serve both. */
function join(line: StockLine, other: StockLine): void {
  line.members.push(...other.members);
  line.number += other.number;
  if (other.blank.long > line.blank.long && other.outline) line.outline = other.outline;
  for (const of of ["finished", "blank"] as const)
    for (const size of sizes) line[of][size] = Math.max(line[of][size], other[of][size]);
  line.grainSlope = Math.max(line.grainSlope, other.grainSlope);
  // A place that one of them has a joint at is left clear in all; what one shows none may hide.
  const [own, theirs] = [line.hides, other.hides];
  if (own && theirs) line.hides = { ...own, joints: [...own.joints, ...theirs.joints] };
  else delete line.hides;
}

/** Volume of a line's blanks, mm³. */
export const volumeOf = ({ blank, number }: Pick<StockLine, "blank" | "number">): number =>
  blank.thick * blank.wide * blank.long * number;
