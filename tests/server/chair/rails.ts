/** Rails between four plumb posts, for the tests of rails. */
import fc from "fast-check";
import type { Rail } from "../../../server/chair/chair.ts";
import { buildMembers } from "../../../server/chair/members.ts";
import { design, type Part, post, type RailFacts, rail } from "./fixtures.ts";

export const number = (low: number, high: number) => fc.double({ min: low, max: high, noNaN: true });

export const straight = (name: string, out: number, back: number, tall = 430): Part =>
  post(name, { section: [40, 40], place: { out, back }, height: tall });

/** Four plumb posts, feet 400 apart each way. */
export const FRAME = [straight("front", 200, 0), straight("back", 200, 400)];

export const build = (facts: RailFacts, ...posts: Part[]) =>
  buildMembers(design(...(posts.length ? posts : FRAME), rail("it", facts)));

export const theRail = (facts: RailFacts, ...posts: Part[]): Rail => build(facts, ...posts).rails.get("it")!;
