import { nameValue } from "./parts.ts";
import type { Row, Shape } from "./row.ts";
import { fixedWordsOf, markersOf } from "./table.ts";
import type { Fact, Match, Part } from "./tree.ts";

type SlotShape = Extract<Shape, { is: "slot" }>;

/** A match in the making. */
interface State {
  parts: readonly Part[];
  facts: Fact[];
  /** Words that are not operands, and those among them that are not names either. */
  markers: ReadonlySet<string>;
  fixed: ReadonlySet<string>;
  /** The furthest place reached, and what could have stood there. */
  furthest: number;
  expected: Shape[];
}

/**
 * How a statement's parts fit the shape of a row. Words are tried before names; an optional phrase once begun must be
 * finished; of alternatives the one that reaches furthest wins. Facts read before a mistake are kept.
 */
export function matchRow({ shape }: Row, parts: readonly Part[]): Match {
  const state: State = {
    parts,
    facts: [],
    markers: markersOf(shape),
    fixed: fixedWordsOf(shape),
    furthest: 0,
    expected: [],
  };
  const end = walk(shape, 0, state);
  const reached = Math.max(state.furthest, end < 0 ? ~end : end);
  const expected = state.furthest === reached ? state.expected : [];
  return { facts: state.facts, complete: end >= 0 && end === reached, stopped: reached, expected };
}

/** True when all parts were used and nothing is missing. */
export function isWhole(match: Match, parts: readonly Part[]): boolean {
  return match.complete && match.stopped === parts.length;
}

/** Matches from a place on; gives the place after it, or the complement (`~`) of the place where it failed. */
function walk(shape: Shape, from: number, state: State): number {
  switch (shape.is) {
    case "word":
      return walkWord(shape, from, state);
    case "slot":
      return walkSlot(shape, from, state);
    case "seq": {
      let at = from;
      for (const inner of shape.of) {
        at = walk(inner, at, state);
        if (at < 0) return at;
      }
      return at;
    }
    case "maybe": {
      const facts = state.facts.length;
      const end = walk(shape.of, from, state);
      if (end >= 0 || ~end > from) return end;
      state.facts.length = facts;
      return from;
    }
    case "either":
      return walkBest(shape.of, from, state).end;
    case "list":
      return walkList(shape.of, from, state);
    case "clauses":
      return walkClauses(shape.of, from, state);
  }
}

function fail(shape: Shape, at: number, state: State): number {
  if (at > state.furthest) {
    state.furthest = at;
    state.expected = [shape];
  } else if (at === state.furthest && !state.expected.includes(shape)) state.expected.push(shape);
  return ~at;
}

function take(at: number, state: State): number {
  if (at + 1 > state.furthest) {
    state.furthest = at + 1;
    state.expected = [];
  }
  return at + 1;
}

function walkWord(shape: Extract<Shape, { is: "word" }>, at: number, state: State): number {
  const part = state.parts[at];
  if (part === undefined || textOf(part) !== shape.word) return fail(shape, at, state);
  if (shape.label !== undefined) {
    state.facts.push({
      label: shape.label,
      slot: "marker",
      name: shape.word,
      start: part.start,
      end: part.end,
    });
  }
  return take(at, state);
}

/** The word or sign a part is, as shapes name it. */
export function textOf(part: Part): string | undefined {
  switch (part.is) {
    case "word":
      return part.text;
    case "times":
      return "x";
    case "equals":
      return "=";
    case "compare":
      return part.op;
    case "comma":
      return ",";
    default:
      return undefined;
  }
}

function walkSlot(shape: SlotShape, at: number, state: State): number {
  const part = state.parts[at];
  const fact = part === undefined ? undefined : fill(shape, part, state);
  if (fact === undefined) return fail(shape, at, state);
  state.facts.push(fact);
  return take(at, state);
}

function fill(
  { slot, label, words, names }: SlotShape,
  part: Part,
  { markers, fixed }: State,
): Fact | undefined {
  const { start, end } = part;
  switch (slot) {
    case "text":
    case "date":
      return part.is === slot ? { label, slot, text: part.text, start, end } : undefined;
    case "word":
      if (part.is !== "word" || (words !== undefined && !words.includes(part.text))) return undefined;
      return { label, slot, name: part.text, start, end };
    case "name":
    case "ref":
      if (part.is !== "word") return undefined;
      if (fixed.has(part.text) && !words?.includes(part.text) && !names?.includes(part.text))
        return undefined;
      return { label, slot, name: part.text, start, end };
    default:
      if (part.is === "value") return { label, slot, value: part.value, start, end };
      if (part.is !== "word" || markers.has(part.text)) return undefined;
      return { label, slot, value: nameValue(part.text, start), start, end };
  }
}

/** The alternative that succeeds furthest, or else the one that fails furthest. */
function walkBest(shapes: readonly Shape[], from: number, state: State): { end: number; index: number } {
  const kept = state.facts.length;
  let end = ~from;
  let index = -1;
  let facts: Fact[] = [];
  shapes.forEach((shape, at) => {
    state.facts.length = kept;
    const reached = walk(shape, from, state);
    if (index < 0 || better(reached, end)) {
      end = reached;
      index = at;
      facts = state.facts.slice(kept);
    }
  });
  state.facts.length = kept;
  state.facts.push(...facts);
  return { end, index };
}

/** A match that reaches further is better; at the same place one that succeeds. */
function better(one: number, other: number): boolean {
  const reach = (end: number) => (end < 0 ? ~end : end);
  return reach(one) > reach(other) || (reach(one) === reach(other) && one >= 0 && other < 0);
}

function walkList(shape: Shape, from: number, state: State): number {
  let at = walk(shape, from, state);
  while (at >= 0 && state.parts[at]?.is === "comma") {
    const kept = state.facts.length;
    const next = walk(shape, at + 1, state);
    if (next < 0 && ~next === at + 1) {
      state.facts.length = kept;
      return at;
    }
    at = next;
  }
  return at;
}

function walkClauses(shapes: readonly Shape[], from: number, state: State): number {
  const left = [...shapes];
  let at = from;
  for (;;) {
    const kept = state.facts.length;
    const start = at === from ? at : at + 1;
    const { end, index } = walkBest(left, start, state);
    if (end < 0 && (~end > start || at === from)) return end;
    if (end < 0) {
      state.facts.length = kept;
      return at;
    }
    left.splice(index, 1);
    at = end;
    if (left.length === 0 || state.parts[at]?.is !== "comma") return at;
  }
}
