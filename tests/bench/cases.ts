/**
 * The cases, each run in a process of its own that prints one line of JSON.
 */
import { readFileSync } from "node:fs";
import { parse } from "../../grammar/parser.ts";
import { finish } from "../../grammar/steps.ts";
import { vocabulary } from "../../grammar/vocabulary/index.ts";
import { drawSheet } from "../../server/drawing/draw-sheet.ts";
import { balanceOf } from "../../server/floor/tips.ts";
import { makeMarkout } from "../../server/main/markout/make.ts";
import { judge } from "../../server/rules/judge.ts";
import { settle } from "../../server/settle.ts";
import { fitAdults } from "../../server/sitter/fit.ts";
import { sizesOf } from "../../server/sitter/sizes.ts";
import { strengthSteps } from "../../server/strength/strength.ts";
import { damaged, type Kind } from "./damage.ts";
import { solvedGrid } from "./grid.ts";
import { type BoardsResult, boardsCase, type ExportsResult, exportsCase, type Making } from "./making.ts";
import { type Timing, timed } from "./measure.ts";
import { type SubjectName, subjects } from "./subjects.ts";
import { type RangesResult, rangesCase, type Trying, type TurnedResult, turnedCase } from "./trying.ts";

export type Case =
  | Making
  | Trying
  | { is: "text"; subject: SubjectName; bytes: number; kind: Kind; count: number }
  | { is: "sample"; path: string; count: number }
  | { is: "sheets"; path: string; count: number }
  | { is: "memory"; subject: SubjectName; bytes: number; edits: number };

export interface TextResult extends Timing {
  bytes: number;
  found: number;
  checks: string;
}

export interface SampleResult {
  parse: Timing;
  settle: Timing;
  judge: Timing;
  /** Its weight, how it tips, whom it fits. */
  floor: Timing;
  /** All load cases at three stiffnesses of the joints. */
  strength: Timing;
  /** A frame of 2000 unknowns, assembled and solved once. */
  solver: Timing;
  draw: Timing;
  all: Timing;
  found: number;
}

export interface SheetsResult extends Timing {
  pages: number;
}

export interface MemoryResult {
  before: number;
  after: number;
}

/** Throws when a case is void: a clean text with diagnostics, or a wrong one without. */
export async function runCase(
  given: Case,
): Promise<
  | TextResult
  | SampleResult
  | SheetsResult
  | MemoryResult
  | BoardsResult
  | ExportsResult
  | TurnedResult
  | RangesResult
> {
  switch (given.is) {
    case "turned":
      return turnedCase(given);
    case "ranges":
      return rangesCase(given);
    case "boards":
      return boardsCase(given);
    case "exports":
      return exportsCase(given);
    case "text":
      return textCase(given);
    case "sample":
      return sampleCase(given);
    case "sheets":
      return sheetsCase(given);
    case "memory":
      return memoryCase(given);
  }
}

async function textCase({ subject, bytes, kind, count }: Case & { is: "text" }): Promise<TextResult> {
  const { text: make, slip, diagnose, checks } = subjects[subject]();
  const text = damaged(make(bytes), kind, slip);
  let found = 0;
  const timing = await timed(count, async (turn) => {
    found = await diagnose(text, `text-${turn}`);
  });
  if ((kind === "clean") !== (found === 0)) {
    throw new Error(`void: ${subject}, ${bytes} bytes, ${kind}: ${found} diagnostics`);
  }
  return { ...timing, bytes: text.length, found, checks };
}

/** From a file's text to all its marking-out sheets as one PDF. */
async function sheetsCase({ path, count }: Case & { is: "sheets" }): Promise<SheetsResult> {
  const text = readFileSync(path, "utf8");
  const files = { resolve: (_from: string, name: string) => name, read: () => undefined };
  let pages = 0;
  const timing = await timed(count, async () => {
    const { chair } = settle({ tree: parse(text, vocabulary), address: path, files });
    const made = await makeMarkout(chair, { paper: "a4", format: "pdf", date: new Date(0) });
    pages = made.pages;
  });
  return { ...timing, pages };
}

async function sampleCase({ path, count }: Case & { is: "sample" }): Promise<SampleResult> {
  const text = readFileSync(path, "utf8");
  const files = { resolve: (_from: string, other: string) => other, read: () => undefined };
  const read = () => parse(text, vocabulary);
  const build = (tree: ReturnType<typeof read>) => settle({ tree, address: path, files });
  const weigh = (tree: ReturnType<typeof read>, built: ReturnType<typeof build>) =>
    judge({ tree, design: built.design, chair: built.chair }, [
      ...tree.problems,
      ...built.design.problems,
      ...built.problems,
    ]);
  const tree = read();
  const built = build(tree);
  const found = weigh(tree, built).problems.length;
  if (found > 0) throw new Error(`void: the sample has ${found} diagnostics`);
  // Whole first, so that its first call is the cold one.
  const all = await timed(count, () => {
    const t = read();
    const b = build(t);
    weigh(t, b);
    drawSheet(b.chair);
  });
  return {
    all,
    parse: await timed(count, read),
    settle: await timed(count, () => build(tree)),
    judge: await timed(count, () => weigh(tree, built)),
    floor: await timed(count, () => {
      balanceOf(built.chair);
      fitAdults(sizesOf(built.chair));
    }),
    strength: await timed(count, () => finish(strengthSteps(built.chair))),
    solver: await timed(count, () => solvedGrid()),
    draw: await timed(count, () => drawSheet(built.chair)),
    found,
  };
}

async function memoryCase({ subject, bytes, edits }: Case & { is: "memory" }): Promise<MemoryResult> {
  const { text: make, diagnose } = subjects[subject]();
  const text = make(bytes);
  await diagnose(text, "text");
  const before = process.memoryUsage.rss();
  for (let edit = 0; edit < edits; edit++) {
    const at = (edit * 97) % text.length;
    await diagnose(`${text.slice(0, at)} ${text.slice(at)}`, "text");
  }
  return { before, after: process.memoryUsage.rss() };
}
