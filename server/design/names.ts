/**
 * The one namespace of a chair: lets, parts, joints, angles, boards and yards; and the references to them.
 */

import { nearest } from "../../grammar/nearest.ts";
import type { Fix, Related, Span } from "../../grammar/problem.ts";
import type { Shape } from "../../grammar/row.ts";
import { sentence } from "../../grammar/sentences/sentence.ts";
import type { Fact } from "../../grammar/tree.ts";
import { vocabulary } from "../../grammar/vocabulary/index.ts";
import { wholeValues } from "../../grammar/vocabulary/values.ts";
import { orList } from "../../grammar/wording.ts";
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
export const kindName = (kind: DeclaredKind): string => sentence(`name-of.${kind}`);

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
      message: sentence("related.first-given-name", { name: before.name }),
    };
    if (before.file !== undefined) related.file = before.file;
    report(reading, item.source, declared.at, {
      code: "duplicate-name",
      message: sentence("name-given-twice", { kind: kindName(kindOf(before)), name: declared.name }),
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
      message: sentence("name-of-value", { name }),
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
    message: meaning
      ? sentence("name-is-word.meaning", { name, meaning })
      : sentence("name-is-word", { name }),
    fixes: [rename({ at }, freeName(reading, `${name}-size`, true))],
  });
}

function rename({ at }: { at: Span }, name: string): Fix {
  return { title: sentence("fix.call-it", { name }), edits: [{ start: at.start, end: at.end, text: name }] };
}

function freeName(reading: Reading, name: string, asItIs = false): string {
  if (asItIs && !reading.names.has(name)) return name;
  for (let n = 2; ; n++) if (!reading.names.has(`${name}-${n}`)) return `${name}-${n}`;
}

type DeclaredKind =
  | "post"
  | "rail"
  | "slat"
  | "stick"
  | "bow"
  | "block"
  | "joint"
  | "angle"
  | "let"
  | "board"
  | "yard"
  | "load";

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
      message: sentence("wrong-kind", { name, kind: kindName(kind), kinds: orList(kinds.map(kindName)) }),
      related: [
        {
          start: target.at.start,
          end: target.at.end,
          message: sentence("related.given-here", { name }),
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
  if (
    /^\d+(\.(left|right))?$/.test(rest) &&
    (target.is === "rail" || target.is === "slat" || target.is === "stick")
  ) {
    return { ...ref, value: { ...ref.value, name: fact.name ?? ref.value.name } };
  }
  if (/^\d+$/.test(rest) && target.is === "board")
    return { ...ref, value: { name: fact.name ?? ref.value.name } };
  const message =
    target.is === "board"
      ? sentence("unknown-name.board", { name: ref.value.name, found: fact.name })
      : pair
        ? sentence("unknown-name.left-right", { name: ref.value.name, rest })
        : sentence("unknown-name.no-pair", { name: ref.value.name, found: fact.name });
  const fixes: Fix[] = (pair ? [`${ref.value.name}.left`, `${ref.value.name}.right`] : [ref.value.name]).map(
    (text) => ({
      title: sentence("fix.change-to", { text }),
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
  if (near === undefined && reading.lacksFile) return;
  const values = { kind: orList(kinds.map((kind) => sentence(`bare-name-of.${kind}`))), name };
  const message =
    near !== undefined
      ? sentence("unknown-name.near", { ...values, near })
      : fitting.length > 0 && fitting.length <= 8
        ? sentence("unknown-name.there-is", { ...values, names: fitting.join(", ") })
        : sentence("unknown-name.none", values);
  report(reading, line.source, fact, {
    code: "unknown-name",
    message,
    ...(near === undefined
      ? {}
      : {
          fixes: [
            {
              title: sentence("fix.change-to", { text: near }),
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
