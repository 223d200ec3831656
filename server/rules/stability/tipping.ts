/**
 * Chairs that go over under the loads of the stability standards: for the rules about tipping, and where the text decides it.
 */

import { sentence } from "../../../grammar/sentences/sentence.ts";
import type { Chair, Post } from "../../chair/chair.ts";
import { printMargin } from "../../design/units.ts";
import { caution, editionOf, leastMargin } from "../../floor/editions.ts";
import type { TipCase } from "../../floor/load-cases.ts";
import { type Balance, balanceOf, usualEdition } from "../../floor/tips.ts";
import { type Candidate, named, placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { type Finding, lengthOrMore, tell } from "../machinery/say.ts";
import { leanInsert } from "./insert-lean.ts";

type Way = TipCase["way"];

/** Margins nearer than this are the same: figures are told to a hundredth. */
const SAME = 5e-4;

export const tippingLimit = { low: leastMargin.value, dimension: "number", of: "as margin" } as const;

export const tippingSource = `${editionOf(usualEdition).title}: loads as in print, but the force on the back and the load on an arm from memory; least margin: ${leastMargin.source}. Calculated as a rigid chair on a level floor, its feet kept from sliding.`;

/** What every explanation of a tipping rule ends with. */
export const tippingCaution = caution;

/** What a rule about tipping asks after: a way under the standard loads, or a load beyond them. */
type TippingQuestion = Way | "child" | "leaning";

/** The finding of one question, when the chair is weighed whole and its margin is under the limit. */
export function tellTipping(
  rule: Rule,
  chair: Chair,
  asked: TippingQuestion,
  low: number | undefined,
): Finding[] {
  const found = chair.values.get(`tip.${asked}-margin`)?.number;
  if (low === undefined || found === undefined || found >= low - SAME || !chair.values.has("weight"))
    return [];
  // A chair that rocks is put right first: which foot hangs decides what it tips over.
  if (chair.hanging.size > 0) return [];
  const balance = balanceOf(chair);
  const worst =
    balance.beyond.find(({ kind }) => kind === asked) ?? balance.cases.find(({ way }) => way === asked);
  if (!worst) return [];
  const { way } = worst;
  const posts = postsOn(chair, balance, worst);
  const post = posts[0];
  const by = lengthOrMore(worst.outFor(low), chair.design.units);
  const printed = printMargin(found);
  const allowed = sentence("figure.or-more", { figure: printMargin(low) });
  const feet = post ? sentence("tips.feet-of", { post: post.design.name }) : sentence("tips.feet");
  return [
    tell(rule, placeOf(chair.design, [...(post ? decidersOf(post, way) : []), chair.seat?.design]), {
      message: sentence(found < 1 ? "tips" : "tips.holds", {
        Part: post ? named(chair, post.name) : sentence("tips.nothing"),
        way: sentence(`tips.way.${way}`),
        load: worst.name,
        margin: printed,
        least: printMargin(low),
      }),
      otherwise: sentence("tips.otherwise", { by, way: towards[way], feet }),
      subject: post?.name ?? "seat",
      found: printed,
      allowed,
      badness: low - found,
      inserts: [...new Set(posts.map(({ design }) => design))].flatMap((design) =>
        leanInsert(design, feetBy[way], chair.design.units),
      ),
    }),
  ];
}

/** The lean that takes the feet that way. */
const feetBy = { front: "rake foot forward", back: "kick", side: "splay" } as const;

/** Which way the feet would have to stand further; `out` is from the centre line, as in the language. */
export const towards: Record<Way, string> = { front: "forward", back: "back", side: "out" };

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
