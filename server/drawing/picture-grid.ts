import type { Point } from "./sheet.ts";

interface Box {
  left: number;
  right: number;
  low: number;
  high: number;
}

/** What a picture holds by the cells that it lies in, so that what is near a line is found without looking at all of it. */
export interface PictureGrid {
  /** Puts a line into the cells that it runs through; what is put in is numbered in the order it comes. */
  put(a: Point, b: Point): void;
  /** Puts something into all cells that its box reaches into. */
  putBox(box: Box): void;
  /** The numbers, in no order and each once, of what is in the cells within `air` of a → b; valid until the next call. */
  near(a: Point, b: Point, air: number): readonly number[];
}

/** For about `count` things within a box. */
export function pictureGrid(count: number, box: Box): PictureGrid {
  const side = Math.max(1, Math.min(64, Math.ceil(Math.sqrt(count))));
  const wide = Math.max(1, box.right - box.left) / side;
  const tall = Math.max(1, box.high - box.low) / side;
  const cells: number[][] = Array.from({ length: side * side }, () => []);
  /** By number: the last search that found it. */
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
      const number = found.length;
      found.push(0);
      along(a, b, 0, (cell) => cell.push(number));
    },
    putBox({ left, right, low, high }) {
      const number = found.length;
      found.push(0);
      const [lastColumn, lastRow] = [column(right), row(high)];
      for (let c = column(left); c <= lastColumn; c++) {
        for (let r = row(low); r <= lastRow; r++) cells[c * side + r]!.push(number);
      }
    },
    near(a, b, air) {
      search++;
      answer.length = 0;
      along(a, b, air, (cell) => {
        for (const number of cell) {
          if (found[number] === search) continue;
          found[number] = search;
          answer.push(number);
        }
      });
      return answer;
    },
  };
}

const clamped = (cell: number, side: number): number => (cell < 0 ? 0 : cell >= side ? side - 1 : cell);

const within = (share: number): number => Math.min(1, Math.max(0, share));
