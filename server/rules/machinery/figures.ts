/**
 * The figures the rules judge by, from their data file.
 */
import data from "../figures.json" with { type: "json" };

type FigureName = keyof typeof data;

/** One figure of the trade: in millimetres, radians, cubic millimetres or as a share. */
export interface Figure {
  low?: number;
  high?: number;
  what: string;
  /** Where it comes from, and whether it was seen in print, recalled, or is a rule of the trade with no print behind it. */
  source: string;
  standing: "seen" | "memory" | "practice";
}

const sizes: Record<string, number> = { deg: Math.PI / 180, mm: 1, mm3: 1, share: 1 };

/** A figure by its name. */
export function figure(name: FigureName): Figure {
  const row: { low?: number; high?: number; unit: string; what: string; source: string; standing: string } =
    data[name];
  const size = sizes[row.unit] ?? 1;
  return {
    ...(row.low === undefined ? {} : { low: row.low * size }),
    ...(row.high === undefined ? {} : { high: row.high * size }),
    what: row.what,
    source: row.source,
    standing: row.standing as Figure["standing"],
  };
}

export const figureNames = Object.keys(data) as FigureName[];

/** A figure's lower end; every figure asked for it has one. */
export const least = (name: FigureName): number => figure(name).low ?? 0;
/** A figure's upper end. */
export const most = (name: FigureName): number => figure(name).high ?? Number.POSITIVE_INFINITY;

/** The sources of some figures as one sentence for `explain` and the reference. */
export function sourcesOf(...names: FigureName[]): string {
  return names
    .map((name) => {
      const { source, what, standing } = figure(name);
      const mark =
        standing === "seen" ? " (seen in print)" : standing === "memory" ? " (from memory, not seen)" : "";
      return `${what[0]?.toUpperCase()}${what.slice(1)}: ${source}${mark}.`;
    })
    .join(" ");
}
