/**
 * A board seat lies on its rails as it is sawn, and what of posts and rails stands up into it is planed off, and it is bored
 * for spindles that go through it: no wood is weighed twice. All
 * wood of the chair, put together by an independent library of solids, is what the parts come to, tenons aside.
 */
import { expect, it } from "vitest";
import { volume } from "../../../server/geometry/convex.ts";
import type { Convex } from "../../../server/geometry/solid.ts";
import { boardOver, cutAway } from "../../../server/solids/part-pieces.ts";
import { weigh } from "../../../server/timber/weight.ts";
import { samples } from "../../proofs/mended-texts.ts";
import { plainView } from "../../server/editor/view.ts";
import { hull, lessThan, sweepSolids, together } from "../solids/manifold.ts";
import type { V } from "../solids/vectors.ts";

const solid = ({ points }: Convex) => hull(points as unknown as V[]);

it.each(["joined-stool", "landing-bench", "harbour-chair"])("%s", (name) => {
  const { study } = plainView(samples[`${name}.chair`]!, "file:///samples/chair.chair", { ...samples });
  const { chair } = study;
  expect(chair.seat?.design.kind).toBe("board");
  const bodies = [...chair.posts.values(), ...chair.rails.values(), ...chair.slats.values(), chair.seat!].map(
    ({ body }) => together(body.pieces.map(solid)),
  );
  const whole = together(bodies).volume();
  const apart = bodies.reduce((sum, body) => sum + body.volume(), 0);
  const slats = [...chair.slats.values()].flatMap(({ body }) => body.pieces.map(solid));
  const seat = lessThan(bodies.at(-1)!, together(slats)).volume();
  expect(Math.abs(weigh(chair).parts.get("seat")!.volume - seat)).toBeLessThan(seat * 1e-9);
  const planed = [...chair.posts.values(), ...chair.rails.values(), ...chair.slats.values()].flatMap(
    (member) => cutAway(member.body.pieces, boardOver(chair, member)),
  );
  const tenonsAside = planed.reduce((sum, piece) => sum + volume(piece), seat);
  // The posts and rails touch each other and share nothing, so what would be counted twice stands in the seat.
  expect(apart - whole).toBeGreaterThan(100);
  expect(Math.abs(tenonsAside - whole)).toBeLessThan(whole * 1e-6 + 5);
  sweepSolids();
});
