/**
 * Where the command line writes, and how handsomely it may.
 */

export interface Terminal {
  out(text: string): void;
  error(text: string): void;
  /** Whether standard output, and standard error, take colours. */
  colour: { out: boolean; error: boolean };
}

type Paint = "red" | "yellow" | "cyan" | "grey" | "bold";

const codes: Record<Paint, [number, number]> = {
  red: [31, 39],
  yellow: [33, 39],
  cyan: [36, 39],
  grey: [90, 39],
  bold: [1, 22],
};

/** This process's streams; colours only on a terminal, and never under `NO_COLOR`. */
export function processTerminal(): Terminal {
  const wanted = (stream: NodeJS.WriteStream) =>
    stream.isTTY === true && !process.env.NO_COLOR && process.env.TERM !== "dumb";
  process.stdout.on("error", ended);
  process.stderr.on("error", () => process.exit(UNWRITTEN));
  return {
    out: (text) => void process.stdout.write(text),
    error: (text) => void process.stderr.write(text),
    colour: { out: wanted(process.stdout), error: wanted(process.stderr) },
  };
}

/** The ending when not all could be written. */
const UNWRITTEN = 2;

/** A full disk, or a reader that has closed the pipe: whoever reads on must not take what came for the whole. */
function ended(error: NodeJS.ErrnoException) {
  const why =
    error.code === "EPIPE"
      ? "standard output was closed before all was written"
      : error.code === "ENOSPC"
        ? "standard output is full, so not all was written"
        : `standard output cannot be written (${error.code ?? "unknown reason"})`;
  process.stderr.write(`seatwright: ${why}.\n`, () => process.exit(UNWRITTEN));
}

/** A brush that paints when colours are on. */
export function brush(colour: boolean) {
  return (paint: Paint, text: string) => {
    const [on, off] = codes[paint];
    return colour ? `\u001b[${on}m${text}\u001b[${off}m` : text;
  };
}

export type Brush = ReturnType<typeof brush>;

/** Text from a file made harmless to print: no control characters that could steer the terminal. */
export function harmless(text: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is taken out
  return text.replace(/[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/g, "\ufffd");
}

/** Rows of cells with every column as wide as its widest cell, the last left ragged. */
export function columns(rows: readonly (readonly string[])[], indent = ""): string {
  const widths: number[] = [];
  for (const row of rows)
    for (const [at, cell] of row.entries()) widths[at] = Math.max(widths[at] ?? 0, cell.length);
  const line = (row: readonly string[]) =>
    row.map((cell, at) => (at === row.length - 1 ? cell : cell.padEnd(widths[at] ?? 0))).join("  ");
  return rows.map((row) => `${indent}${line(row)}`.trimEnd()).join("\n");
}

/** No line of a help is wider, columns. */
export const WIDEST = 100;

/** How wide running text is set, columns. */
const WIDTH = 88;

/** Paragraphs broken between words; every line begins with the indent. */
export function wrapped(text: string, indent = ""): string {
  return text
    .split(/\n{2,}/)
    .map((paragraph) => {
      const lines = [""];
      for (const word of paragraph.split(/\s+/)) {
        const last = lines.at(-1) as string;
        if (last && indent.length + last.length + 1 + word.length > WIDTH) lines.push(word);
        else lines[lines.length - 1] = last ? `${last} ${word}` : word;
      }
      return lines.map((line) => `${indent}${line}`).join("\n");
    })
    .join("\n\n");
}
