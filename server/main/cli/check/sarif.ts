/**
 * Findings as SARIF 2.1.0 (OASIS standard), for tools that show the results of checkers.
 */
import { createHash } from "node:crypto";
import type { Log, ReportingDescriptor, Result, Run } from "sarif";
import type { TextDocument } from "vscode-languageserver-textdocument";
import type { Problem, Severity, Span } from "../../../../grammar/problem.ts";
import { everyStatement } from "../../../../grammar/walk.ts";
import { messageOf } from "../../../mends/words.ts";
import type { Rule } from "../../../rules/machinery/rule.ts";
import { version } from "../../version.ts";
import { type Checked, type CheckedFile, isRead } from "./checked.ts";
import type { Place } from "./places.ts";

/** The name under which the base of relative addresses goes. */
const BASE = "SRCROOT";
/** Another way to make fingerprints gets another name, so that old and new ones are never compared. */
const FINGERPRINT = "chairFact/v1";

const levels: Readonly<Record<Severity, "error" | "warning" | "note">> = {
  error: "error",
  warning: "warning",
  information: "note",
  hint: "note",
};

/** One run over all the files, with the rules that found something. */
export function sarifOf(
  checked: readonly Checked[],
  rules: readonly Rule[],
  placeOf: (file: string) => Place,
): Log {
  const read = checked.filter(isRead);
  const codes = new Set(
    read
      .flatMap(({ problems, accepted }) => [...problems, ...accepted.map(({ problem }) => problem)])
      .map(({ code }) => code),
  );
  const used = rules.filter(({ code }) => codes.has(code));
  const index = new Map(used.map(({ code }, at) => [code, at]));
  const notRead = checked.flatMap((each) => ("refused" in each ? [each] : []));
  const run: Run = {
    tool: { driver: { name: "Seatwright", version, rules: used.map(descriptorOf) } },
    columnKind: "utf16CodeUnits",
    originalUriBaseIds: {
      [BASE]: { description: { text: "The top of the repository, or the folder the check ran in." } },
    },
    invocations: [
      {
        executionSuccessful: notRead.length === 0,
        ...(notRead.length > 0 && {
          toolExecutionNotifications: notRead.map(({ file, refused }) => ({
            level: "error" as const,
            message: { text: `${file}: ${refused}.` },
          })),
        }),
      },
    ],
    results: read.flatMap((file) => resultsOf(file, placeOf(file.file), index)),
  };
  return { $schema: "https://json.schemastore.org/sarif-2.1.0.json", version: "2.1.0", runs: [run] };
}

function descriptorOf({ code, title, explanation, severity, source }: Rule): ReportingDescriptor {
  return {
    id: code,
    shortDescription: { text: title },
    fullDescription: { text: explanation },
    help: { text: `${explanation}\n\nSource: ${source}` },
    defaultConfiguration: { level: levels[severity] },
  };
}

function resultsOf(file: CheckedFile, place: Place, index: ReadonlyMap<string, number>): Result[] {
  const fingerprint = fingerprintsOf(file);
  const result = (problem: Problem): Result =>
    resultOf(file.document, place, problem, { index, fingerprint });
  return [
    ...file.problems.map(result),
    ...file.accepted.map(({ problem, because }) => ({
      ...result(problem),
      suppressions: [{ kind: "inSource" as const, status: "accepted" as const, justification: because }],
    })),
  ];
}

interface Known {
  index: ReadonlyMap<string, number>;
  fingerprint(problem: Problem): string;
}

function resultOf(
  document: TextDocument,
  place: Place,
  problem: Problem,
  { index, fingerprint }: Known,
): Result {
  const artifactLocation = place.inside ? { uri: place.uri, uriBaseId: BASE } : { uri: place.uri };
  const ruleIndex = index.get(problem.code);
  const mends = problem.mends ?? [];
  return {
    ruleId: problem.code,
    ...(ruleIndex !== undefined && { ruleIndex }),
    level: levels[problem.severity],
    message: { text: messageOf(problem) },
    locations: [
      {
        physicalLocation: { artifactLocation, region: regionOf(document, problem) },
        ...(problem.subject !== undefined && { logicalLocations: [{ fullyQualifiedName: problem.subject }] }),
      },
    ],
    partialFingerprints: { [FINGERPRINT]: fingerprint(problem) },
    ...(mends.length > 0 && {
      fixes: mends.map(({ title, edits }) => ({
        description: { text: title },
        artifactChanges: [
          {
            artifactLocation,
            replacements: edits.map((edit) => ({
              deletedRegion: regionOf(document, edit),
              insertedContent: { text: edit.text },
            })),
          },
        ],
      })),
    }),
  };
}

/** Lines and columns from 1; the end column is the one after the last character. */
function regionOf(document: TextDocument, span: Span) {
  const start = document.positionAt(span.start);
  const end = document.positionAt(span.end);
  return {
    startLine: start.line + 1,
    startColumn: start.character + 1,
    endLine: end.line + 1,
    endColumn: end.character + 1,
  };
}

/**
 * What stays the same of a finding while lines move and figures change: its rule, the part it is about, and the words that lead to its
 * line. Equal ones are counted in the order of the text.
 */
function fingerprintsOf({ study, problems, accepted }: CheckedFile): (problem: Problem) => string {
  const ways = [...everyStatement(study.tree.statements)].map((statement) => {
    const words: string[] = [];
    for (let each: typeof statement | undefined = statement; each !== undefined; each = each.owner) {
      const name = each.match?.facts.find(({ slot }) => slot === "name")?.name;
      words.unshift([each.word?.text, name].filter(Boolean).join(" "));
    }
    return { start: statement.start, way: words.join("/") };
  });
  const made = new Map<Problem, string>();
  const counts = new Map<string, number>();
  for (const problem of [...problems, ...accepted.map((each) => each.problem)]) {
    const { code, subject = "", start } = problem;
    const way = ways.filter((each) => each.start <= start).at(-1)?.way ?? "";
    const key = [code, subject, way].join("\n");
    const count = counts.get(key) ?? 0;
    counts.set(key, count + 1);
    made.set(problem, createHash("sha256").update(`${key}\n${count}`).digest("hex").slice(0, 32));
  }
  return (problem) => made.get(problem) ?? "";
}
