import type { Chair, Post } from "../chair/chair.ts";
import { movePoint } from "../geometry/motion.ts";
import { height } from "../geometry/plane.ts";
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
      if (Math.abs(height(chair.floor, point)) > touching) continue;
      const [x, y] = movePoint(chair.stance, point);
      spots.push([x, y]);
    }
  }
  return supportOutline(spots);
}
