/**
 * The boards a chair can be sawn from: those to hand, those a yard sells, or the usual sawn thicknesses.
 */
import type { Design, TimberDesign } from "../design/design.ts";
import { BOARD_FOOT, millimetresIn } from "../design/units.ts";
import type { Allowances } from "./allowances.ts";
import sawn from "./sawn-sizes.json" with { type: "json" };

/** A rectangle in a board, from its first end and its first edge, mm. */
export interface Box {
  x: number;
  y: number;
  long: number;
  wide: number;
}

/** Boards that are alike, of which there may be several. */
export interface WoodBoard {
  /** In the text: `plank`, or a yard's name. */
  source: string;
  from: "hand" | "yard" | "usual";
  /** The largest that is sold, asked for only where the typical one has no room. */
  largest?: true;
  /** Names of the single boards; of what is to be bought the first is numbered 1. */
  names: string[];
  /** How many there are; as many as wanted of what is to be bought. */
  count: number;
  timber?: TimberDesign;
  long: number;
  wide: number;
  thick: number;
  /** What is left within its ends and its wane. */
  clear: Box;
  defects: (Box & { what?: string })[];
  /** Of one board; absent when it is not known. */
  price?: number;
}

/** What can be sawn from, boards to hand first. Boards of which the text gives no size are left out. */
export function woodOf(design: Design, allowances: Allowances): WoodBoard[] {
  const hand = [...design.boards.values()].flatMap((board): WoodBoard[] => {
    const size = board.size?.value;
    if (!size) return [];
    const count = board.count?.value ?? 1;
    const timber = (board.timber ?? design.timber)?.value;
    const made = bare(size, board.wane?.value ?? 0, allowances);
    if (!made) return [];
    return [
      {
        ...made,
        source: board.name,
        from: "hand",
        count,
        names: count === 1 ? [board.name] : Array.from({ length: count }, (_, k) => `${board.name}.${k + 1}`),
        ...(timber && { timber }),
        ...(board.price && { price: board.price.value }),
        defects: board.defects.flatMap(({ value }) => {
          const { at, long, fromEdge, wide = size.wide - fromEdge, what } = value;
          const box = {
            x: at,
            y: fromEdge,
            long: Math.min(long, size.long - at),
            wide: Math.min(wide, size.wide - fromEdge),
          };
          return box.long > 0 && box.wide > 0 ? [{ ...box, ...(what !== undefined && { what }) }] : [];
        }),
      },
    ];
  });
  const yards = [...design.yards.values()].flatMap((yard) => {
    const timber = (yard.timber ?? design.timber)?.value;
    const usual = usualYard(design);
    const long = yard.long?.value ?? usual.long;
    const wide = yard.wide?.value ?? usual.wide;
    return (yard.thick?.value ?? []).flatMap((thick) =>
      bought({
        source: yard.name,
        from: "yard",
        thick,
        long,
        wide,
        allowances,
        timber,
        price: priceOf(yard.price?.value, design),
      }),
    );
  });
  return [...hand, ...yards];
}

/** A yard's price made one of a cubic millimetre. */
const priceOf = (price: number | undefined, { units }: Design): number | undefined =>
  price === undefined ? undefined : price / (units === "in" ? BOARD_FOOT : 1e9);

/** Lengths and widths that a yard sells where the file gives none, mm. */
function usualYard({ units }: Design): Pick<Bought, "long" | "wide"> {
  const { long, wide } = units === "in" ? sawn.yard.in : sawn.yard.mm;
  const step = units === "in" ? millimetresIn("in") : 1;
  const scaled = ({ low, high }: { low: number; high: number }) => ({ low: low * step, high: high * step });
  return { long: scaled(long), wide: scaled(wide) };
}

/** The usual sawn thicknesses of a timber that neither a board nor a yard gives, by the file's unit. */
export function usualWood(
  design: Design,
  timber: TimberDesign | undefined,
  allowances: Allowances,
): WoodBoard[] {
  const thicks =
    design.units === "in" ? sawn.inch.thick.map((inch) => inch * millimetresIn("in")) : sawn.metric.thick;
  const { long, wide } = usualYard(design);
  return thicks.flatMap((thick) =>
    bought({ source: "usual", from: "usual", thick, long, wide, allowances, timber, price: undefined }),
  );
}

interface Bought {
  source: string;
  from: "yard" | "usual";
  thick: number;
  long: { low: number; high: number };
  wide: { low: number; high: number };
  allowances: Allowances;
  timber: TimberDesign | undefined;
  price: number | undefined;
}

/** Boards of typical size, the middle of what is sold; and of the largest, for parts that the typical one has no room for. */
function bought({ source, from, thick, long, wide, allowances, timber, price }: Bought): WoodBoard[] {
  const sizes = [
    { long: (long.low + long.high) / 2, wide: (wide.low + wide.high) / 2 },
    { long: long.high, wide: wide.high },
  ];
  const seen = new Set<string>();
  return sizes.flatMap((size, k): WoodBoard[] => {
    const made = bare({ ...size, thick }, 0, allowances);
    const key = `${size.long} ${size.wide}`;
    if (!made || seen.has(key)) return [];
    seen.add(key);
    return [
      {
        ...made,
        source,
        from,
        names: [],
        count: Number.POSITIVE_INFINITY,
        ...(k > 0 && { largest: true as const }),
        ...(timber && { timber }),
        defects: [],
        ...(price !== undefined && { price: price * size.long * size.wide * thick }),
      },
    ];
  });
}

type Bare = Pick<WoodBoard, "long" | "wide" | "thick" | "clear">;

function bare(
  size: { long: number; wide: number; thick: number },
  wane: number,
  { ends }: Allowances,
): Bare | undefined {
  const clear = { x: ends, y: wane, long: size.long - 2 * ends, wide: size.wide - 2 * wane };
  return clear.long > 0 && clear.wide > 0 ? { ...size, clear } : undefined;
}
