/**
 * Three versions of a chair put together by their facts, not by their lines.
 */
import { isSyntax } from "../../../grammar/format.ts";
import { eolOf } from "../../../grammar/lines.ts";
import { parse } from "../../../grammar/parser.ts";
import type { Tree } from "../../../grammar/tree.ts";
import { vocabulary } from "../../../grammar/vocabulary/index.ts";
import { matchThings } from "../renames.ts";
import { ownThings } from "../things.ts";
import { renamedText } from "./renamed-text.ts";
import { spread } from "./spread.ts";
import { type Marks, mergeUnits } from "./three-way.ts";
import { textOf, unitOf, unitsOf } from "./units.ts";

interface Versions {
  base: string;
  ours: string;
  theirs: string;
}

export interface Merged {
  text: string;
  /** How many facts stand between marks. */
  conflicts: number;
}

/**
 * What both sides changed of the base. The order and layout are ours unless only theirs moved something. Nothing when the texts cannot
 * be put together by facts: one does not read whole, or the sides take their lengths in different units; then lines are all there is.
 */
export function mergeChairs(versions: Versions, marks: Marks): Merged | undefined {
  const { base, ours, theirs } = versions;
  if (ours === theirs || theirs === base) return { text: ours, conflicts: 0 };
  if (ours === base) return { text: theirs, conflicts: 0 };
  const trees = { base: read(base), ours: read(ours), theirs: read(theirs) };
  if (Object.values(trees).some((tree) => !isWhole(tree))) return undefined;
  if (unitOf(trees.ours.statements) !== unitOf(trees.theirs.statements)) return undefined;
  const { base: old, ours: mine, theirs: other } = withSameNames(trees);
  const { units, conflicts } = mergeUnits(unitsOf(old), unitsOf(mine), unitsOf(other), marks);
  const text = textOf(units, eolOf(ours));
  return conflicts > 0 || isWhole(read(text)) ? { text, conflicts } : undefined;
}

const read = (text: string): Tree => parse(text, vocabulary);

const isWhole = ({ problems }: Tree): boolean =>
  !problems.some(({ code, severity }) => severity === "error" && isSyntax(code));

type Trees = Record<keyof Versions, Tree>;

/** The three texts with what either side renamed called alike in all of them, each statement on lines of its own. */
function withSameNames(trees: Trees): Trees {
  const [old, mine, other] = [ownThings(trees.base), ownThings(trees.ours), ownThings(trees.theirs)];
  const [byUs, byThem] = [matchThings(old, mine).renamed, matchThings(old, other).renamed];
  const names = (things: typeof old) => new Set(things.map(({ name }) => name));
  const sure = (
    renamed: ReadonlyMap<string, string>,
    others: ReadonlyMap<string, string>,
    taken: Set<string>,
  ) =>
    new Map(
      [...renamed].filter(
        ([was, now]) => (others.get(was) ?? now) === now && (others.has(was) || !taken.has(now)),
      ),
    );
  const ours = sure(byUs, byThem, names(other));
  const theirs = sure(byThem, byUs, names(mine));
  const again = (tree: Tree, renamed: ReadonlyMap<string, string>) =>
    read(spread(read(renamedText(tree, renamed))));
  return {
    base: again(trees.base, new Map([...ours, ...theirs])),
    ours: again(trees.ours, theirs),
    theirs: again(trees.theirs, ours),
  };
}
