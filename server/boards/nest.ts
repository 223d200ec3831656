/**
 * Equal curved parts laid in each other across a board, a saw cut apart.
 */
import {
  extents,
  type Line,
  laid,
  lineAt,
  moved,
  type Outline,
  type Spot,
  type Way,
  ways,
} from "./outline.ts";

/** Parts nested: where each lies from the lower left corner of the box around all. */
interface Nest {
  count: number;
  long: number;
  wide: number;
  pieces: { outline: Outline; way: Way }[];
}

/**
 * The nest of a number of equal outlines, as cut, that is narrowest: all the same way, or every other one turned; `saw` is left between
 * them everywhere, measured square.
 */
export function nestOf(outline: Outline, count: number, saw: number): Nest {
  let best: Nest | undefined;
  for (const other of ways) {
    const nest = rowOf(outline, other, count, saw);
    if (!best || nest.wide < best.wide - 1e-6) best = nest;
    if (count === 1) break;
  }
  return best!;
}

function rowOf(outline: Outline, other: Way, count: number, saw: number): Nest {
  const kinds = [outline, laid(outline, other)] as const;
  const steps = [pitch(kinds[0], kinds[1], saw), pitch(kinds[1], kinds[0], saw)] as const;
  const pieces: Nest["pieces"] = [];
  let y = 0;
  for (let k = 0; k < count; k++) {
    pieces.push({ outline: moved(kinds[(k % 2) as 0], 0, y), way: k % 2 === 0 ? "as it is" : other });
    y += steps[(k % 2) as 0];
  }
  const boxes = pieces.map((piece) => extents(piece.outline));
  const low = Math.min(...boxes.map((box) => box.low));
  const high = Math.max(...boxes.map((box) => box.high));
  const from = Math.min(...boxes.map((box) => box.from));
  const to = Math.max(...boxes.map((box) => box.to));
  return {
    count,
    long: to - from,
    wide: high - low,
    pieces: pieces.map(({ outline: each, way }) => ({ outline: moved(each, -from, -low), way })),
  };
}

/** How far the outline `over` must be slid up from where it is for its lower line to clear the upper line of `under` by `gap`. */
export function pitch(under: Outline, over: Outline, gap: number): number {
  const upside = (line: Line): Line => line.map(([x, y]): Spot => [x, -y]);
  return Math.max(
    ...over.low.map(([x, y]) => clearAbove(under.high, x, gap) - y),
    ...under.high.map(([x, y]) => y + clearAbove(upside(over.low), x, gap)),
  );
}

/** The lowest height over x that is `gap` from a line: the upper edge of the line drawn that broad. */
function clearAbove(line: Line, x: number, gap: number): number {
  let top = Number.NEGATIVE_INFINITY;
  for (let k = 0; k + 1 < line.length; k++) {
    const a = line[k]!;
    const b = line[k + 1]!;
    if (x < a[0] - gap || x > b[0] + gap) continue;
    for (const [u, v] of [a, b]) {
      const off = x - u;
      if (Math.abs(off) <= gap) top = Math.max(top, v + Math.sqrt(gap * gap - off * off));
    }
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const shift = (-gap * (b[1] - a[1])) / length;
    const foot = x - shift;
    if (foot >= a[0] && foot <= b[0])
      top = Math.max(top, lineAt([a, b], foot) + (gap * (b[0] - a[0])) / length);
  }
  return top;
}
