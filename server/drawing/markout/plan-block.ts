/**
 * A part in plan: its outline with the edges numbered, and a table of their lengths and of the corners between them.
 */
import { printAngle } from "../../design/units.ts";
import type { Piece, Spot } from "../../joinery/pieces/piece.ts";
import { boreItems } from "./bores-block.ts";
import type { Block } from "./faces.ts";
import type { Figures } from "./figures.ts";
import { grainSign } from "./grain.ts";
import { BODY, type Item, line, moved, type Point, SMALL, words } from "./page.ts";
import { spread } from "./spread.ts";
import { tableBlock } from "./table.ts";

const scales = [1, 2, 3, 4, 5, 6, 8, 10];
/** Round the outline for the edges' numbers, mm. */
const CLEAR = 11;
/** Edges shorter than this on paper have their numbers led to a row outside, mm. */
const SHORT = 14;
/** Edges that turn by less than this at a corner are one curve, radians. */
const CURVE = (12 * Math.PI) / 180;

/** In a room so wide and high; `by` is how much all of it is enlarged afterwards, to the scale that is given. */
export function planBlock(
  piece: Piece,
  figures: Figures,
  wide: number,
  high: number,
  by = 1,
): Block & { scale: number } {
  const { ring, seen } = piece.plan!;
  const { long, wide: deep, thick } = piece.size;
  const half = wide * 0.56;
  const fits = (size: number) => long / size <= half - 2 * CLEAR && deep / size <= high - 2 * CLEAR - 8;
  const drawn = scales.find((each) => fits(each * by)) ?? 10;
  const scale = drawn * by;
  const to = ([x, y]: Spot): Point => [CLEAR + x / scale, CLEAR + (deep - y) / scale];
  const items: Item[] = [line(ring.map(to), "outline", { closed: true })];
  items.push(...boreItems(piece.plan!, figures, to));
  const middle = (axis: 0 | 1) => ring.reduce((sum, spot) => sum + spot[axis], 0) / ring.length;
  items.push(...grainSign(to([middle(0), middle(1)]), piece.plan!.grain));
  const edges = edgesOf(ring);
  items.push(...numbers(edges, to, scale, { low: CLEAR + deep / scale + 7.5, high: CLEAR - 5.5, half }));
  const foot = 2 * CLEAR + deep / scale + 2;
  items.push(
    words(
      [CLEAR, foot],
      `Seen ${seen === "its top" ? "on its top" : seen}. ${figures.print(thick)} thick.`,
      SMALL,
    ),
  );
  const rows = edges.map(({ length, corner, curved }, k) => [
    String(k + 1),
    figures.print(length),
    curved ? "" : printAngle(corner),
    curved ? "along a curve: see the template" : "",
  ]);
  if (rows.length === 0) return { items, height: foot + 1, scale: drawn };
  const table = tableBlock("Edges", ["", "long", "corner after it", ""], rows, wide - half - 4);
  items.push(...table.items.map((item) => moved(item, half + 4, 0)));
  return { items, height: Math.max(foot + 1, table.height), scale: drawn };
}

/** Each edge's number beside it; those of short edges in a row above or below, led to them. */
function numbers(
  edges: readonly PlanEdge[],
  to: (spot: Spot) => Point,
  scale: number,
  rows: { low: number; high: number; half: number },
): Item[] {
  const placed = edges.map(({ middle, out, length }, k) => {
    const [x, y] = to(middle);
    return { x, y, out, text: String(k + 1), short: length / scale < SHORT };
  });
  const items: Item[] = placed
    .filter(({ short }) => !short)
    .map(({ x, y, out, text }) =>
      words([x + out[0] * 3.4, y - out[1] * 3.4 + 1], text, BODY, { anchor: "middle", bold: true }),
    );
  const centre = (rows.low + rows.high) / 2;
  for (const row of [rows.high, rows.low]) {
    const mine = placed.filter(({ short, y }) => short && (row === rows.high) === y < centre);
    const places = spread(
      mine.map(({ x }) => x),
      4.6,
      2,
      rows.half,
    );
    mine.forEach(({ x, y, text }, k) => {
      const near = row === rows.high ? row + 0.8 : row - 2.8;
      items.push(
        line(
          [
            [x, y],
            [places[k]!, near],
          ],
          "fine",
        ),
        words([places[k]!, row], text, BODY, { anchor: "middle", bold: true }),
      );
    });
  }
  return items;
}

interface PlanEdge {
  length: number;
  /** Inside, between it and the next. */
  corner: number;
  middle: Spot;
  /** Unit, out of the piece. */
  out: Spot;
  curved: boolean;
}

/** The edges of a ring that runs anticlockwise, a curve's short ones together. */
export function edgesOf(ring: readonly Spot[]): PlanEdge[] {
  const count = ring.length;
  const at = (k: number): Spot => ring[((k % count) + count) % count]!;
  const bearing = (k: number) => Math.atan2(at(k + 1)[1] - at(k)[1], at(k + 1)[0] - at(k)[0]);
  const turn = (k: number) => {
    const raw = bearing(k) - bearing(k - 1);
    return Math.atan2(Math.sin(raw), Math.cos(raw));
  };
  const corners = Array.from({ length: count }, (_, k) => k).filter((k) => Math.abs(turn(k)) > CURVE);
  if (corners.length < 2) return [];
  return corners.map((start, n): PlanEdge => {
    const end = n + 1 < corners.length ? corners[n + 1]! : corners[0]! + count;
    const steps = Array.from({ length: end - start }, (_, k) => start + k);
    const length = steps.reduce(
      (sum, k) => sum + Math.hypot(at(k + 1)[0] - at(k)[0], at(k + 1)[1] - at(k)[1]),
      0,
    );
    const half = steps[Math.floor(steps.length / 2)]!;
    const [a, b] = [at(half), at(half + 1)];
    const size = Math.hypot(b[0] - a[0], b[1] - a[1]);
    return {
      length,
      corner: Math.PI - turn(end),
      middle: [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2],
      out: [(b[1] - a[1]) / size, -(b[0] - a[0]) / size],
      curved: steps.length > 1,
    };
  });
}
