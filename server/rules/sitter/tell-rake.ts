import type { Fix, Related } from "../../../grammar/problem.ts";
import { sentence } from "../../../grammar/sentences/sentence.ts";
import type { Chair } from "../../chair/chair.ts";
import { bothNames } from "../../design/identity.ts";
import { printAngle } from "../../design/units.ts";
import { named, type Place, placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { degrees, type Finding, tell } from "../machinery/say.ts";
import type { Lean } from "./rake.ts";

interface Off {
  word: "over" | "under";
  /** As printed: `7° or less`. */
  allowed: string;
  /** How far past the limit, radians; negative when under. */
  by: number;
}

/** One finding about a lean: on the rake itself, with the angle that asks for it beside it. */
export function tellRake(rule: Rule, chair: Chair, lean: Lean, off: Off): Finding {
  const { declared, post } = lean;
  const place = placeOf(chair.design, lean.candidates);
  const found = printAngle(lean.lean);
  const values = { Post: named(chair, post.name), lean: found, allowed: off.allowed };
  const message = declared
    ? sentence("rake.by", { ...values, angle: declared.angle.name })
    : sentence("rake", values);
  const related: Related[] =
    declared?.angle.limit && declared.angle.limit.file === undefined
      ? [{ ...declared.angle.limit.at, message: sentence("related.limit-here") }]
      : [];
  return tell(rule, place, {
    message,
    subject: declared ? bothNames(declared.angle.name, post.name) : post.name,
    found,
    allowed: off.allowed,
    related,
    badness: Math.abs(off.by),
    fixes: fixesOf(chair, lean, place, off),
  });
}

/** A plain figure, or the value of a let that stands alone there, can be moved by the difference: the lean follows it one to one. */
function fixesOf(chair: Chair, lean: Lean, place: Place, off: Off): Fix[] {
  const fact = lean.candidates[0] as { value?: unknown } | undefined;
  const value = fact && slopeOf(fact.value);
  if (!place.own || value === undefined) return [];
  const text = `${degrees(value - off.by)}deg`;
  const asked = [...chair.design.lets.values()].find(
    (each) =>
      each.file === undefined && each.value?.value.dimension === "angle" && usedAt(chair, each.name, place),
  );
  if (!asked)
    return [
      { title: sentence("fix.make-it", { it: text }), edits: [{ start: place.start, end: place.end, text }] },
    ];
  const { start, end } = asked.expression;
  return [
    { title: sentence("fix.make-named", { name: asked.name, it: text }), edits: [{ start, end, text }] },
  ];
}

function slopeOf(value: unknown): number | undefined {
  if (typeof value === "number") return value;
  if (typeof value !== "object" || value === null || !("slope" in value)) return undefined;
  return typeof value.slope === "number" ? value.slope : undefined;
}

/** Whether the place is that name and nothing more. */
const usedAt = (chair: Chair, name: string, { start, end }: Place): boolean =>
  end - start === name.length && textOf(chair).get(start) === name;

function textOf(chair: Chair): Map<number, string> {
  const names = new Map<number, string>();
  for (const post of chair.design.posts.values()) {
    for (const statement of post.statement.block?.statements ?? []) {
      for (const fact of statement.match?.facts ?? []) {
        if (fact.value?.is === "name") names.set(fact.start, fact.value.name);
      }
    }
  }
  return names;
}
