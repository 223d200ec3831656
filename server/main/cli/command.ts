import { TextDocument } from "vscode-languageserver-textdocument";
import type { Edit, Problem } from "../../../grammar/problem.ts";
import { finish } from "../../../grammar/steps.ts";
import { valueRow } from "../../../grammar/vocabulary/values.ts";
import type { LetterFiles } from "../../drawing/markout/letters/files.ts";
import { lateSteps } from "../../strength/late.ts";
import type { Asked, OtherFiles, Study } from "../../study.ts";
import { filesOnDisk } from "../files-node.ts";
import { resolveNamed } from "../named-files.ts";
import type { Services } from "../put-to-work.ts";
import type { Examples } from "./examples.ts";
import { type Input, readInput } from "./read-input.ts";
import { brush, harmless, type Terminal } from "./terminal.ts";

/** What a command works with. */
export interface Bench {
  terminal: Terminal;
  services: Services;
  /** A chair that breaks a rule, by its code. */
  exampleOf: Examples;
  /** The letters of the sheets; none where they are not at hand. */
  letters?: () => LetterFiles | undefined;
  /** Starts the language server on the standard streams. */
  serve: () => void;
}

/** The letters for a PDF, as an option. */
export function lettersOf({ letters }: Bench): { letters?: LetterFiles } {
  const files = letters?.();
  return files ? { letters: files } : {};
}

/** How a command ended: all well, faults in the chairs, or the command was not meant like that. */
export const ENDED = { well: 0, faults: 1, misuse: 2 } as const;

export type Options = Record<string, string | boolean | undefined>;

/** An option, with what the help says it does. */
export interface Option {
  type: "string" | "boolean";
  short?: string;
  values?: string;
  does: string;
}

export interface Command {
  name: string;
  /** As it stands in the help: `check FILES…`. */
  usage: string;
  summary: string;
  /** Options beyond those that every command has, as `parseArgs` takes them. */
  options: Record<string, Option>;
  /** What `--format` may be, where it is an option; text and json unless said. */
  formats?: readonly string[];
  /** How many things it takes after its name. */
  takes: { least: number; most: number };
  /** The ending, at once or when it is done. */
  run(bench: Bench, given: string[], options: Options): number | Promise<number>;
}

/** A misuse: one line on standard error. */
export function misuse(bench: Bench, sentence: string): number {
  bench.terminal.error(`seatwright: ${harmless(sentence)}\n`);
  return ENDED.misuse;
}

/** Where an edit of the text stands, counted as findings count: lines and columns from 1. */
export function placed(text: string, { start, end, text: newText }: Edit) {
  const document = TextDocument.create("", "chair", 0, text);
  const from = document.positionAt(start);
  const to = document.positionAt(end);
  return {
    line: from.line + 1,
    column: from.character + 1,
    endLine: to.line + 1,
    endColumn: to.character + 1,
    newText,
  };
}

/** Reads each file and hands it on; one that cannot be read costs one line, and the others go on. Gives the worst ending. */
export function eachFile(
  bench: Bench,
  files: string[],
  each: (input: Extract<Input, { text: string }>) => number,
): number {
  let worst: number = ENDED.well;
  for (const file of files) {
    const input = readInput(file);
    if ("text" in input) worst = Math.max(worst, each(input));
    else {
      const paint = brush(bench.terminal.colour.error);
      bench.terminal.error(`${paint("bold", harmless(file))}: ${input.refused}.\n`);
      worst = ENDED.misuse;
    }
  }
  return worst;
}

/** Says on standard error that errors keep the answer from being whole, if there are any; gives the ending. */
export function toldOfErrors(
  { terminal }: Bench,
  file: string,
  problems: readonly Problem[],
  so: string,
): number {
  const errors = problems.filter(({ severity }) => severity === "error").length;
  if (errors === 0) return ENDED.well;
  terminal.error(
    `${harmless(file)}: ${errors === 1 ? "1 error" : `${errors} errors`}, so ${so}; "seatwright check" tells.\n`,
  );
  return ENDED.faults;
}

/** The files that a chair names, beside it on disk. */
export const otherFiles: OtherFiles = (() => {
  const files = filesOnDisk();
  return { resolve: resolveNamed, read: files.read };
})();

/** What a study works out late: always where one of these values is late itself, else where the file requires one that is. */
export const lateFor = (...values: readonly string[]): Pick<Asked, "late" | "lateWhen"> => ({
  late: lateSteps,
  ...(!values.some((name) => valueRow(name)?.late) && { lateWhen: "required" as const }),
});

/** A file read and worked out, with the files it names beside it on disk; what is late only where it is asked for. */
export function studyOf(
  bench: Bench,
  { text, address }: { text: string; address: string },
  late: Pick<Asked, "late" | "lateWhen"> = {},
  files = otherFiles,
): Study {
  const study = finish(bench.services.study({ text, address, files, ...late }));
  for (const { what, thrown } of study.failures)
    bench.terminal.error(`seatwright: internal error in ${what}: ${harmless(String(thrown))}\n`);
  return study;
}
