import type { Command } from "./command.ts";
import { WIDEST, wrapped } from "./terminal.ts";

/** The help of the whole command line. */
export function help(commands: readonly Command[]): string {
  const rows = commands.map(({ usage, summary }) => [`seatwright ${shortOf(usage)}`, summary] as const);
  const others = [
    ["seatwright --stdio", "serve an editor as a language server over the standard streams"],
    ["seatwright --version", "say which version this is"],
    ["seatwright --help", "show this; after a command, its own options"],
  ] as const;
  return `seatwright: chairs described as text, and what follows from them.

${described([...rows, ...others])}

A file may be -, which is standard input. At most 10 MB of one are read.
Ends with 0 when all is well, 1 when a chair has errors, 2 when the command or a file cannot be
used.
What is worked out is a calculation, not a test: local codes and testing come first.
`;
}

/** A usage without its options: `check FILES…`. */
const shortOf = (usage: string): string => usage.split(/ \[?--| \|| \[-/)[0] ?? usage;

/** The help of one command. */
export function helpOf(command: Command): string {
  const formats = command.formats ?? ["text", "json"];
  const options = Object.entries(command.options).map(([name, { type, short, values, does }]) => {
    const dashes = short ? `-${short}, --${name}` : `--${name}`;
    const given = values ?? (name === "format" ? formats.join("|") : name.toUpperCase());
    return [type === "string" ? `${dashes} ${given}` : dashes, does] as const;
  });
  const listed = options.length ? `\n${described(options)}\n` : "";
  return `${wrapped(`seatwright ${command.usage}`)}\n\n${wrapped(command.summary, "  ")}\n${listed}`;
}

/** Rows of a name and what it does, the latter broken between words; no line is wider than a help may be. */
function described(rows: readonly (readonly [string, string])[]): string {
  const names = Math.max(...rows.map(([name]) => name.length).filter((length) => length <= MOST_NAME));
  return rows
    .map(([name, does]) => {
      const room = WIDEST - names - 4;
      const [first = "", ...more] = broken(does, room);
      const head =
        name.length > names
          ? `  ${name}\n${" ".repeat(names + 4)}${first}`
          : `  ${name.padEnd(names)}  ${first}`;
      return [head, ...more.map((line) => `${" ".repeat(names + 4)}${line}`)].join("\n");
    })
    .join("\n");
}

/** A longer name stands on a line of its own. */
const MOST_NAME = 40;

function broken(text: string, room: number): string[] {
  const lines = [""];
  for (const word of text.split(" ")) {
    const last = lines.at(-1)!;
    if (last && last.length + 1 + word.length > room) lines.push(word);
    else lines[lines.length - 1] = last ? `${last} ${word}` : word;
  }
  return lines;
}
