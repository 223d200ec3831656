import type { Plane, Vec3 } from "../../geometry/solid.ts";
import { along, cross, negate, squareTo, unit } from "../../geometry/vec.ts";
import type { FaceName } from "../chair.ts";

/** The directions of a straight stretch of a post: up its centre line, and out of its left and back faces. All unit, square. */
export interface PostFrame {
  direction: Vec3;
  left: Vec3;
  back: Vec3;
}

/**
 * The front and back faces hold the level line across the chair; the side faces are square to them. `turn` (radians) then turns the
 * section about the centre line, the front face towards +x when positive.
 */
export function postFrame(direction: Vec3, turn: number): PostFrame {
  const left = unit(squareTo([1, 0, 0], direction));
  const back = cross(direction, left);
  if (turn === 0) return { direction, left, back };
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  return {
    direction,
    left: along([left[0] * c, left[1] * c, left[2] * c], back, s),
    back: along([back[0] * c, back[1] * c, back[2] * c], left, -s),
  };
}

/** Out of a face. */
export function faceNormal(frame: PostFrame, face: FaceName): Vec3 {
  switch (face) {
    case "left":
      return frame.left;
    case "right":
      return negate(frame.left);
    case "back":
      return frame.back;
    case "front":
      return negate(frame.back);
  }
}

/**
 * The plane of a face that stands `offset.start` from the centre line at one point of it and `offset.end` at another, square to the
 * direction: it holds the line across and the line through both.
 */
export function facePlane(
  normal: Vec3,
  frame: PostFrame,
  start: Vec3,
  length: number,
  offset: { start: number; end: number },
): Plane {
  const grow = offset.end - offset.start;
  const n =
    grow === 0
      ? normal
      : unit(along([normal[0] * length, normal[1] * length, normal[2] * length], frame.direction, -grow));
  const at = along(start, normal, offset.start);
  return { normal: n, offset: n[0] * at[0] + n[1] * at[1] + n[2] * at[2] };
}
