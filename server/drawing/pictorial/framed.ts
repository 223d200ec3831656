import type { Point } from "../sheet.ts";
import { spokenEye } from "./eye.ts";
import type { Look, Looked } from "./look.ts";
import type { Turnable } from "./turnable.ts";

/** Round the picture, mm on a full-size sheet. */
const MARGIN = 50;

/** What is said under a picture: from where it is seen and how far it is apart. */
export function captionOf({ glueUps }: Pick<Turnable, "glueUps">, { eye, apart = 0, glueUp }: Look): string {
  const from = spokenEye(eye);
  const shown = glueUp === undefined ? undefined : glueUps[glueUp];
  const what = shown
    ? `glue-up ${glueUp! + 1} of ${glueUps.length}${apart > 0 ? "" : ", closed"}`
    : apart > 0
      ? "taken apart"
      : "";
  return `${from[0]!.toUpperCase()}${from.slice(1)}${what ? `, ${what}` : ""}.`;
}

/** What is seen put on paper of its own, y down. */
export function framed({ strokes, tenons }: Pick<Looked, "strokes" | "tenons">, caption: string) {
  let [left, right, low, high] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { points } of [...strokes, ...tenons]) {
    for (const [x, y] of points) {
      left = Math.min(left, x);
      right = Math.max(right, x);
      low = Math.min(low, y);
      high = Math.max(high, y);
    }
  }
  const place = <T extends { points: Point[] }>(line: T): T => ({
    ...line,
    points: line.points.map(([x, y]): Point => [x - left + MARGIN, high + MARGIN - y]),
  });
  return {
    caption,
    width: right - left + 2 * MARGIN,
    height: high - low + 2 * MARGIN,
    strokes: strokes.map(place),
    tenons: tenons.map(place),
  };
}
