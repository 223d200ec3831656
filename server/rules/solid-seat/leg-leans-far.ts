import { sentence } from "../../../grammar/sentences/sentence.ts";
import { seatLeanOf } from "../../chair/seat/solid/leg.ts";
import { printQuantity } from "../../design/units.ts";
import { most, sourcesOf } from "../machinery/figures.ts";
import { named, placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { SAME_ANGLE, tell } from "../machinery/say.ts";
import { isOwn } from "./seated.ts";

export const legLeansFar: Rule = {
  code: "leg-leans-far",
  severity: "warning",
  title: "Leg that leans too far",
  explanation:
    "A leg that leans far from square to its seat levers its socket open under every sitter, its bore runs out thin at the edge, and its foot lies in the way. It is measured between the leg's line and square to the seat. Give it less splay or rake. `limit leg-leans-far to 28deg` changes the figure.",
  source: sourcesOf("leg-lean"),
  limit: { high: most("leg-lean"), dimension: "angle" },
  find({ chair, limit }) {
    const { units } = chair.design;
    const allowed = limit.high ?? most("leg-lean");
    const print = (number: number) => printQuantity({ number, dimension: "angle" }, units);
    return [...chair.posts.values()].flatMap((post) => {
      const { design } = post;
      const lean = design.intoSeat && isOwn(post) ? seatLeanOf(chair.seat, post)?.lean : undefined;
      if (lean === undefined || lean <= allowed + SAME_ANGLE) return [];
      const angles = [design.splay, design.rake].filter((angle) => angle !== undefined);
      const steepest = angles.sort((a, b) => Math.abs(b.value) - Math.abs(a.value));
      return tell(legLeansFar, placeOf(chair.design, [...steepest, design.way, design.intoSeat, design]), {
        message: sentence("leg-leans-far", {
          Post: named(chair, post.name),
          lean: print(lean),
          most: print(allowed),
        }),
        otherwise: sentence("leg-leans-far.otherwise"),
        subject: post.name,
        found: print(lean),
        allowed: `${print(allowed)} or less`,
        badness: lean - allowed,
      });
    });
  },
};
