import { circle, type Item, line, type Point } from "../markout/page.ts";

/** First-angle puts each view on the far side of the one it is seen from, third-angle on the near side (ISO 5456-2). */
export type Angle = "first" | "third";

/** Height of the symbol's small end, mm; the large end and the length are twice that. */
const SMALL_END = 3.5;
export const SYMBOL = { width: 6 * SMALL_END, height: 2 * SMALL_END };

/** The symbol of the projection from its upper left corner: a frustum from the side, and looking at its small end. */
export function projectionSymbol([x, y]: Point, angle: Angle): Item[] {
  const h = SMALL_END;
  const axis = y + h;
  const [cone, end] = angle === "first" ? [x + h / 2, x + 4.5 * h] : [x + 3.5 * h, x + 1.5 * h];
  const frustum: Point[] = [
    [cone, axis - h / 2],
    [cone + 2 * h, axis - h],
    [cone + 2 * h, axis + h],
    [cone, axis + h / 2],
  ];
  return [
    line(frustum, "knife", { closed: true }),
    circle([end, axis], h / 2, "knife"),
    circle([end, axis], h, "knife"),
    line(
      [
        [x, axis],
        [x + 6 * h, axis],
      ],
      "datum",
    ),
    line(
      [
        [end, y - 1],
        [end, y + 2 * h + 1],
      ],
      "datum",
    ),
  ];
}
