import data from "./allowances.json" with { type: "json" };

/** Height of a sitter's shoes, mm; from memory. */
export function shoesOf(whom: "women" | "men" | "children"): number {
  return data.shoes[whom];
}
