/**
 * Small pieces of Markdown; text from files is made harmless first.
 */

/** Text that shows as it is written, whatever signs it holds. */
export function plain(text: string): string {
  const inline = text.replace(/[\\`*_[\]|<>~&]/g, "\\$&");
  return inline
    .replace(/^(\s*)(?=[#+-])/gm, "$1\\")
    .replace(/^(\s*\d+)(?=[.)])/gm, "$1\\")
    .replace(/\r?\n/g, "  \n");
}

/** A word of the language or a name, as code. */
export function code(text: string): string {
  return text.includes("`") ? plain(text) : `\`${text}\``;
}

/** How a text names a thing: as code in Markdown, as it is where nothing reads Markdown. */
export type Naming = (name: string) => string;

/** A fenced block in the language. */
export function fenced(text: string): string {
  return `\`\`\`chair\n${text.replaceAll("```", "'''")}\n\`\`\``;
}

export function bullets(lines: readonly string[]): string {
  return lines.map((line) => `- ${line}`).join("\n");
}

/** Paragraphs, the empty ones left out. */
export function paragraphs(...parts: (string | undefined | false)[]): string {
  return parts.filter(Boolean).join("\n\n");
}
