/**
 * The translation that the editor shows: sentences by their English, as `vscode.l10n` has them.
 */

/** The `translation` among what the client sends at first; what is not text is left out, and nothing is missing where none comes. */
export function translationOf(options: unknown): Record<string, string> {
  const translation = (options as { translation?: unknown } | null | undefined)?.translation;
  if (typeof translation !== "object" || translation === null) return {};
  return Object.fromEntries(
    Object.entries(translation).filter((entry): entry is [string, string] => typeof entry[1] === "string"),
  );
}
