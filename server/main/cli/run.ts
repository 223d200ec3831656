import { type ParseArgsConfig, parseArgs } from "node:util";
import { nearest } from "../../../grammar/nearest.ts";
import { listed } from "../../rules/machinery/say.ts";
import { version } from "../version.ts";
import { assemble } from "./assemble.ts";
import { boards } from "./boards.ts";
import { check } from "./check.ts";
import { type Bench, type Command, ENDED, misuse, type Options } from "./command.ts";
import { compare } from "./compare/compare.ts";
import { draw } from "./draw.ts";
import { explain } from "./explain.ts";
import { exportCommand } from "./export.ts";
import { facts } from "./facts.ts";
import { fit } from "./fit.ts";
import { format } from "./format.ts";
import { git } from "./git.ts";
import { help, helpOf } from "./help.ts";
import { history } from "./history.ts";
import { markout } from "./markout.ts";
import { merge } from "./merge.ts";
import { range } from "./range.ts";
import { reach } from "./reach.ts";
import { reckon } from "./reckon.ts";
import { stand } from "./stand.ts";
import { strength } from "./strength.ts";
import { harmless } from "./terminal.ts";

export const commands: readonly Command[] = [
  check,
  reckon,
  boards,
  assemble,
  stand,
  fit,
  strength,
  range,
  reach,
  draw,
  markout,
  compare,
  merge,
  history,
  facts,
  git,
  exportCommand,
  format,
  explain,
];

/** Runs one command line and gives the exit code; nothing when a server was started that ends by itself. */
export function run(args: readonly string[], bench: Bench): number | Promise<number> | undefined {
  const [first, ...rest] = args;
  if (first === "--stdio" && rest.length === 0) {
    bench.serve();
    return undefined;
  }
  if (first === undefined || first === "--help" || first === "-h" || first === "help")
    return say(bench, help(commands));
  if (first === "--version") return say(bench, `${version}\n`);
  const command = commands.find(({ name }) => name === first);
  if (!command) return unknownCommand(bench, first);
  return runCommand(bench, command, rest);
}

function runCommand(bench: Bench, command: Command, args: string[]): number | Promise<number> {
  const config: ParseArgsConfig = {
    args,
    options: { ...command.options, help: { type: "boolean", short: "h" } },
    allowPositionals: true,
    strict: true,
  };
  let parsed: ReturnType<typeof parseArgs>;
  try {
    parsed = parseArgs(config);
  } catch (error) {
    return misuse(bench, `${firstSentence(error)} Try "seatwright ${command.name} --help".`);
  }
  const options = parsed.values as Options;
  if (options.help) return say(bench, helpOf(command));
  const { least, most } = command.takes;
  const count = parsed.positionals.length;
  if (count < least) return misuse(bench, `"${command.name}" needs more: ${command.usage}.`);
  if (count > most) return misuse(bench, `"${command.name}" takes no more than that: ${command.usage}.`);
  const formats = command.formats ?? ["text", "json"];
  if (options.format !== undefined && !formats.includes(String(options.format))) {
    const known = listed(formats.map((each) => `"${each}"`));
    return misuse(bench, `"--format ${options.format}" is not known; there are ${known}.`);
  }
  try {
    const ended = command.run(bench, parsed.positionals, options);
    return ended instanceof Promise ? ended.catch((error) => broken(bench, command, error)) : ended;
  } catch (error) {
    return broken(bench, command, error);
  }
}

/** An internal error: nobody may take what was printed by then for the whole answer. */
function broken(bench: Bench, { name }: Command, error: unknown): number {
  const trace = error instanceof Error ? (error.stack ?? error.message) : String(error);
  bench.terminal.error(
    `seatwright: "${name}" stopped because of an internal error; please report it.\n${harmless(trace)}\n`,
  );
  return ENDED.misuse;
}

function unknownCommand(bench: Bench, given: string): number {
  const near = nearest(
    given,
    commands.map(({ name }) => name),
  );
  const offer = near
    ? ` Did you mean "${near}"?`
    : ` There are ${commands.map(({ name }) => `"${name}"`).join(", ")}.`;
  return misuse(bench, `there is no command "${given}".${offer}`);
}

function say(bench: Bench, text: string): number {
  bench.terminal.out(text);
  return ENDED.well;
}

function firstSentence(error: unknown): string {
  const message = error instanceof Error ? error.message : String(error);
  return /^.*?\.(?=\s|$)/.exec(message.replaceAll("\n", " "))?.[0] ?? `${message}.`;
}
