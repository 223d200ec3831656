/**
 * What a request lacks that it cannot be answered without.
 */

/** Methods that ask about a place, and those that ask about a stretch of text. */
const withPosition =
  /^textDocument\/(?:hover|completion|definition|references|documentHighlight|rename|prepareRename|onTypeFormatting)$/;
const withRange = /^textDocument\/(?:codeAction|inlayHint|rangeFormatting|semanticTokens\/range)$/;

/** What each of these needs beside. */
const needed: Readonly<Record<string, readonly string[]>> = {
  "textDocument/rename": ["newName"],
  "textDocument/references": ["context"],
  "textDocument/codeAction": ["context"],
  "textDocument/formatting": ["options"],
  "textDocument/rangeFormatting": ["options"],
  "textDocument/rangesFormatting": ["options", "ranges"],
  "textDocument/onTypeFormatting": ["options", "ch"],
  "textDocument/selectionRange": ["positions"],
  "workspace/symbol": ["query"],
};

/** The first that is missing of what a request must have, by its name; nothing when all is there. */
export function missingIn(method: string, params: unknown): string | undefined {
  const given = record(params);
  if (!given) return "params";
  if (method.startsWith("textDocument/") && typeof record(given.textDocument)?.uri !== "string")
    return "textDocument.uri";
  if (withPosition.test(method) && !isPosition(given.position)) return "position";
  const range = record(given.range);
  if (withRange.test(method) && !(isPosition(range?.start) && isPosition(range?.end))) return "range";
  return needed[method]?.find((name) => given[name] === undefined || given[name] === null);
}

function isPosition(value: unknown): boolean {
  const { line, character } = record(value) ?? {};
  return Number.isInteger(line) && Number.isInteger(character);
}

const record = (value: unknown): Record<string, unknown> | undefined =>
  typeof value === "object" && value !== null ? (value as Record<string, unknown>) : undefined;
