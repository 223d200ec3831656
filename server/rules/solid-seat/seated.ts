/**
 * What rules about a solid seat share: where the place of what is let into it stands in the text, and what it is called.
 */
import type { Bow, Post, Rail } from "../../chair/chair.ts";
import type { Candidate } from "../machinery/place.ts";

/** The facts that say where a part is let into the seat, the nearest first. */
export function seatedBy({ design }: Pick<Post | Rail | Bow, "design">): (Candidate | undefined)[] {
  switch (design.is) {
    case "post":
      return [design.intoSeat, design.onSeat, design];
    case "stick":
      return [design.feet, design.place, design.through, design];
    case "bow":
      return [design.feet, design];
    default:
      return [design];
  }
}

/** Of pairs and rows only those that stand for all: not the right-hand twins. */
export const isOwn = ({ side }: { side: string }): boolean => side !== "right";
