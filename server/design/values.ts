/**
 * Names that stand in expressions: lets, and values that are worked out from the chair.
 */

import { nearest } from "../../grammar/nearest.ts";
import type { Fix } from "../../grammar/problem.ts";
import { sentence } from "../../grammar/sentences/sentence.ts";
import type { Value, Word } from "../../grammar/tree.ts";
import { isValuedKind, valueRow, valuesOf, wholeValues } from "../../grammar/vocabulary/values.ts";
import { andList } from "../../grammar/wording.ts";
import type { Design, Dimension } from "./design.ts";
import { functionNames } from "./expressions.ts";
import type { Source } from "./merge.ts";
import { kindName, kindOf, nearName } from "./names.ts";
import type { Amount } from "./quantity.ts";
import { type Reading, report } from "./reading.ts";

type NameValue = Value & { is: "name" };

const wholeNames = new Set(wholeValues.keys());
/** First words that have values of their own after a point: `seat`, `backrest`, `tip`. */
const groups = new Set(
  [...wholeNames].flatMap((name) => (name.includes(".") ? [name.slice(0, name.indexOf("."))] : [])),
);

/** The dimension of a worked-out value; nothing for a declared angle's name or an unknown one. */
export const dimensionOf = (name: string): Dimension | undefined => valueRow(name)?.dimension;

/** Whether a file requires a value that is worked out after everything else. */
export const asksLate = ({ requires }: Pick<Design, "requires">): boolean =>
  requires.some(({ subject }) => valueRow(subject)?.late === true);

/** Under what names a value may be listed: right-hand twins have the values of the left, a pair's bare name means either. */
export function listedAs(name: string): string[] {
  const parts = name.split(".");
  const at = parts.indexOf("right");
  const names = [name];
  if (at > 0) names.push(parts.map((part, n) => (n === at ? "left" : part)).join("."));
  if (parts.length > 1) names.push([parts[0], "left", ...parts.slice(1)].join("."));
  return names;
}

/** What a worked-out value comes to by what is known, twins included. */
function knownValue<T>(known: ReadonlyMap<string, T>, name: string): T | undefined {
  for (const each of listedAs(name)) {
    const found = known.get(each);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** The amount of a worked-out value; one not yet known is put down as wanted, an impossible name is reported. */
export function workedOut(reading: Reading, value: NameValue, source: Source): Amount | undefined {
  const { name } = value;
  const known = knownValue(reading.known, name);
  if (known !== undefined) return known;
  if (!couldBe(reading, value, source)) return undefined;
  if (valueRow(name)?.late) {
    report(reading, source, value, {
      code: "circular-value",
      message: sentence("circular-value.late", { name }),
    });
    return undefined;
  }
  if (!reading.wanted.has(name)) reading.wanted.set(name, { start: value.start, end: value.end });
  const readers = reading.wantedBy.get(name) ?? new Set();
  reading.wantedBy.set(name, readers.add(reading.reader));
  return undefined;
}

/** Whether a name could be a worked-out value; says what is wrong if not. */
export function couldBe(reading: Reading, value: NameValue, source: Source): boolean {
  const { name, segments } = value;
  const first = segments[0]?.text ?? name;
  const last = segments.at(-1);
  if (wholeNames.has(name)) return true;
  const declared = reading.names.get(first);
  if (segments.length < 2 || last === undefined) {
    if (declared !== undefined && kindOf(declared) === "angle") return true;
    unknownName(reading, value, source);
    return false;
  }
  if (groups.has(first)) {
    const near = nearest(name, wholeNames);
    const there = [...wholeNames].filter((each) => each.startsWith(`${first}.`)).join(", ");
    say(reading, source, value, near, sentence("unknown-name.value", { name, names: there }));
    return false;
  }
  const kind = declared && kindOf(declared);
  if (kind === undefined || !isValuedKind(kind)) {
    const parts = [...reading.names.values()]
      .filter((each) => isValuedKind(kindOf(each)))
      .map((each) => each.name);
    say(
      reading,
      source,
      segments[0] ?? value,
      nearName(reading, first, [...parts, ...groups]),
      sentence("unknown-name.part", { name: first }),
    );
    return false;
  }
  const { own, ofEnds } = valuesOf(kind);
  if (own.includes(last.text) || ofEnds.includes(last.text)) return true;
  say(
    reading,
    source,
    last,
    nearest(last.text, new Set([...own, ...ofEnds])),
    sentence("unknown-name.part-value", {
      part: first,
      kind: kindName(kind),
      name: last.text,
      own: andList(own),
      ofEnds: andList(ofEnds),
    }),
  );
  return false;
}

function say(
  reading: Reading,
  source: Source,
  at: Word | NameValue,
  near: string | undefined,
  message: string,
): void {
  if (near === undefined && reading.lacksFile) return;
  const fixes: Fix[] =
    near === undefined
      ? []
      : [
          {
            title: sentence("fix.change-to", { text: near }),
            edits: [{ start: at.start, end: at.end, text: near }],
          },
        ];
  report(reading, source, at, { code: "unknown-name", message, ...(fixes.length > 0 ? { fixes } : {}) });
}

function unknownName(reading: Reading, value: NameValue, source: Source): void {
  const { name } = value;
  const declared = reading.names.get(name);
  if (declared !== undefined) {
    const kind = kindOf(declared);
    const key = ["post", "rail"].includes(kind) ? "wrong-kind.value-length" : "wrong-kind.value";
    report(reading, source, value, {
      code: "wrong-kind",
      message: sentence(key, { name, kind: kindName(kind) }),
    });
    return;
  }
  const spaced = eatenMinus(reading, name);
  if (spaced !== undefined) {
    report(reading, source, value, {
      code: "eaten-minus",
      message: sentence("eaten-minus", { name, spaced }),
      fixes: [
        {
          title: sentence("fix.write-plain", { text: spaced }),
          edits: [{ start: value.start, end: value.end, text: spaced }],
          certain: true,
        },
      ],
    });
    return;
  }
  const lets = [...reading.names.values()]
    .filter((each) => kindOf(each) === "let" && each.name !== reading.reader)
    .map((each) => each.name);
  const near = nearName(reading, name, [...lets, ...wholeNames]);
  const message =
    near === undefined
      ? sentence("unknown-name.let", { name })
      : sentence("unknown-name.let-near", { name, near });
  say(reading, source, value, near, message);
}

/** The name taken apart at its hyphens where that gives known values and numbers: `seat-12` → `seat - 12`. */
function eatenMinus(reading: Reading, name: string): string | undefined {
  const operand = (text: string): boolean => {
    if (/^\d+(\.\d+)?(mm|cm|m|in|ft|deg)?$/.test(text)) return true;
    const declared = reading.names.get(text);
    return declared !== undefined && kindOf(declared) === "let" && !functionNames.includes(text);
  };
  for (let at = name.lastIndexOf("-"); at > 0; at = name.lastIndexOf("-", at - 1)) {
    const right = name.slice(at + 1);
    const left = name.slice(0, at);
    if (!operand(right)) continue;
    if (operand(left)) return `${left} - ${right}`;
    const further = eatenMinus(reading, left);
    if (further !== undefined) return `${further} - ${right}`;
  }
  return undefined;
}
