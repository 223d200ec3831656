import { TextDocument } from "vscode-languageserver-textdocument";
import type { Problem, Severity, Span } from "../../../grammar/problem.ts";
import { finish } from "../../../grammar/steps.ts";
import { messageOf } from "../../mends/words.ts";
import { type Bench, type Command, ENDED, otherFiles, studyOf } from "./command.ts";
import { excerpt } from "./excerpt.ts";
import { readInput } from "./read-input.ts";
import type { CheckOutput, Finding } from "./schema.ts";
import { type Brush, brush, harmless } from "./terminal.ts";

export const check: Command = {
  name: "check",
  usage: "check FILES… [--format text|json]",
  summary: "say what is wrong with each chair, and by how much",
  options: { format: { type: "string" } },
  takes: { least: 1, most: Number.POSITIVE_INFINITY },
  run(bench, files, options) {
    const output: CheckOutput = { files: [], errors: 0, warnings: 0 };
    const asJson = options.format === "json";
    const blocks: string[] = [];
    for (const file of files) {
      const { listed, block } = checkOne(bench, file);
      output.files.push(listed);
      output.errors += countOf(listed.findings, "error");
      output.warnings += countOf(listed.findings, "warning");
      if (listed.refused && !asJson) bench.terminal.error(`${harmless(file)}: ${listed.refused}.\n`);
      else if (block) blocks.push(block);
    }
    if (asJson) bench.terminal.out(`${JSON.stringify(output, null, 2)}\n`);
    else if (output.files.some(({ refused }) => !refused))
      bench.terminal.out(`${[...blocks, summary(output)].join("\n")}\n`);
    if (output.files.some(({ refused }) => refused)) return ENDED.misuse;
    return output.errors ? ENDED.faults : ENDED.well;
  },
};

function checkOne(bench: Bench, file: string): { listed: CheckOutput["files"][number]; block: string } {
  const input = readInput(file);
  if ("refused" in input)
    return { listed: { file, refused: input.refused, findings: [], accepted: [] }, block: "" };
  const document = TextDocument.create(input.address, "chair", 0, input.text);
  const study = studyOf(bench, input);
  finish(bench.services.mend(study, otherFiles, study.problems));
  const { problems, accepted } = study;
  const paint = brush(bench.terminal.colour.out);
  return {
    listed: {
      file,
      findings: problems.map((problem) => findingOf(document, problem)),
      accepted: accepted.map(({ problem, because }) => ({ ...findingOf(document, problem), because })),
    },
    block: problems.map((problem) => written(paint, file, document, problem)).join("\n"),
  };
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
  return `${[errors && counted(errors, "error"), warnings && counted(warnings, "warning")].filter(Boolean).join(" and ")} ${where}.`;
}

function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? "" : "s"}`;
}

function countOf(findings: Finding[], severity: Severity): number {
  return findings.filter((finding) => finding.severity === severity).length;
}
