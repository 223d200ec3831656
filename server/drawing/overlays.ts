/**
 * What can be laid over a drawing when it is asked for.
 */
import type { Chair } from "../chair/chair.ts";
import { floorOverlay } from "./floor-overlay.ts";
import type { Extent } from "./measures.ts";
import type { OneViewName, Overlay, OverlayName, Point, View } from "./sheet.ts";
import { sitterOverlay } from "./sitter-overlay.ts";

/** Which view each is laid over. */
export const overlayViews: Record<OneViewName, View["name"]> = { floor: "plan", sitter: "side" };

interface Laid {
  overlay: Overlay;
  /** What a reader of the sheet should know of it, in a short sentence or two. */
  note: string;
}

const makers: Record<OneViewName, (chair: Chair, seen: Extent) => Laid | undefined> = {
  floor: floorOverlay,
  sitter: sitterOverlay,
};

/** The overlays asked for that the chair has something to show in, as seen, y up, and a note on each. */
export function overlaysOf(
  chair: Chair,
  names: readonly OverlayName[],
  extents: Record<View["name"], Extent>,
): Laid[] {
  return (["floor", "sitter"] as const)
    .filter((name) => names.includes(name))
    .flatMap((name) => makers[name](chair, extents[overlayViews[name]]) ?? []);
}

/** The places an overlay reaches, its words by their anchors. */
export const pointsOf = ({ strokes, words }: Overlay): Point[] => [
  ...strokes.flatMap(({ points }) => points),
  ...words.map(({ at }) => at),
];
