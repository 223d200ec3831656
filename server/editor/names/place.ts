/**
 * What stands at a place in the text.
 */
import type { Span } from "../../../grammar/problem.ts";
import type { RefKind, Row, Shape } from "../../../grammar/row.ts";
import type { Comment, Fact, Part, Statement, Tree, Value } from "../../../grammar/tree.ts";
import { innerValues } from "../../../grammar/walk.ts";

export function within(span: Span, offset: number): boolean {
  return span.start <= offset && offset <= span.end;
}

/** Where a statement's own line ends: before its block, if it has one. */
export function headEnd(statement: Statement): number {
  return statement.block ? statement.block.start : statement.end;
}

/** The statements that hold the place, outermost first; the last may hold it in its line or in its block. */
export function pathAt(tree: Tree, offset: number): Statement[] {
  const path: Statement[] = [];
  let level: readonly Statement[] | undefined = tree.statements;
  while (level) {
    const found: Statement | undefined = level.find((statement) => within(statement, offset));
    if (!found) break;
    path.push(found);
    level = found.block && offset >= found.block.start ? found.block.statements : undefined;
  }
  return path;
}

export function commentAt(tree: Tree, offset: number): Comment | undefined {
  return tree.comments.find((comment) => comment.start < offset && offset <= comment.end);
}

export function partAt(statement: Statement, offset: number): Part | undefined {
  return (
    statement.parts.find((part) => part.start <= offset && offset < part.end) ??
    statement.parts.find((part) => within(part, offset))
  );
}

/** The facts of a statement that hold the place, the narrowest first. */
export function factsAt(statement: Statement, offset: number): Fact[] {
  const facts = (statement.match?.facts ?? []).filter((fact) => within(fact, offset));
  return facts.sort((a, b) => a.end - a.start - (b.end - b.start));
}

/** The expressions that hold the place, the outermost first. */
export function valuesAt(value: Value, offset: number): Value[] {
  const path: Value[] = [];
  let at: Value | undefined = value;
  while (at && within(at, offset)) {
    path.push(at);
    at = innerValues(at).find((child) => within(child, offset));
  }
  return path;
}

/** Every expression in one, itself first. A stack of our own: an expression may be deeper than the machine's. */
export function* everyValue(value: Value): Generator<Value> {
  const waiting: Value[] = [value];
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    yield next;
    waiting.push(...[...innerValues(next)].reverse());
  }
}

/** The expressions of a statement: those its facts give, and those of parts that fit nothing. A bare name is only a fact's. */
export function valuesOf(statement: Statement): Value[] {
  const facts = statement.match?.facts.flatMap(({ value }) => value ?? []) ?? [];
  const rest = statement.parts.flatMap((part) => (part.is === "value" ? [part.value] : []));
  return [
    ...facts,
    ...rest.filter((value) => !facts.some((fact) => fact.start <= value.start && value.end <= fact.end)),
  ];
}

/** The outermost expression that holds the place. */
export function valueAt(statement: Statement, offset: number): Value | undefined {
  return valuesOf(statement).find((value) => within(value, offset));
}

interface RefSlot {
  ref: RefKind;
  /** Words that may stand there instead of a name. */
  words: readonly string[];
}

/** What a `ref` slot of a row points at, by its label. */
export function refSlot(row: Row, label: string): RefSlot | undefined {
  return refSlotIn(row.shape, label);
}

function refSlotIn(shape: Shape, label: string): RefSlot | undefined {
  switch (shape.is) {
    case "word":
      return undefined;
    case "slot":
      return shape.slot === "ref" && shape.label === label && shape.ref
        ? { ref: shape.ref, words: shape.words ?? [] }
        : undefined;
    case "maybe":
    case "list":
      return refSlotIn(shape.of, label);
    default:
      for (const part of shape.of) {
        const found = refSlotIn(part, label);
        if (found) return found;
      }
      return undefined;
  }
}
