import type { Command } from "./command.ts";
import { columns } from "./terminal.ts";

/** The help of the whole command line. */
export function help(commands: readonly Command[]): string {
  const rows = commands.map(({ usage, summary }) => [usage, summary]);
  const others = [
    ["--stdio", "serve an editor as a language server over the standard streams"],
    ["--version", "say which version this is"],
    ["--help", "show this; after a command, its own options"],
  ];
  return `seatwright: chairs described as text, and what follows from them.

${columns([...rows.map(([usage, summary]) => [`seatwright ${usage}`, summary as string]), ...others.map(([usage, summary]) => [`seatwright ${usage}`, summary as string])], "  ")}

A file may be -, which is standard input. At most 10 MB of one are read.
Ends with 0 when all is well, 1 when a chair has errors, 2 when the command or a file cannot be used.
What is worked out is a calculation, not a test: local codes and testing come first.
`;
}

/** The help of one command. */
export function helpOf(command: Command): string {
  const formats = command.formats ?? ["text", "json"];
  const options = Object.entries(command.options).map(([name, { type, short, values }]) => {
    const dashes = short ? `-${short}, --${name}` : `--${name}`;
    const given = values ?? (name === "format" ? formats.join("|") : name.toUpperCase());
    return [type === "string" ? `${dashes} ${given}` : dashes];
  });
  const listed = options.length ? `\n${columns(options, "  ")}\n` : "";
  return `seatwright ${command.usage}\n\n  ${command.summary}\n${listed}`;
}
