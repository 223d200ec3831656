/**
 * Which part is named in which view, with its figures: each once, where most of it is seen; of parts that come in pairs or rows the first.
 */
import type { Point, View } from "../../../../server/drawing/sheet.ts";
import type { PartTold } from "../../../../server/editor/about/parts-told.ts";
import { placeOn } from "../flag-places.ts";
import { boxOf } from "./boxes.ts";
import type { Named } from "./labels.ts";

/** The names to letter in each view. */
export function namedIn(
  views: readonly View[],
  told: readonly PartTold[],
): Partial<Record<View["name"], Named[]>> {
  const named: Partial<Record<View["name"], Named[]>> = {};
  const done = new Set<string>();
  for (const { part, brief } of told) {
    if (!brief || done.has(brief[0] ?? "")) continue;
    const best = views
      .map((view) => ({ view, size: seenOf(view, part) }))
      .filter(({ size }) => size > 0)
      .sort((a, b) => b.size - a.size)
      .map(({ view }) => ({ view, anchor: placeOn(view.areas, part) }))
      .find((each): each is { view: View; anchor: Point } => each.anchor !== undefined);
    if (!best) continue;
    done.add(brief[0] ?? "");
    named[best.view.name] = [...(named[best.view.name] ?? []), { part, lines: brief, anchor: best.anchor }];
  }
  return named;
}

/** How large a part is in a view: the box around it, mm². */
function seenOf({ areas }: View, part: string): number {
  const box = boxOf(areas.flatMap((area) => (area.part === part ? [...area.points] : [])));
  return Math.max(0, box.right - box.left) * Math.max(0, box.foot - box.top);
}
