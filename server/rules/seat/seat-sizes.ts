/**
 * How a seat's sizes suit whom the chair is for: for the rules about seats. One measure a rule.
 */

import { sentence } from "../../../grammar/sentences/sentence.ts";
import { andList, orList } from "../../../grammar/wording.ts";
import type { Chair } from "../../chair/chair.ts";
import { isOnFloor } from "../../chair/posts/on-floor.ts";
import { printAngle } from "../../design/units.ts";
import { caution } from "../../floor/editions.ts";
import { type Group, groups } from "../../sitter/body-sizes.ts";
import { type FitCheck, fitChecks, fitNamed, wornBy } from "../../sitter/fit.ts";
import { jointShare } from "../../sitter/joint-share.ts";
import { marksForAges, schoolMark } from "../../sitter/school-marks.ts";
import { shoesOf } from "../../sitter/shoes.ts";
import { sizesOf } from "../../sitter/sizes.ts";
import { type Candidate, placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { type Finding, length, SAME_ANGLE, SAME_LENGTH, tell } from "../machinery/say.ts";

/** What a rule about the seat looks at. */
interface SeatQuestion {
  value: "seat.height" | "seat.depth" | "seat.front-width" | "seat.slope" | "seat.loaded-height";
  /** The sentence of it, but for the slope, which has its own. */
  says?: "stands" | "deep" | "wide";
  end: "low" | "high";
  /** The check of the sitter that answers it. */
  check?: FitCheck["name"];
}

type SeatSentence = `${"seat" | "seat-named"}.${NonNullable<SeatQuestion["says"]>}` | "seat-mark.stands";

/** What every explanation of a seat rule ends with. */
export const seatCaution = `Shares are of the people measured, soldiers: the public differs, so sit in a prototype. ${caution}`;

/** The finding of one end of one size: by the printed range for adults, by its own measures for a named sitter. */
export function tellSeat(
  rule: Rule,
  chair: Chair,
  question: SeatQuestion,
  limit: { low?: number; high?: number },
): Finding[] {
  const { value: sitter } = chair.design.sitter;
  if (!chair.seat) return [];
  if (sitter.is === "adult") {
    const worked = chair.values.get(question.value);
    const bound = limit[question.end];
    if (!worked || bound === undefined) return [];
    // The same depth that people are counted by: to where the back is leant on.
    const size = question.check === "depth" ? (sizesOf(chair).seatDepth ?? worked.number) : worked.number;
    return judged(rule, chair, question, size, bound);
  }
  if (sitter.is === "named") return forNamed(rule, chair, question);
  return question.check === "height" || question.check === "not too low"
    ? forChildren(rule, chair, question)
    : [];
}

function judged(
  rule: Rule,
  chair: Chair,
  question: SeatQuestion,
  size: number,
  bound: number,
  says: SeatSentence | undefined = question.says && `seat.${question.says}`,
  marks = "",
): Finding[] {
  const angle = says === undefined;
  const past = question.end === "high" ? size - bound : bound - size;
  if (past <= (angle ? SAME_ANGLE : SAME_LENGTH)) return [];
  const print = (number: number) => (angle ? printAngle(number) : length(number, chair.design.units));
  const word = question.end === "high" ? "less" : "more";
  const allowed = sentence(`figure.or-${word}`, { figure: print(bound) });
  const message = angle
    ? sentence(size < 0 ? "seat-slope.forward" : "seat-slope.back", {
        size: print(Math.abs(size)),
        allowed: slopeAllowed(size, bound, word),
      })
    : sentence(says, { size: print(size), allowed, marks });
  return [
    tell(rule, placeOf(chair.design, deciders(chair, question)), {
      message: withExcluded(message, chair, question),
      subject: "seat",
      found: print(size),
      allowed,
      badness: past,
    }),
  ];
}

/** How a seat may slope, beside a seat that falls forward where `size` is under 0. */
function slopeAllowed(size: number, bound: number, word: "less" | "more"): string {
  const print = printAngle(Math.abs(bound));
  if (size >= 0) return sentence(`figure.or-${word}`, { figure: print });
  if (print === "0°") return sentence("seat-slope.level");
  return bound < 0
    ? sentence("figure.or-less", { figure: print })
    : sentence("seat-slope.more-back", { angle: print });
}

/** The message with whom such a seat leaves out: `So it leaves out 40% of women and 12% of men of those measured.` */
function withExcluded(message: string, chair: Chair, { check }: SeatQuestion): string {
  const sitter = chair.design.sitter.value;
  const found =
    check && sitter.is === "adult" && fitChecks(sizesOf(chair)).find(({ name }) => name === check);
  if (!found || sitter.is !== "adult") return message;
  const some: readonly Group[] = sitter.group ? [sitter.group] : groups;
  const shares = some.map((group) => {
    const share = jointShare(group, [{ measure: found.measure, ...found.range(wornBy(group)) }]);
    return sentence(`seat.excluded-share.${group}`, { share: `${Math.round((1 - share) * 100)}%` });
  });
  return sentence("seat.excluded", { message, shares: andList(shares) });
}

function forNamed(rule: Rule, chair: Chair, question: SeatQuestion): Finding[] {
  const sitter = chair.design.sitter.value;
  if (sitter.is !== "named" || !question.check) return [];
  const sizes = sizesOf(chair);
  const fit = fitNamed(sizes, sitter).find(({ check }) => check.name === question.check);
  const past = fit && Math.max((fit.low ?? fit.own) - fit.own, fit.own - (fit.high ?? fit.own));
  const size = sizeFor(sizes, question);
  if (!fit || size === undefined || past === undefined || past <= SAME_LENGTH) return [];
  return judged(
    rule,
    chair,
    question,
    size,
    question.end === "high" ? size - past : size + past,
    question.says && `seat-named.${question.says}`,
  );
}

function forChildren(rule: Rule, chair: Chair, question: SeatQuestion): Finding[] {
  const sitter = chair.design.sitter.value;
  const height = sizesOf(chair).seatHeight;
  const marks =
    sitter.is === "child"
      ? marksForAges(sitter.from, sitter.to)
      : sitter.is === "school-mark"
        ? [schoolMark(sitter.mark)].filter((mark) => mark !== undefined)
        : [];
  if (height === undefined || marks.length === 0) return [];
  const bound =
    question.end === "high"
      ? Math.max(...marks.map(({ popliteal }) => popliteal[1]))
      : Math.min(...marks.map(({ popliteal }) => popliteal[0])) - shoesOf("children");
  return judged(
    rule,
    chair,
    question,
    height,
    bound,
    "seat-mark.stands",
    orList(marks.map(({ mark }) => `${mark}`)),
  );
}

function sizeFor(sizes: ReturnType<typeof sizesOf>, { value }: SeatQuestion): number | undefined {
  if (value === "seat.depth") return sizes.seatDepth;
  return value === "seat.front-width" ? sizes.seatWidth : sizes.seatHeight;
}

/** The facts that decide a seat's size: the height of the rail it lies on, where the posts stand, else the seat's own line. */
function deciders(chair: Chair, { value }: SeatQuestion): (Candidate | undefined)[] {
  const { design } = chair;
  const front = design.seat?.on
    .map(({ value: ref }) => design.rails.get(ref.name))
    .find((rail) => rail?.course?.value.is === "across");
  const posts = [...design.posts.values()].filter(isOnFloor);
  if (value === "seat.height" || value === "seat.loaded-height") return [front?.ups[0], design.seat];
  if (value === "seat.front-width") return [posts[0]?.place, design.seat];
  if (value === "seat.depth") return [posts[1]?.place, design.seat];
  return [design.trims[0]?.length, front?.ups[0], design.seat];
}
