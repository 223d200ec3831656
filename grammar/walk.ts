import type { Statement, Tree, Value } from "./tree.ts";

/** Every statement of these, outer before inner, in the order of the text. */
export function* everyStatement(statements: readonly Statement[]): Generator<Statement> {
  for (const statement of statements) {
    yield statement;
    if (statement.block !== undefined) yield* everyStatement(statement.block.statements);
  }
}

/** The values directly inside one. */
export function innerValues(value: Value): readonly Value[] {
  switch (value.is) {
    case "share":
      return [value.share];
    case "negate":
    case "group":
      return [value.of];
    case "binary":
      return [value.left, value.right];
    case "call":
      return value.args;
    default:
      return [];
  }
}

/** Every value of the tree's statements, inner ones too. */
export function* everyValue(tree: Tree): Generator<Value> {
  for (const statement of everyStatement(tree.statements)) {
    for (const part of statement.parts) {
      const waiting = part.is === "value" ? [part.value] : [];
      for (let value = waiting.pop(); value !== undefined; value = waiting.pop()) {
        yield value;
        waiting.push(...innerValues(value));
      }
    }
  }
}

/** The statement in whose block a place lies, innermost; undefined outside all blocks. An unclosed block reaches to the next statement. */
export function blockAt(tree: Tree, offset: number): Statement | undefined {
  let found: Statement | undefined;
  let level: readonly Statement[] = tree.statements;
  let limit = tree.text.length + 1;
  for (;;) {
    const at = lastBefore(level, offset);
    const statement = at < 0 ? undefined : level[at];
    const block = statement?.block;
    if (statement === undefined || block === undefined || offset <= block.start) return found;
    const end = block.closed ? block.end : (level[at + 1]?.start ?? limit);
    if (offset >= end) return found;
    found = statement;
    level = block.statements;
    limit = end;
  }
}

/** The statement whose own line, before any block, a place lies on or at the end of; blanks after its last part are its own. */
export function lineAt(tree: Tree, offset: number): Statement | undefined {
  const level = blockAt(tree, offset)?.block?.statements ?? tree.statements;
  const at = lastBefore(level, offset);
  const statement = at < 0 ? undefined : level[at];
  if (statement === undefined) return undefined;
  if (statement.block !== undefined && offset > statement.block.start) return undefined;
  const end = Math.max(statement.word?.end ?? statement.start, statement.parts.at(-1)?.end ?? 0);
  return offset <= end || /^[^\S\r\n]*$/.test(tree.text.slice(end, offset)) ? statement : undefined;
}

/** The last statement that starts at or before a place, by halving. */
function lastBefore(statements: readonly Statement[], offset: number): number {
  let low = 0;
  let high = statements.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (statements[middle]!.start <= offset) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}
