/**
 * A board seat is not weighed twice where posts and rails stand up into it: all wood of the chair together, put together by an
 * independent library of solids, is what the parts come to.
 */
import { expect, it } from "vitest";
import { weigh } from "../../../server/timber/weight.ts";
import { samples } from "../../proofs/mended-texts.ts";
import { plainView } from "../../server/editor/view.ts";
import { hull, sweepSolids, together } from "../solids/manifold.ts";
import type { V } from "../solids/vectors.ts";

it.each(["joined-stool", "landing-bench", "harbour-chair"])("%s", (name) => {
  const { study } = plainView(samples[`${name}.chair`]!, "file:///samples/chair.chair", { ...samples });
  const { chair } = study;
  expect(chair.seat?.design.kind).toBe("board");
  const bodies = [...chair.posts.values(), ...chair.rails.values(), chair.seat!].map(({ body }) =>
    together(body.pieces.map(({ points }) => hull(points as unknown as V[]))),
  );
  const whole = together(bodies).volume();
  const apart = bodies.reduce((sum, body) => sum + body.volume(), 0);
  const seat = weigh(chair).parts.get("seat")!.volume;
  const tenonsAside = apart - bodies.at(-1)!.volume() + seat;
  // The posts and rails touch each other and share nothing, so what is counted twice was the seat's.
  expect(apart - whole).toBeGreaterThan(100);
  expect(Math.abs(tenonsAside - whole)).toBeLessThan(whole * 1e-6 + 5);
  sweepSolids();
});
