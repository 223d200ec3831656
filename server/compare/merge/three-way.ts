/**
 * Three texts as units put together: what one side alone changed is taken over; where both changed one fact, both stand in the text
 * between marks.
 */
import { linesOf, type Unit, type UnitLine, type Units } from "./units.ts";

interface Merged {
  units: Units;
  /** Facts that both sides changed, or one changed and the other took away. */
  conflicts: number;
}

export interface Marks {
  ours: string;
  theirs: string;
  /** How long the marks are: git's `%L`. */
  size: number;
}

/** Puts the units of three texts together. */
export function mergeUnits(base: Units, ours: Units, theirs: Units, marks: Marks): Merged {
  const merger: Merger = { marks, conflicts: 0 };
  const units = mergeLevel(merger, base, ours, theirs);
  return { units, conflicts: merger.conflicts };
}

interface Merger {
  marks: Marks;
  conflicts: number;
}

function mergeLevel(merger: Merger, base: Units, ours: Units, theirs: Units): Units {
  const [old, mine, other] = keyed(base.units, ours.units, theirs.units);
  const keys = orderOf([...old.keys()], [...mine.keys()], [...other.keys()]);
  const merged = keys.flatMap((key) => mergeUnit(merger, old.get(key), mine.get(key), other.get(key)));
  return { units: notesByDate(merged, old), foot: mergeLines(base.foot, ours.foot, theirs.foot) };
}

/**
 * The units of each text by a key that is one's own: of several that answer one question those that say the same are one, then those
 * that stand first.
 */
function keyed(base: readonly Unit[], ours: readonly Unit[], theirs: readonly Unit[]) {
  const old = new Map<string, Unit>();
  for (const unit of base) old.set(free(old, unit.key), unit);
  const side = (units: readonly Unit[]) => {
    const found = new Map<Unit, string>();
    const taken = new Set<string>();
    const give = (unit: Unit, key: string) => {
      found.set(unit, key);
      taken.add(key);
    };
    const open = (unit: Unit) => [...old].filter(([key, each]) => each.key === unit.key && !taken.has(key));
    for (const unit of units) {
      const same = open(unit).find(([, each]) => each.says === unit.says);
      if (same) give(unit, same[0]);
    }
    for (const unit of units) {
      if (found.has(unit)) continue;
      const next = open(unit)[0];
      if (next) give(unit, next[0]);
      else {
        // Both may add another of a kind that may stand several times: then what it says tells them apart.
        const key = unit.many ? `${unit.key} ${unit.says}` : unit.key;
        let own = key;
        for (let n = 2; taken.has(own) || (own === key && old.has(own) && unit.many); n++)
          own = `${key} ${n}`;
        give(unit, own);
      }
    }
    return new Map(units.map((unit) => [found.get(unit)!, unit]));
  };
  return [old, side(ours), side(theirs)] as const;
}

function free(taken: ReadonlyMap<string, unknown>, key: string): string {
  if (!taken.has(key)) return key;
  for (let n = 2; ; n++) if (!taken.has(`${key} ${n}`)) return `${key} ${n}`;
}

/** The order of all keys: that of the side which moved something; what only the other has goes behind what it stands behind there. */
function orderOf(base: readonly string[], ours: readonly string[], theirs: readonly string[]): string[] {
  const moved = (side: readonly string[]) => {
    const common = new Set(side.filter((key) => base.includes(key)));
    const before = base.filter((key) => common.has(key));
    return side.filter((key) => common.has(key)).some((key, k) => key !== before[k]);
  };
  const [lead, rest] = !moved(ours) && moved(theirs) ? [theirs, ours] : [ours, theirs];
  const order = [...lead];
  let behind: string | undefined;
  for (const key of rest) {
    if (!order.includes(key)) order.splice(behind === undefined ? 0 : order.indexOf(behind) + 1, 0, key);
    behind = key;
  }
  return order;
}

function mergeUnit(
  merger: Merger,
  base: Unit | undefined,
  ours: Unit | undefined,
  theirs: Unit | undefined,
): Unit[] {
  if (ours !== undefined && theirs !== undefined) return mergeBoth(merger, base, ours, theirs);
  const left = ours ?? theirs;
  if (left === undefined) return [];
  if (base === undefined) return [left];
  // One side took it away: that holds unless the other changed it.
  return sameUnit(base, left) ? [] : [conflict(merger, ours, theirs)];
}

function mergeBoth(merger: Merger, base: Unit | undefined, ours: Unit, theirs: Unit): Unit[] {
  const lead = mergeLines(base?.lead ?? [], ours.lead, theirs.lead);
  const said = pick(base?.says, ours.says, theirs.says);
  const blocks = ours.block !== undefined && theirs.block !== undefined;
  if (said === undefined || (ours.block === undefined) !== (theirs.block === undefined)) {
    if (!blocks) return [conflict(merger, { ...ours, lead }, { ...theirs, lead: [] })];
    // Only the headers differ: they alone stand between the marks.
    const header = conflict(merger, { ...without(ours), lead }, { ...without(theirs), lead: [] });
    return [{ ...header, block: mergeBlock(merger, base, ours, theirs) }];
  }
  const line = mergeLine(base?.line, ours.line, theirs.line, said);
  const chosen = said === "theirs" ? theirs : ours;
  return [{ ...chosen, lead, line, ...(blocks && { block: mergeBlock(merger, base, ours, theirs) }) }];
}

const without = ({ block: _, ...unit }: Unit): Unit => unit;

function mergeBlock(
  merger: Merger,
  base: Unit | undefined,
  ours: Unit,
  theirs: Unit,
): NonNullable<Unit["block"]> {
  const none = { units: [], foot: [] };
  return { ...mergeLevel(merger, base?.block ?? none, ours.block!, theirs.block!), close: ours.block!.close };
}

/** Whose word holds: the side that changed it; ours where both say the same; nobody's where both changed it. */
function pick<T>(base: T | undefined, ours: T, theirs: T): "ours" | "theirs" | undefined {
  if (ours === theirs || theirs === base) return "ours";
  return ours === base ? "theirs" : undefined;
}

/** The statement of the side whose word holds, on our indent; of two comments that are both new both. */
function mergeLine(
  base: UnitLine | undefined,
  ours: UnitLine,
  theirs: UnitLine,
  said: "ours" | "theirs",
): UnitLine {
  const text =
    said === "theirs"
      ? theirs.text
      : (pick(base?.text, ours.text, theirs.text) ?? "ours") === "theirs"
        ? theirs.text
        : ours.text;
  const whose = pick(base?.comment.trim(), ours.comment.trim(), theirs.comment.trim());
  const comment =
    whose === "theirs"
      ? theirs.comment
      : whose === "ours"
        ? ours.comment
        : `${ours.comment}; ${theirs.comment.trim().replace(/^#\s*/, "")}`;
  return { indent: ours.indent, text, comment };
}

/** Comments and blanks of three texts: what one side changed, else ours with the new lines of theirs. */
function mergeLines(base: readonly string[], ours: readonly string[], theirs: readonly string[]): string[] {
  const plain = (lines: readonly string[]) => lines.map((line) => line.trim()).join("\n");
  const whose = pick(plain(base), plain(ours), plain(theirs));
  if (whose !== undefined) return [...(whose === "theirs" ? theirs : ours)];
  const trimmed = (lines: readonly string[]) => new Set(lines.map((line) => line.trim()));
  const [before, mine, other] = [trimmed(base), trimmed(ours), trimmed(theirs)];
  const kept = ours.filter(
    (line) => line.trim() === "" || !before.has(line.trim()) || other.has(line.trim()),
  );
  const more = theirs.filter(
    (line) => line.trim() !== "" && !before.has(line.trim()) && !mine.has(line.trim()),
  );
  return [...kept, ...more];
}

/** Whether two units say the same, with all that stands in their blocks, whatever the order. */
function sameUnit(one: Unit, other: Unit): boolean {
  return one.says === other.says && contents(one) === contents(other);
}

const contents = ({ block }: Unit): string =>
  (block?.units ?? [])
    .map((unit) => `${unit.says} { ${contents(unit)} }`)
    .sort()
    .join("\n");

/** Both sides' lines between marks; a unit of its own, whose text is never read. */
function conflict(merger: Merger, ours: Unit | undefined, theirs: Unit | undefined): Unit {
  merger.conflicts++;
  const { marks } = merger;
  const mark = (sign: string, label: string) =>
    `${sign.repeat(marks.size)}${label === "" ? "" : ` ${label}`}`;
  const lead = ours?.lead ?? theirs?.lead ?? [];
  const own = (unit: Unit | undefined) => (unit === undefined ? [] : linesOf({ ...unit, lead: [] }));
  const lines = [mark("<", marks.ours), ...own(ours), mark("=", ""), ...own(theirs)];
  const key = (ours ?? theirs)!.key;
  return {
    key,
    says: "",
    many: false,
    lead: [...lead, ...lines],
    line: { indent: "", text: mark(">", marks.theirs), comment: "" },
  };
}

/** Notes that one side added stand by their dates among the others. */
function notesByDate(units: readonly Unit[], old: ReadonlyMap<string, Unit>): Unit[] {
  const isNote = ({ date }: Unit) => date !== undefined;
  const fresh = units.filter((unit) => isNote(unit) && !old.has(unit.key));
  if (fresh.length === 0) return [...units];
  const order = units.filter((unit) => !fresh.includes(unit));
  for (const note of fresh) {
    const later = order.findIndex((unit) => isNote(unit) && unit.date! > note.date!);
    const lastNote = order.reduce((last, unit, k) => (isNote(unit) ? k : last), -1);
    if (later >= 0) order.splice(later, 0, note);
    else if (lastNote >= 0) order.splice(lastNote + 1, 0, note);
    else order.push(note);
  }
  return order;
}
