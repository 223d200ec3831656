/**
 * Texts made wrong: one error in the middle, or badly broken as a text is while it is pasted about.
 */

export const kinds = ["clean", "one error", "badly broken"] as const;
export type Kind = (typeof kinds)[number];

/** The text as the kind wants it; `slip` makes the one error in a line. */
export function damaged(text: string, kind: Kind, slip: (text: string, from: number) => string): string {
  if (kind === "clean") return text;
  if (kind === "one error") return slip(text, Math.floor(text.length / 2));
  return withoutBraces(text.slice(0, Math.floor(text.length * 0.9)));
}

/** Every third brace is gone. */
function withoutBraces(text: string): string {
  let count = 0;
  return text.replace(/[{}]/g, (brace) => (++count % 3 === 0 ? "" : brace));
}

/** The first place at or after `from`, or else before it, where `wrong` can take the place of `right`. */
export function replaceNear(text: string, from: number, right: string, wrong: string): string {
  const after = text.indexOf(right, from);
  const at = after >= 0 ? after : text.lastIndexOf(right, from);
  return at < 0 ? text : text.slice(0, at) + wrong + text.slice(at + right.length);
}
