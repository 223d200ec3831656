/**
 * The one namespace of a chair: lets, parts, joints, angles, boards and yards; and the references to them.
 */
import { nearest } from "../../grammar/nearest.ts";
import type { Fix, Related, Span } from "../../grammar/problem.ts";
import type { Shape } from "../../grammar/row.ts";
import type { Fact } from "../../grammar/tree.ts";
import { vocabulary } from "../../grammar/vocabulary/index.ts";
import { wholeValues } from "../../grammar/vocabulary/values.ts";
import type { Declared, Given, Named, PartRef } from "./design.ts";
import type { Item, Line } from "./merge.ts";
import { factOf, given, type Reading, report } from "./reading.ts";

/** First words of the whole chair's worked-out values, which no let may take. */
const reserved = new Set([...wholeValues.keys()].map((name) => name.split(".")[0] ?? name));

/** Words that may stand where a value could: a let of such a name cannot always be reached. */
const shadowable = new Set(
  vocabulary.rows.flatMap((row) => (hasValue(row.shape) ? markersIn(row.shape) : [])),
);

const meanings = new Map(vocabulary.words.map((word) => [word.word, word.meaning]));

function hasValue(shape: Shape): boolean {
  if (shape.is === "word") return false;
  if (shape.is === "slot") return ["length", "angle", "count", "value"].includes(shape.slot);
  return innerOf(shape).some(hasValue);
}

function markersIn(shape: Shape): string[] {
  if (shape.is === "word") return [shape.word];
  return shape.is === "slot" ? [] : innerOf(shape).flatMap(markersIn);
}

function innerOf(shape: Exclude<Shape, { is: "word" | "slot" }>): readonly Shape[] {
  return "is" in shape.of ? [shape.of] : shape.of;
}

/** What a declared thing is called in messages. */
export const kindNames: Readonly<Record<string, string>> = {
  post: "a post",
  rail: "a rail",
  slat: "a row of slats",
  block: "a corner block",
  joint: "a joint",
  angle: "an angle",
  let: "a value",
  board: "a board",
  yard: "a yard",
};

/** The name, description and places of a declaration; nothing when its header has no name. */
export function namedOf(item: Item): Named | undefined {
  const fact = factOf(item, "name");
  if (fact?.name === undefined) return undefined;
  const named: Named = {
    name: fact.name,
    at: { start: fact.start, end: fact.end },
    statement: item.statement,
  };
  if (item.source.file !== undefined) named.file = item.source.file;
  const description = item.statement.description ?? item.earlier?.statement.description;
  if (description !== undefined) named.description = description;
  return named;
}

/** Puts a declaration into the namespace; the first of a name keeps it. */
export function declare(reading: Reading, item: Item, declared: Declared): boolean {
  const before = reading.names.get(declared.name);
  if (before !== undefined) {
    const related: Related = {
      start: before.at.start,
      end: before.at.end,
      message: `${before.name} is first given here`,
    };
    if (before.file !== undefined) related.file = before.file;
    report(reading, item.source, declared.at, {
      code: "duplicate-name",
      message: `There is already ${kindNames[kindOf(before)]} called ${declared.name}; lets, parts, joints and angles each need a name of their own.`,
      related: [related],
      fixes: [rename(declared, freeName(reading, declared.name))],
    });
    return false;
  }
  reading.names.set(declared.name, declared);
  if (kindOf(declared) === "let") checkLetName(reading, item, declared);
  return true;
}

function checkLetName(reading: Reading, item: Item, { name, at }: Named): void {
  if (reserved.has(name)) {
    report(reading, item.source, at, {
      code: "reserved-name",
      message: `${name} is worked out for the whole chair, so no let may be called so; call it my-${name} or what it is for.`,
      fixes: [rename({ at }, freeName(reading, `my-${name}`, true))],
    });
    reading.names.delete(name);
    return;
  }
  if (!shadowable.has(name)) return;
  const meaning = meanings.get(name)?.replace(/\.$/, "").toLowerCase();
  report(reading, item.source, at, {
    code: "shadows-word",
    severity: "warning",
    message: `${name} is also a word of the language and wins where it can stand${meaning ? ` (${meaning})` : ""}; another name is safer.`,
    fixes: [rename({ at }, freeName(reading, `${name}-size`, true))],
  });
}

function rename({ at }: { at: Span }, name: string): Fix {
  return { title: `Call it ${name}`, edits: [{ start: at.start, end: at.end, text: name }] };
}

function freeName(reading: Reading, name: string, asItIs = false): string {
  if (asItIs && !reading.names.has(name)) return name;
  for (let n = 2; ; n++) if (!reading.names.has(`${name}-${n}`)) return `${name}-${n}`;
}

type DeclaredKind = "post" | "rail" | "slat" | "block" | "joint" | "angle" | "let" | "board" | "yard";

/** What kind of thing a declaration is. */
export function kindOf(declared: Declared): DeclaredKind {
  return declared.is;
}

/** A reference as written: `front`, `front.left`. */
function partRef(line: Line, fact: Fact | undefined): Given<PartRef> | undefined {
  if (fact?.name === undefined) return undefined;
  const dot = fact.name.indexOf(".");
  const side = dot < 0 ? undefined : fact.name.slice(dot + 1);
  const ref: PartRef = { name: dot < 0 ? fact.name : fact.name.slice(0, dot) };
  if (side === "left" || side === "right") ref.side = side;
  return given(line, fact, ref);
}

/**
 * Looks whether a reference leads to something of these kinds; says what is wrong if not, with the nearest name. Gives the
 * reference back when it leads somewhere.
 */
export function checked(
  reading: Reading,
  line: Line,
  fact: Fact | undefined,
  kinds: readonly DeclaredKind[],
): Given<PartRef> | undefined {
  const ref = partRef(line, fact);
  if (ref === undefined || fact?.name === undefined) return undefined;
  const { name } = ref.value;
  const target = reading.names.get(name);
  if (target === undefined) {
    unknown(reading, line, fact, name, kinds);
    return undefined;
  }
  const kind = kindOf(target);
  if (!kinds.includes(kind)) {
    report(reading, line.source, fact, {
      code: "wrong-kind",
      message: `${name} is ${kindNames[kind]}; here stands the name of ${kinds.map((each) => kindNames[each]).join(" or ")}.`,
      related: [
        {
          start: target.at.start,
          end: target.at.end,
          message: `${name} is given here`,
          ...(target.file ? { file: target.file } : {}),
        },
      ],
    });
    return undefined;
  }
  return checkSide(reading, line, fact, ref, target);
}

function checkSide(
  reading: Reading,
  line: Line,
  fact: Fact,
  ref: Given<PartRef>,
  target: Declared,
): Given<PartRef> | undefined {
  const rest = fact.name?.slice(ref.value.name.length + 1) ?? "";
  if (rest === "") return ref;
  const pair = "pair" in target && target.pair;
  if (ref.value.side !== undefined && pair) return ref;
  if (/^\d+(\.(left|right))?$/.test(rest) && (target.is === "rail" || target.is === "slat")) {
    return { ...ref, value: { ...ref.value, name: fact.name ?? ref.value.name } };
  }
  if (/^\d+$/.test(rest) && target.is === "board")
    return { ...ref, value: { name: fact.name ?? ref.value.name } };
  const message =
    target.is === "board"
      ? `Boards alike are told apart by a number: ${ref.value.name}.1, not ${fact.name}.`
      : pair
        ? `${ref.value.name} has a left and a right, but no ${rest}.`
        : `${ref.value.name} is not a pair, so there is no ${fact.name}.`;
  const fixes: Fix[] = (pair ? [`${ref.value.name}.left`, `${ref.value.name}.right`] : [ref.value.name]).map(
    (text) => ({
      title: `Change to ${text}`,
      edits: [{ start: fact.start, end: fact.end, text }],
    }),
  );
  report(reading, line.source, fact, { code: "unknown-name", message, fixes });
  return undefined;
}

/** The nearest of these names, as long as the reading may still compare. */
export function nearName(reading: Reading, name: string, candidates: readonly string[]): string | undefined {
  if (reading.comparisons < candidates.length) return undefined;
  reading.comparisons -= candidates.length;
  return nearest(name, candidates);
}

function unknown(
  reading: Reading,
  line: Line,
  fact: Fact,
  name: string,
  kinds: readonly DeclaredKind[],
): void {
  const fitting = [...reading.names.values()]
    .filter((declared) => kinds.includes(kindOf(declared)))
    .map((declared) => declared.name);
  const near = nearName(reading, name, fitting);
  const wanted = kinds.map((kind) => (kindNames[kind] ?? kind).replace(/^an? /, "")).join(" or ");
  const what =
    near === undefined
      ? fitting.length > 0 && fitting.length <= 8
        ? `; there is ${fitting.join(", ")}`
        : ""
      : `; did you mean ${near}?`;
  report(reading, line.source, fact, {
    code: "unknown-name",
    message: `There is no ${wanted} called ${name}${what}${what.endsWith("?") ? "" : "."}`,
    ...(near === undefined
      ? {}
      : {
          fixes: [
            {
              title: `Change to ${near}`,
              edits: [{ start: fact.start, end: fact.start + name.length, text: near }],
            },
          ],
        }),
  });
}

/** The name of the joint a line refers to. */
export function jointName(reading: Reading, line: Line | undefined): Given<string> | undefined {
  if (line === undefined) return undefined;
  const fact = factOf(line, "joint");
  if (fact === undefined) return undefined;
  const ref = checked(reading, line, fact, ["joint"]);
  return ref && given(line, fact, ref.value.name);
}
