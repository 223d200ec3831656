import { TextDocument } from "vscode-languageserver-textdocument";
import type { Problem, Severity, Span } from "../../../grammar/problem.ts";
import { finish } from "../../../grammar/steps.ts";
import { messageOf } from "../../mends/words.ts";
import { lateSteps } from "../../strength/late.ts";
import { annotationsOf } from "./check/annotations.ts";
import { type Checked, isRead } from "./check/checked.ts";
import { placesFrom } from "./check/places.ts";
import { sarifOf } from "./check/sarif.ts";
import { newSince } from "./check/since.ts";
import { type Bench, type Command, ENDED, misuse, otherFiles, studyOf } from "./command.ts";
import { excerpt } from "./excerpt.ts";
import { formatOption, outOption } from "./options.ts";
import { readInput } from "./read-input.ts";
import type { CheckOutput, Finding } from "./schema.ts";
import { type Brush, brush, harmless } from "./terminal.ts";
import { written as putOut } from "./writing.ts";

export const check: Command = {
  name: "check",
  usage: "check FILES… [--since REVISION] [--format text|json|sarif|annotations] [-o FILE]",
  summary: "say what is wrong with each chair, by how much, and what puts it right",
  options: {
    format: formatOption,
    since: { type: "string", values: "REVISION", does: "tell only what is new since this revision of git" },
    out: outOption,
  },
  formats: ["text", "json", "sarif", "annotations"],
  takes: { least: 1, most: Number.POSITIVE_INFINITY },
  run(bench, files, { format, since, out }) {
    const sifted = typeof since === "string" ? newSince(bench, since) : (each: Checked) => each;
    if ("why" in sifted) return misuse(bench, `${sifted.why}.`);
    const checked = files.map((file) => mended(bench, sifted(checkOne(bench, file))));
    const output = outputOf(checked);
    const told = writtenAs(bench, String(format ?? "text"), checked, output);
    const ending = told === "" ? ENDED.well : putOut(bench, told, out);
    if (ending !== ENDED.well || checked.some((each) => !isRead(each))) return ENDED.misuse;
    return output.errors ? ENDED.faults : ENDED.well;
  },
};

function checkOne(bench: Bench, file: string): Checked {
  const input = readInput(file);
  if ("refused" in input) return input;
  const document = TextDocument.create(input.address, "chair", 0, input.text);
  const study = studyOf(bench, input, { late: lateSteps });
  const { problems, accepted } = study;
  return { file, document, study, problems, accepted };
}

/** With what puts each finding right, which is tried only for those that are told. */
function mended(bench: Bench, checked: Checked): Checked {
  if (isRead(checked)) finish(bench.services.mend(checked.study, otherFiles, checked.problems));
  return checked;
}

function outputOf(checked: readonly Checked[]): CheckOutput {
  const files = checked.map((each): CheckOutput["files"][number] => {
    if (!isRead(each)) return { file: each.file, refused: each.refused, findings: [], accepted: [] };
    const { file, document, problems, accepted } = each;
    return {
      file,
      findings: problems.map((problem) => findingOf(document, problem)),
      accepted: accepted.map(({ problem, because }) => ({ ...findingOf(document, problem), because })),
    };
  });
  const findings = files.flatMap((each) => each.findings);
  return { files, errors: countOf(findings, "error"), warnings: countOf(findings, "warning") };
}

function writtenAs(bench: Bench, format: string, checked: readonly Checked[], output: CheckOutput): string {
  if (format === "json") return `${JSON.stringify(output, null, 2)}\n`;
  if (format === "sarif")
    return `${JSON.stringify(sarifOf(checked, bench.services.rules, placesFrom(process.cwd())), null, 2)}\n`;
  if (format === "annotations")
    return annotationsOf(checked, placesFrom(process.cwd()))
      .map((line) => `${line}\n`)
      .join("");
  for (const each of checked) {
    if (!isRead(each)) bench.terminal.error(`${harmless(each.file)}: ${each.refused}.\n`);
  }
  const read = checked.filter(isRead);
  if (read.length === 0) return "";
  const paint = brush(bench.terminal.colour.out);
  const blocks = read.flatMap(({ file, document, problems, accepted }) => [
    ...problems.map((problem) => written(paint, file, document, problem)),
    ...accepted.map((each) => acceptedLine(paint, file, document, each)),
  ]);
  return `${[...blocks, summary(output)].join("\n")}\n`;
}

/** A finding as JSON shows it, with its place in lines. */
export function findingOf(document: TextDocument, problem: Problem): Finding {
  const { code, severity, subject, found, allowed, mends = [] } = problem;
  return {
    code,
    severity,
    message: messageOf(problem),
    ...rangeOf(document, problem),
    ...(subject !== undefined && { subject }),
    ...(found !== undefined && { found }),
    ...(allowed !== undefined && { allowed }),
    mends: mends.map(({ title, edits }) => ({
      title,
      edits: edits.map((edit) => ({ ...rangeOf(document, edit), newText: edit.text })),
    })),
  };
}

/** Lines and columns from 1. */
function rangeOf(document: TextDocument, span: Span) {
  const start = document.positionAt(span.start);
  const end = document.positionAt(span.end);
  return {
    line: start.line + 1,
    column: start.character + 1,
    endLine: end.line + 1,
    endColumn: end.character + 1,
  };
}

function written(paint: Brush, file: string, document: TextDocument, problem: Problem): string {
  const { line, character } = document.positionAt(problem.start);
  const place = `${harmless(file)}:${line + 1}:${character + 1}`;
  const head = `${paint("bold", place)}: ${severityWord(paint, problem.severity)}: ${harmless(messageOf(problem))} ${paint("grey", `[${problem.code}]`)}`;
  const shown = excerpt(document, problem);
  if (!shown) return head;
  const gutter = String(line + 1).padStart(5);
  const marks = problem.severity === "error" ? paint("red", shown.marks) : paint("yellow", shown.marks);
  return `${head}\n${paint("grey", `${gutter} |`)} ${shown.line}\n${paint("grey", "      |")} ${marks}`;
}

/** What the file accepts, with its reason. */
function acceptedLine(
  paint: Brush,
  file: string,
  document: TextDocument,
  { problem, because }: { problem: Problem; because: string },
): string {
  const { line, column } = rangeOf(document, problem);
  const place = paint("bold", `${harmless(file)}:${line}:${column}`);
  return `${place}: ${paint("grey", "accepted")}: ${harmless(messageOf(problem))} Because: ${harmless(because)} ${paint("grey", `[${problem.code}]`)}`;
}

function severityWord(paint: Brush, severity: Severity): string {
  switch (severity) {
    case "error":
      return paint("red", "error");
    case "warning":
      return paint("yellow", "warning");
    case "information":
      return paint("cyan", "note");
    case "hint":
      return paint("grey", "hint");
  }
}

function summary({ files, errors, warnings }: CheckOutput): string {
  const read = files.filter(({ refused }) => !refused).length;
  const where = `in ${counted(read, "file")}`;
  if (!errors && !warnings) return `No faults found ${where}. A calculation is not a test.`;
  return `${[errors && counted(errors, "error"), warnings && counted(warnings, "warning")].filter(Boolean).join(" and ")} ${where}. A calculation is not a test.`;
}

function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? "" : "s"}`;
}

function countOf(findings: Finding[], severity: Severity): number {
  return findings.filter((finding) => finding.severity === severity).length;
}
