import type { Point } from "./sheet.ts";

/** Lines of a picture by the cells that they run through, so that those near a line are found without looking at all. */
export interface LineGrid {
  /** Puts a line into the cells that it runs through; lines are numbered in the order they come. */
  put(a: Point, b: Point): void;
  /** The numbers, in no order and each once, of the lines in all cells within `air` of a → b; valid until the next call. */
  near(a: Point, b: Point, air: number): readonly number[];
}

/** For about `count` lines within a box. */
export function lineGrid(
  count: number,
  box: { left: number; right: number; low: number; high: number },
): LineGrid {
  const side = Math.max(1, Math.min(64, Math.ceil(Math.sqrt(count))));
  const wide = Math.max(1, box.right - box.left) / side;
  const tall = Math.max(1, box.high - box.low) / side;
  const cells: number[][] = Array.from({ length: side * side }, () => []);
  /** By line: the last search that found it. */
  const found: number[] = [];
  const answer: number[] = [];
  let search = 0;

  const column = (x: number) => clamped(Math.floor((x - box.left) / wide), side);
  const row = (y: number) => clamped(Math.floor((y - box.low) / tall), side);

  /** Every cell within `air` of a → b, column by column. */
  function along(a: Point, b: Point, air: number, visit: (cell: number[]) => void): void {
    const [from, to] = a[0] <= b[0] ? [a, b] : [b, a];
    const run = to[0] - from[0];
    const last = column(to[0] + air);
    for (let c = column(from[0] - air); c <= last; c++) {
      const start = box.left + c * wide - air;
      const end = start + wide + 2 * air;
      const p = run > 0 ? within((start - from[0]) / run) : 0;
      const q = run > 0 ? within((end - from[0]) / run) : 1;
      const y = from[1] + (to[1] - from[1]) * p;
      const z = from[1] + (to[1] - from[1]) * q;
      const top = row(Math.max(y, z) + air);
      for (let r = row(Math.min(y, z) - air); r <= top; r++) visit(cells[c * side + r]!);
    }
  }

  return {
    put(a, b) {
      const line = found.length;
      found.push(0);
      along(a, b, 0, (cell) => cell.push(line));
    },
    near(a, b, air) {
      search++;
      answer.length = 0;
      along(a, b, air, (cell) => {
        for (const line of cell) {
          if (found[line] === search) continue;
          found[line] = search;
          answer.push(line);
        }
      });
      return answer;
    },
  };
}

const clamped = (cell: number, side: number): number => (cell < 0 ? 0 : cell >= side ? side - 1 : cell);

const within = (share: number): number => (share < 0 ? 0 : share > 1 ? 1 : share);
