/**
 * Chairs that go over under the loads of the stability standards: for the rules about tipping, and where the text decides it.
 */
import type { Chair, Post } from "../chair/chair.ts";
import { caution, editionOf, leastMargin } from "../floor/editions.ts";
import type { TipCase } from "../floor/load-cases.ts";
import { margin, type Spot, type TippingLine } from "../floor/support.ts";
import { type Balance, balanceOf, usualEdition } from "../floor/tips.ts";
import { type Candidate, named, placeOf } from "./place.ts";
import type { Rule } from "./rule.ts";
import { type Finding, lengthOrMore, tell } from "./say.ts";

type Way = TipCase["way"];

/** Margins nearer than this are the same: figures are told to a hundredth. */
const SAME = 5e-4;

export const tippingLimit = { low: leastMargin.value, dimension: "number" } as const;

export const tippingSource = `${editionOf(usualEdition).title}: loads as in print, but the force on the back and the load on an arm from memory; least margin: ${leastMargin.source}. Reckoned as a rigid chair on a level floor, its feet kept from sliding.`;

/** What every explanation of a tipping rule ends with. */
export const tippingCaution = `${caution} Public, contract and children's seating needs that test; local codes come first.`;

/** The finding of one way of going over, when the chair is weighed whole and its margin is under the limit. */
export function tellTipping(rule: Rule, chair: Chair, way: Way, low: number | undefined): Finding[] {
  const found = chair.values.get(`tip.${way}-margin`)?.number;
  if (low === undefined || found === undefined || found >= low - SAME || !chair.values.has("weight"))
    return [];
  const balance = balanceOf(chair);
  const worst = balance.cases.find((each) => each.way === way);
  if (!worst) return [];
  const posts = postsOn(chair, balance, worst);
  const post = posts[0];
  const by = lengthOrMore(outBy(worst, low), chair.design.units);
  const printed = found.toFixed(2);
  const allowed = `${low.toFixed(2)} or more`;
  const feet = post ? `the feet of ${post.design.name}` : "the feet";
  return [
    tell(rule, placeOf(chair.design, [...(post ? decidersOf(post, way) : []), chair.seat?.design]), {
      message: `${post ? named(chair, post.name) : "The chair"} lets it go over ${words[way]} with ${worst.name}: margin ${printed}, and ${low.toFixed(2)} is wanted; ${by} further out at ${feet} would do. A calculation is not a test.`,
      subject: post?.name ?? "seat",
      found: printed,
      allowed,
      badness: low - found,
    }),
  ];
}

const words: Record<Way, string> = { front: "forwards", back: "backwards", side: "sideways" };

/** No chair's feet stand further out than this, mm. */
const FURTHEST = 2000;

/** How far out the tipping line would have to come for a margin, mm: halved down to, as the margin grows all the way out. */
export function outBy({ line, loads }: Pick<TipCase, "line" | "loads">, low: number): number {
  const moved = (by: number): TippingLine => {
    const out = ([x, y]: Spot): Spot => [x + line.outward[0] * by, y + line.outward[1] * by];
    return { ...line, from: out(line.from), to: out(line.to) };
  };
  let near = 0;
  let far = FURTHEST;
  while (far - near > 1e-3) {
    const by = (near + far) / 2;
    if (margin(moved(by), loads) >= low) far = by;
    else near = by;
  }
  return far;
}

/** Posts whose feet lie on the line the chair goes over. */
function postsOn(chair: Chair, { standing }: Balance, { line }: TipCase): Post[] {
  return [...standing.feet].flatMap(([name, outline]) => {
    const post = chair.posts.get(name);
    const on = outline.some((spot) =>
      [line.from, line.to].some((end) => end[0] === spot[0] && end[1] === spot[1]),
    );
    return on && post ? [post] : [];
  });
}

/** The facts that put a foot where it is: its kick, its rake or splay, its place. */
function decidersOf({ design }: Post, way: Way): (Candidate | undefined)[] {
  const seen = way === "side" ? "front" : "side";
  const kicks = design.knees.filter(({ value }) => value.seen === seen && value.stretch === "below");
  return [...kicks, way === "side" ? design.splay : undefined, design.place, design];
}
