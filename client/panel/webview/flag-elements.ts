/**
 * Faulty parts marked by more than colour: hatched, their lines dashed, and a lettered flag on a leader. A flag of an error is pointed
 * and filled, that of a warning rounded and open. Flags keep their size on screen with the words.
 */
import type { Point, View } from "../../../server/drawing/sheet.ts";
import type { Fault } from "../../../server/editor/faults.ts";
import { type Flagged, lettersOf, placeFlags } from "./flag-places.ts";
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

/** The hatchings, to be put once into each drawing. */
export function hatchings(): SVGDefsElement {
  const line = (d: string) => element("path", { d });
  const pattern = (id: string, ...lines: SVGElement[]) =>
    element(
      "pattern",
      { id, class: id, width: HATCH, height: HATCH, patternUnits: "userSpaceOnUse" },
      ...lines,
    );
  const rising = `M0 ${HATCH}L${HATCH} 0`;
  const falling = `M0 0L${HATCH} ${HATCH}`;
  return element(
    "defs",
    {},
    pattern("hatch-error", line(rising), line(falling)),
    pattern("hatch-warning", line(rising)),
  );
}

/** From one line of a hatching to the next, mm on the sheet. */
const HATCH = 22;

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

/** The flags of a view with their leaders; goes over everything. */
export function flagElements(view: Flagged, faults: readonly Fault[]): SVGGElement {
  return element(
    "g",
    { class: "flags" },
    ...placeFlags(view, faults).map(({ part, faults: found, anchor, at }) => {
      const gravity = found[0]?.severity === "error" ? "error" : "warning";
      return element(
        "g",
        { class: `flag ${gravity}`, "data-part": part },
        element("path", { class: "leader", d: pathThrough([anchor, at]), "data-part": part }),
        element("circle", { class: "leader-end", cx: anchor[0], cy: anchor[1], r: "0.18em" }),
        board(at, lettersOf(found), gravity, part),
      );
    }),
  );
}

/** The flag itself, drawn in its own units so that it grows and shrinks with the words. */
function board([x, y]: Point, letters: string, gravity: Gravity, part: string): SVGGElement {
  const wide = 14 + 7 * letters.length;
  const d =
    gravity === "error"
      ? `M${-wide / 2} 0L${-wide / 2 + 5} -9H${wide / 2 - 5}L${wide / 2} 0L${wide / 2 - 5} 9H${-wide / 2 + 5}Z`
      : `M${-wide / 2 + 9} -9H${wide / 2 - 9}A9 9 0 0 1 ${wide / 2 - 9} 9H${-wide / 2 + 9}A9 9 0 0 1 ${-wide / 2 + 9} -9Z`;
  return element(
    "g",
    { transform: `translate(${x} ${y})` },
    element(
      "svg",
      { class: "board", width: "0.1em", height: "0.1em", viewBox: "0 0 1.2 1.2" },
      element("path", { d, "data-part": part }),
      element("text", { y: 4.5, "text-anchor": "middle" }, letters),
    ),
  );
}
