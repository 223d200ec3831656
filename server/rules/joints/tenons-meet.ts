import type { Span } from "../../../grammar/problem.ts";
import { type SentenceKey, sentence } from "../../../grammar/sentences/sentence.ts";
import { orList } from "../../../grammar/wording.ts";
import type { Chair, Joint } from "../../chair/chair.ts";
import type { Given } from "../../design/design.ts";
import { printQuantity } from "../../design/units.ts";
import { meetingsWithinSteps } from "../../joinery/inside.ts";
import { type WaysApart, waysApart } from "../../joinery/ways-apart.ts";
import { plain, plainBoth } from "../machinery/names.ts";
import type { Fix, Rule } from "../machinery/rule.ts";
import { type Finding, length, lengthOrLess, lengthOrMore, tell, written } from "../machinery/say.ts";
import { bothLong, jointPlace, sizesOf } from "./joint-places.ts";

/** mm³: less than this is an arris that the chisel takes off. */
const SHARED = 20;

/** Meetings for which ways apart are tried: where there are more, the rails themselves stand in one place. */
const MOST_TRIED = 12;
const none: WaysApart = { mitre: false };

export const tenonsMeet: Rule = {
  code: "tenons-meet",
  severity: "error",
  title: "Two tenons meet inside a post",
  explanation:
    "Two tenons cannot fill the same place. Where rails come into a post from two sides at one height, mitre the ends of their tenons, make them shorter, set them nearer the outside of the post, or put one rail higher than the other so that the mortises pass. What works is told once it has been tried on this chair.",
  source: "It follows from the shape; that tenons which meet in a corner post are mitred is common practice.",
  *find({ chair, tree }) {
    let tried = 0;
    const findings: Finding[] = [];
    for (const { a, b, overlap, member } of yield* meetingsWithinSteps(chair, 0)) {
      if (overlap < SHARED || missing(chair, a) || missing(chair, b)) continue;
      yield;
      const { units } = chair.design;
      const ways = tried++ < MOST_TRIED ? waysApart(chair, a, b) : none;
      const told: string[] = [];
      const shared = printQuantity({ number: overlap, dimension: "volume" }, units);
      if (ways.mitre) told.push(sentence("tenons-meet.mitre"));
      if (ways.long !== undefined) told.push(bothLong(a, b, ways.long, (mm) => lengthOrLess(mm, units)));
      if (ways.further !== undefined)
        told.push(sentence("tenons-meet.further", { by: lengthOrMore(ways.further, units) }));
      if (ways.turned)
        told.push(
          sentence(
            `tenons-meet.${ways.turned.joints.length > 1 ? "both" : "one"}-${ways.turned.line === "square" ? "square" : "in-line"}`,
            { part: plain(ways.turned.joints[0]!.part) },
          ),
        );
      if (ways.apart !== undefined)
        told.push(sentence("tenons-meet.apart", { by: lengthOrMore(ways.apart, units) }));
      const place = jointPlace(chair, a, sizesOf(a).long);
      findings.push(
        tell(tenonsMeet, place, {
          message: sentence("tenons-meet", {
            ...plainBoth(a.part, b.part),
            host: plain(member),
            shared,
          }),
          otherwise:
            told.length > 0
              ? sentence("tenons-meet.otherwise", { ways: orList(told) })
              : sentence("tenons-meet.otherwise-move"),
          subject: a.name,
          found: shared,
          allowed: "none",
          badness: overlap,
          fixes: fixesFor(chair, tree.text, a, b, ways),
          related: [
            {
              start: b.at.start,
              end: b.at.end,
              message: sentence("related.joint-long", { joint: b.name, long: length(b.long, units) }),
            },
          ],
        }),
      );
    }
    return findings;
  },
};

const missing = ({ faults }: Chair, { part, end }: Joint): boolean =>
  faults.some(
    (fault) =>
      (fault.is === "rail-misses-post" || fault.is === "end-reaches-nothing") &&
      fault.part === part &&
      fault.end === end,
  );

/** Where one line says how long both are, or how both are set, that line can be changed, or a line put before it. */
function fixesFor(chair: Chair, text: string, a: Joint, b: Joint, ways: WaysApart): Fix[] {
  const { units } = chair.design;
  const fixes: Fix[] = [];
  const given = shared(a.facts.tenonLong, b.facts.tenonLong);
  if (given) {
    const start = text.lastIndexOf("\n", given.at.start) + 1;
    const lead = /^([ \t]*)tenon\b/.exec(text.slice(start));
    if (ways.mitre && lead && text.slice(start, given.at.start).indexOf(";") < 0)
      fixes.push({ title: sentence("fix.mitre"), edits: [{ start, end: start, text: `${lead[1]}mitre\n` }] });
    if (ways.long !== undefined)
      fixes.push(changed("fix.make-them-long", given.at, lengthOrLess(ways.long, units)));
  }
  const set = shared(a.facts.set, b.facts.set);
  if (ways.further !== undefined && set?.value.from === "outside" && set.value.distance >= ways.further)
    fixes.push(
      changed("fix.set-them-outside", set.at, lengthOrLess(set.value.distance - ways.further, units)),
    );
  return fixes;
}

function changed(key: SentenceKey, { start, end }: Span, printed: string): Fix {
  const figure = written(printed);
  return { title: sentence(key, { figure }), edits: [{ start, end, text: figure }] };
}

/** A fact that both have from one line of this file. */
const shared = <T>(one: Given<T> | undefined, other: Given<T> | undefined): Given<T> | undefined =>
  one && other && one.at.start === other.at.start && one.file === undefined && !one.assumed ? one : undefined;
