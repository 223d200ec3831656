/**
 * The best layout of one clear board when only few pieces are left: crosscut, ripped, crosscut again, every set of pieces tried.
 */
import type { Cell } from "./cells.ts";
import { bestOf, type Cutting, setsOf } from "./exact.ts";
import { type Layout, leftOver, type Section, type Strip, type Task } from "./layout.ts";
import type { Placed } from "./strip.ts";

/** More sets than this are left to the quicker way. */
const FEW = 400;

/** Undefined where there are too many pieces, a defect in the board, or nothing fits. */
export function exactLayout(task: Task): Layout | undefined {
  const { clear, defects, saw, board, offcut } = task;
  if (defects.length > 0) return undefined;
  const cells = task.cells.filter(
    (cell) =>
      cell.wide <= clear.wide &&
      task.cells.every((other) => other.wanted !== cell.wanted || other.wide >= cell.wide),
  );
  const kinds = cells.map((cell) => {
    const left = task.left[cell.wanted]!;
    const worth = Math.min(cell.count, left) * task.value[cell.wanted]!;
    return { long: cell.long, wide: cell.wide, value: worth, most: Math.ceil(left / cell.count) };
  });
  if (kinds.length === 0 || setsOf(kinds) > FEW) return undefined;
  const cutting = bestOf({
    long: clear.long,
    wide: clear.wide,
    saw,
    kinds,
    stages: 3,
    first: "crosscut",
  })?.cutting;
  if (!cutting) return undefined;
  const layout: Layout = { sections: [], offcuts: [], worth: 0, used: 0, gives: new Map() };
  let x = clear.x;
  for (const part of chain(cutting, "crosscut")) {
    const section = sectionFrom(part, x, task, cells, layout);
    layout.sections.push(section);
    x += part.long + saw;
  }
  if (board.long - x >= offcut.long) layout.offcuts.push({ x, y: 0, long: board.long - x, wide: board.wide });
  layout.used = board.long * board.wide - layout.offcuts.reduce((sum, box) => sum + box.long * box.wide, 0);
  return layout;
}

/** What a row of cuts one way parts. */
const chain = (cutting: Cutting, is: "crosscut" | "rip"): Cutting[] =>
  cutting.is === is ? cutting.parts.flatMap((part) => chain(part, is)) : [cutting];

function sectionFrom(part: Cutting, x: number, task: Task, cells: readonly Cell[], layout: Layout): Section {
  const { clear, saw, left, value, offcut } = task;
  const own = { ...task, clear: { ...clear, x, long: part.long } };
  const strips: Strip[] = [];
  let y = clear.y;
  for (const row of chain(part, "rip")) {
    const placed: Placed[] = [];
    let at = x;
    for (const piece of chain(row, "crosscut")) {
      if (piece.is !== "piece") continue;
      const cell = cells[piece.kind]!;
      const given = layout.gives.get(cell.wanted) ?? 0;
      const used = Math.min(cell.count, left[cell.wanted]! - given);
      placed.push({ cell, x: at, used });
      layout.gives.set(cell.wanted, given + used);
      layout.worth += used * value[cell.wanted]!;
      at += cell.long + saw;
    }
    const rest = x + part.long - at;
    if (rest >= offcut.long && row.wide >= offcut.wide)
      layout.offcuts.push({ x: at, y, long: rest, wide: row.wide });
    strips.push({ y, wide: row.wide, placed });
    y += row.wide + saw;
  }
  layout.offcuts.push(...leftOver(own, y, clear.y + clear.wide - y));
  return { x, long: part.long, strips };
}
