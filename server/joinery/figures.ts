/**
 * The figures that decide whether joints can be brought together, from their data file.
 */
import data from "./figures.json" with { type: "json" };

/** A figure by its name: mm, N, N/mm² or a share. */
export const allowance = (name: keyof typeof data): number => data[name].value;

/** Where some of the figures come from, as sentences. */
export const sourceOf = (...names: (keyof typeof data)[]): string =>
  names
    .map((name) => {
      const { what, source } = data[name];
      return `${what.charAt(0).toUpperCase()}${what.slice(1)}: ${source}.`;
    })
    .join(" ");
