/**
 * The stock that a sheet names against the piece that is cut by it: whether the piece comes out of it.
 */
import type { SheetPart, Sheets } from "../../../server/drawing/markout/sheet/sheet.ts";
import { corners, type Solid } from "../solids/manifold.ts";
import { inMillimetres } from "./reading.ts";

/** Turns tried of what is sawn to its outline, about the way through its blank; radians. */
const TURNS = Array.from({ length: 161 }, (_, k) => ((k - 80) * Math.PI) / 1800);

/** How much larger than its stock a piece is, mm; undefined of a piece that is bent out of straight stock. */
export function overStock({ stock, marks }: SheetPart, unit: Sheets["unit"], cut: Solid): number | undefined {
  const isBent = stock.is!.value === "bent" || marks.some(({ kind }) => kind === "axis");
  // A strip is fixed to its rail, of wood of its own.
  if (isBent || marks.some(({ kind }) => kind === "strip")) return undefined;
  const size = (name: string): number => Number(stock[name]?.value) * inMillimetres[unit];
  const isSawn = stock["blank thick"] !== undefined;
  const before = isSawn ? "blank " : "";
  const across = stock.diameter && !isSawn ? "diameter" : undefined;
  const wide = size(across ?? `${before}wide`) * Number(stock.staves?.value ?? 1);
  const room = [wide, size(across ?? `${before}thick`)].sort((a, b) => a - b);
  const over = ([long, ...rest]: readonly number[]): number => {
    const [least, most] = rest.sort((a, b) => a - b);
    return Math.max(long! - size(`${before}long`), least! - room[0]!, most! - room[1]!);
  };
  // What is marked out in plan lies with its grain along its blank.
  const grain = ((Number(stock.grain?.value ?? 0) || 0) * Math.PI) / 180;
  const points = corners(cut).map(([x, y, z]): [number, number, number] => [
    x * Math.cos(grain) + y * Math.sin(grain),
    y * Math.cos(grain) - x * Math.sin(grain),
    z,
  ]);
  const turns = String(stock["blank is"]?.value ?? "").startsWith("sawn to its outline") ? TURNS : [0];
  return Math.min(
    ...turns.flatMap((turn) =>
      ([1, 2] as const).map((axis) => {
        const [c, s] = [Math.cos(turn), Math.sin(turn)];
        const turned = points.map((p) => {
          const q = [...p];
          q[0] = p[0] * c - p[axis] * s;
          q[axis] = p[0] * s + p[axis] * c;
          return q;
        });
        return over([0, 1, 2].map((k) => extent(turned.map((p) => p[k]!))));
      }),
    ),
  );
}

function extent(values: readonly number[]): number {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const value of values) {
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  return high - low;
}
