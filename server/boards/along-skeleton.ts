/**
 * A layout along sections and strips that a pricing has found: their cells are chosen anew, of what is left and off the board's defects.
 */
import { type Layout, laidBy, type Made, sectionOfWidths, type Task, tightened } from "./layout.ts";
import type { Skeleton } from "./pricing.ts";

/** Sections of a board without more than these are tried in every order. */
const FEW = 3;

/** The best over the orders of its sections, as defects may lie in some; undefined when nothing fits. */
export function layAlong(task: Task, skeletons: readonly Skeleton[]): Layout | undefined {
  const others =
    task.defects.length === 0
      ? []
      : skeletons.length <= FEW
        ? ordersOf(skeletons).slice(1)
        : [[...skeletons].reverse()];
  const layouts = [
    laidInOrder(task, skeletons, true),
    ...others.map((order) => laidInOrder(task, order, false)),
  ].flatMap((layout) => layout ?? []);
  if (layouts.length === 0) return undefined;
  const loss = ({ used, worth }: Layout) => used - worth;
  return layouts.reduce((a, b) => (loss(b) < loss(a) - 1e-6 ? b : a));
}

/** As they are first. */
function ordersOf<T>(all: readonly T[]): T[][] {
  if (all.length < 2) return [[...all]];
  return all.flatMap((first, k) => ordersOf(all.filter((_, n) => n !== k)).map((rest) => [first, ...rest]));
}

/** `placed`: none begins before the place it has. */
function laidInOrder(task: Task, skeletons: readonly Skeleton[], placed: boolean): Layout | undefined {
  let at = 0;
  return laidBy(task, (rest) => {
    for (;;) {
      const next = skeletons[at++];
      if (!next) return undefined;
      const end = rest.clear.x + rest.clear.long;
      const x = placed ? Math.max(rest.clear.x, next.x) : rest.clear.x;
      // A skeleton is too short by up to a millimetre for each cell, and a defect on the way takes room.
      const shortest = Math.min(...rest.cells.map(({ long }) => long));
      const base = next.long + Math.ceil(next.long / shortest) + 1;
      const made = [base, base + shortest, base + 2 * shortest]
        .filter((_, k) => k === 0 || isHarmed(rest, x, base))
        .flatMap((long) => {
          const clear = { ...rest.clear, x, long: Math.min(end - x, long) };
          const section = { ...rest, clear };
          return tightened(section, (task) => sectionOfWidths(task, next.wides)) ?? [];
        });
      if (made.length > 0) return made.reduce((a, b) => (lossOf(b, rest) < lossOf(a, rest) ? b : a));
    }
  });
}

const isHarmed = ({ defects }: Task, x: number, long: number): boolean =>
  defects.some((box) => box.x < x + long && box.x + box.long > x);

/** How much of a section is used for what it is worth. */
function lossOf({ section, offcuts, worth }: Made, { board, saw }: Task): number {
  const area = (section.long + saw) * board.wide - offcuts.reduce((sum, box) => sum + box.long * box.wide, 0);
  return area / worth;
}
