import type { Chair, Post } from "../chair/chair.ts";
import { movePoint } from "../geometry/motion.ts";
import type { Vec3 } from "../geometry/solid.ts";
import { type Spot, supportOutline, type TippingLine, tippingLines } from "./support.ts";

/** What a chair stands on. */
export interface Standing {
  /** Outline of each foot on the floor, by post, as it stands, mm. */
  feet: Map<string, Spot[]>;
  outline: Spot[];
  lines: TippingLine[];
}

/** How near the floor a corner must be to stand on it, mm. */
const touching = 0.01;

/** The feet as cut, on the floor, and the lines over which the chair could go. */
export function standingOf(chair: Chair): Standing {
  const feet = new Map<string, Spot[]>();
  for (const post of chair.posts.values()) {
    const outline = footOutline(chair, post);
    if (outline.length > 0) feet.set(post.name, outline);
  }
  const outline = supportOutline([...feet.values()].flat());
  return { feet, outline, lines: tippingLines(outline) };
}

/** The corners of a post's foot that stand on the floor, anticlockwise from above. */
function footOutline(chair: Chair, post: Post): Spot[] {
  const spots: Spot[] = [];
  for (const piece of post.body.pieces) {
    for (const point of piece.points) {
      const [x, y, z]: Vec3 = movePoint(chair.stance, point);
      if (Math.abs(z) < touching) spots.push([x, y]);
    }
  }
  return supportOutline(spots);
}
