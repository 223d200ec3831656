/**
 * Faulty parts marked by more than colour: hatched and their lines dashed, beside the flags that are lettered over them.
 */
import type { View } from "../../../server/drawing/sheet.ts";
import type { Fault } from "../../../server/editor/faults.ts";
import { element, pathThrough } from "./svg.ts";

/** How grave the gravest finding of a part is. */
export type Gravity = "error" | "warning";

/** Each faulty part's gravest finding. */
export function gravityOf(faults: readonly Fault[]): Map<string, Gravity> {
  const found = new Map<string, Gravity>();
  for (const { severity, parts } of faults) {
    for (const { part } of parts)
      if (found.get(part) !== "error") found.set(part, severity === "error" ? severity : "warning");
  }
  return found;
}

/** The hatchings, to be put once into each drawing of a scale in pixels to the millimetre. */
export function hatchings(scale: number): SVGDefsElement {
  const apart = Math.round((HATCH / scale) * 100) / 100;
  const line = (d: string) => element("path", { d });
  const pattern = (id: string, ...lines: SVGElement[]) =>
    element(
      "pattern",
      { id, class: id, width: apart, height: apart, patternUnits: "userSpaceOnUse" },
      ...lines,
    );
  const rising = `M0 ${apart}L${apart} 0`;
  const falling = `M0 0L${apart} ${apart}`;
  return element(
    "defs",
    {},
    pattern("hatch-error", line(rising), line(falling)),
    pattern("hatch-warning", line(rising)),
  );
}

/** From one line of a hatching to the next, px. */
const HATCH = 7;

/** The faulty parts of a view hatched where they can be seen; goes under the lines. */
export function hatchedAreas({ areas }: View, grave: ReadonlyMap<string, Gravity>): SVGGElement {
  const first = areas.findIndex(({ part }) => grave.has(part));
  // Each part is painted over those behind it, so that a hatching shows only where its part does.
  const painted = first < 0 ? [] : areas.slice(first);
  return element(
    "g",
    { class: "hatched" },
    ...painted.map(({ part, points }) => {
      const gravity = grave.get(part);
      const d = pathThrough(points, true);
      return element("path", { d, class: gravity ?? "cover" });
    }),
  );
}
