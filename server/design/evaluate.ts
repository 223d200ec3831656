/**
 * Text to Design: names, units, expressions, files that are started from, and every fact with its place.
 */

import { parseSteps } from "../../grammar/parser.ts";
import type { Problem, Span } from "../../grammar/problem.ts";
import { finish, type Steps } from "../../grammar/steps.ts";
import type { Tree } from "../../grammar/tree.ts";
import { vocabulary } from "../../grammar/vocabulary/index.ts";
import { newAngle, readAngle } from "./angle.ts";
import { newBlock, readBlock } from "./block.ts";
import { newBoard, newYard, readBoard, readMake, readMatch, readWaste, readYard } from "./board.ts";
import { newBow, readBow } from "./bow.ts";
import { checkPartCircles } from "./circles.ts";
import { readAccept, readLimit, readNote, readRequire } from "./claims.ts";
import type { Design, Named, Quantity, Readers } from "./design.ts";
import { faulty } from "./faulty.ts";
import { type Gathered, gatherSteps } from "./gather.ts";
import { newJoint, readJoint } from "./joint.ts";
import { checkLacking } from "./lacking.ts";
import { type Lets, makeLets, newLet } from "./lets.ts";
import { checkLoads, newLoad, readClimate, readLoad, readStrength } from "./load.ts";
import type { Item, OtherTexts, Source } from "./merge.ts";
import { checkMostParts } from "./most-parts.ts";
import { declare, namedOf } from "./names.ts";
import { timber } from "./places.ts";
import { newPost, readPost, set } from "./post.ts";
import { newRail, readRail } from "./rail.ts";
import { factOf, given, type Reading } from "./reading.ts";
import { readSeat } from "./seat.ts";
import { newSlat, readSlat } from "./slat.ts";
import { newStick, readStick } from "./stick.ts";
import { tooLongProblems } from "./too-long.ts";
import { readSitter, readStability, readTrim } from "./whole.ts";

interface Evaluating {
  tree: Tree;
  /** Of the file at hand, for the paths of `use` and `like`. */
  address: string;
  files: OtherTexts;
  /** Worked-out values by dotted name, as far as they are known by now. */
  known?: ReadonlyMap<string, Quantity>;
  /** What the files say, when they have been read already. */
  gathered?: Gathered;
}

/**
 * What the text says. Always a design, whatever the tree; facts that cannot be read are absent and reported in `problems`, which
 * stand in the file at hand. Values that the text asks for and that `known` lacks are in `wanted`.
 */
export const evaluate = (from: Evaluating): Design => finish(evaluateSteps(from));

/** Lines gone through between two rests where each takes next to no time. */
const BATCH = 100;

/** The same, resting after each statement. */
export function* evaluateSteps(from: Evaluating): Steps<Design> {
  const gathered = from.gathered ?? (yield* gatheredSteps(from));
  const design = emptyDesign(from.tree, gathered);
  const reading = newReading(from, design);
  const lets = makeLets(reading);
  reading.named = lets.named;
  reading.lengthTaken = lets.lengthTaken;
  const fillers = yield* declareAll(reading, gathered.items, design, lets);
  readWhole(reading, gathered.items, design);
  yield* lets.workOut();
  for (const fill of fillers) {
    fill();
    yield;
  }
  for (const [at, item] of gathered.items.entries()) {
    readClaim(reading, item, design);
    if (at % BATCH === BATCH - 1) yield;
  }
  lets.finish();
  yield;
  checkMostParts(reading, gathered.items, design);
  checkPartCircles(reading, gathered.items, design);
  checkLacking(reading, gathered.items, design);
  checkLoads(reading, gathered.items, design);
  tellForeign(from, reading, design);
  if (reading.tooLong.length > 0)
    design.problems.push(...tooLongProblems(reading.tooLong, from.tree, design.units));
  design.problems = leaveOutSaid(design.problems, from.tree.problems).sort((a, b) => a.start - b.start);
  design.readers = { wantedBy: reading.wantedBy, lets: reading.letsUsed };
  return design;
}

/** Without what stands on text that reading has already found wrong: one mistake, one message. */
function leaveOutSaid(problems: Problem[], said: readonly Problem[]): Problem[] {
  const errors = said.filter((problem) => problem.severity === "error" && problem.end > problem.start);
  if (errors.length === 0 || problems.length === 0) return problems;
  const byStart = errors.sort((a, b) => a.start - b.start);
  return problems.filter((problem) => !isCovered(problem, byStart));
}

function isCovered(problem: Span, errors: readonly Span[]): boolean {
  let low = 0;
  let high = errors.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((errors[middle]?.start ?? 0) <= problem.start) low = middle + 1;
    else high = middle;
  }
  const before = errors[low - 1];
  return before !== undefined && before.end >= problem.end && before.end > problem.start;
}

const nobody: Readers = { wantedBy: new Map(), lets: new Map() };

/** Who reads what in a design; nobody in one that was made by hand. */
export function readersOf(design: Design): Readers {
  return design.readers ?? nobody;
}

/** What the text and the files it names say; `evaluateSteps` takes it over. */
export const gatheredSteps = ({
  tree,
  address,
  files,
}: Omit<Evaluating, "known" | "gathered">): Steps<Gathered> =>
  gatherSteps({ tree, address, files, read: readOnce });

/** Other files' trees by their text, the latest: they are read anew only when they change. */
const trees = new Map<string, Tree>();
/** How long the texts of those that are kept may be together, characters. */
const MOST_KEPT = 1_000_000;
let kept = 0;

function* readOnce(text: string): Steps<Tree> {
  const before = trees.get(text);
  if (before !== undefined) return before;
  const tree = yield* parseSteps(text, vocabulary);
  if (text.length > MOST_KEPT || trees.has(text)) return tree;
  trees.set(text, tree);
  kept += text.length;
  for (const oldest of trees.keys()) {
    if (kept <= MOST_KEPT) break;
    trees.delete(oldest);
    kept -= oldest.length;
  }
  return tree;
}

function emptyDesign(tree: Tree, gathered: Gathered): Design {
  const chair = tree.statements.find((statement) => statement.word?.text === "chair");
  const lineEnd = tree.text.search(/\r?\n/);
  const firstLine: Span = { start: 0, end: lineEnd < 0 ? tree.text.length : lineEnd };
  const titleAt = chair?.word ? { start: chair.word.start, end: chair.word.end } : firstLine;
  return {
    titleAt,
    units: gathered.unit,
    sitter: { value: { is: "adult" }, at: titleAt, assumed: true },
    lets: new Map(),
    posts: new Map(),
    rails: new Map(),
    slats: new Map(),
    sticks: new Map(),
    bows: new Map(),
    blocks: new Map(),
    joints: new Map(),
    angles: new Map(),
    trims: [],
    limits: [],
    requires: [],
    accepts: [],
    notes: [],
    boards: new Map(),
    yards: new Map(),
    matches: [],
    loads: new Map(),
    names: new Map(),
    links: gathered.links,
    problems: [...gathered.problems],
    wanted: new Map(),
  };
}

function newReading(from: Evaluating, design: Design): Reading {
  return {
    unit: design.units,
    problems: design.problems,
    tooLong: [],
    foreign: [],
    names: design.names,
    known: from.known ?? new Map(),
    wanted: design.wanted,
    wantedBy: new Map(),
    letsUsed: new Map(),
    reader: "",
    lacksFile: design.links.some(({ found }) => !found),
    comparisons: 20_000,
    named: () => undefined,
    lengthTaken: () => {},
  };
}

/** Puts every name in its place first, so that a line may speak of what stands below it; gives back how to fill each in. */
function* declareAll(reading: Reading, items: Item[], design: Design, lets: Lets): Steps<(() => void)[]> {
  const fillers: (() => void)[] = [];
  for (const [at, item] of items.entries()) {
    if (at % BATCH === BATCH - 1) yield;
    const named = namedOf(item);
    if (named === undefined) continue;
    const fill = declareOne(reading, item, named, design, lets);
    if (fill === undefined) continue;
    fillers.push(() => {
      reading.reader = named.name;
      fill();
      reading.reader = "";
    });
  }
  return fillers;
}

function declareOne(
  reading: Reading,
  item: Item,
  named: Named,
  design: Design,
  lets: Lets,
): (() => void) | undefined {
  switch (item.statement.word?.text) {
    case "let": {
      const made = newLet(item, named);
      if (!declare(reading, item, made) || !reading.names.has(made.name)) return undefined;
      design.lets.set(made.name, made);
      lets.add(item, made);
      return undefined;
    }
    case "post":
      return placed(reading, item, newPost(item, named), design.posts, readPost);
    case "rail":
      return placed(reading, item, newRail(item, named), design.rails, readRail);
    case "slat":
      return placed(reading, item, newSlat(named), design.slats, readSlat);
    case "stick":
      return placed(reading, item, newStick(item, named), design.sticks, readStick);
    case "bow":
      return placed(reading, item, newBow(item, named), design.bows, readBow);
    case "block":
      return placed(reading, item, newBlock(named), design.blocks, readBlock);
    case "joint":
      return placed(reading, item, newJoint(named), design.joints, readJoint);
    case "angle":
      return placed(reading, item, newAngle(named), design.angles, readAngle);
    case "board":
      return placed(reading, item, newBoard(named), design.boards, readBoard);
    case "yard":
      return placed(reading, item, newYard(named), design.yards, readYard);
    case "load":
      return placed(reading, item, newLoad(named), design.loads, readLoad);
    default:
      return undefined;
  }
}

function placed<T extends Parameters<typeof declare>[2]>(
  reading: Reading,
  item: Item,
  made: T,
  into: Map<string, T>,
  read: (reading: Reading, item: Item, made: T) => void,
): (() => void) | undefined {
  if (!declare(reading, item, made)) return undefined;
  into.set(made.name, made);
  return () => read(reading, item, made);
}

function readWhole(reading: Reading, items: Item[], design: Design): void {
  const first = (word: string) => items.find((item) => item.statement.word?.text === word);
  const chair = first("chair");
  const title = chair && factOf(chair, "title");
  if (chair !== undefined && title?.text !== undefined) design.title = given(chair, title, title.text);
  const wood = timber(reading, first("timber"));
  if (wood !== undefined) design.timber = wood;
  design.sitter = readSitter(reading, first("sitter"), design.titleAt);
  const stability = readStability(reading, first("stability"));
  if (stability !== undefined) design.stability = stability;
  set(design, "strength", readStrength(first("strength")));
  set(design, "climate", readClimate(reading, first("climate")));
}

function readClaim(reading: Reading, item: Item, design: Design): void {
  reading.reader = `line ${item.statement.start}`;
  switch (item.statement.word?.text) {
    case "seat":
      reading.reader = "seat";
      design.seat ??= readSeat(reading, item);
      break;
    case "trim":
      reading.reader = "trim";
      push(design.trims, readTrim(reading, item));
      break;
    case "require":
      push(design.requires, readRequire(reading, item));
      break;
    case "limit":
      push(design.limits, readLimit(reading, item));
      break;
    case "accept":
      push(design.accepts, readAccept(item));
      break;
    case "make":
      set(design, "make", readMake(reading, item));
      break;
    case "waste":
      design.waste = readWaste(reading, item);
      break;
    case "match":
      push(design.matches, readMatch(reading, item));
      break;
    case "note":
      push(design.notes, readNote(item));
      break;
  }
  reading.reader = "";
}

function push<T>(list: T[], made: T | undefined): void {
  if (made !== undefined) list.push(made);
}

/** One problem for each file named here that leads to any, where this file names it. */
function tellForeign({ files, address }: Evaluating, reading: Reading, design: Design): void {
  const byLink = new Map<number, { source: Source; problem: Problem }[]>();
  for (const fault of reading.foreign) {
    if (fault.source.via === undefined || fault.problem.severity !== "error") continue;
    const list = byLink.get(fault.source.via.start) ?? [];
    list.push(fault);
    byLink.set(fault.source.via.start, list);
  }
  for (const [start, found] of byLink) {
    const link = design.links.find((each) => each.at.start === start);
    const known = design.problems.some(
      (problem) => problem.code === "faulty-file" && problem.start === start,
    );
    const [first] = found;
    if (link === undefined || known || first === undefined) continue;
    const { file, text } = first.source;
    const problems = found.filter(({ source }) => source.file === file).map(({ problem }) => problem);
    const further = file === files.resolve(address, link.path) ? undefined : file;
    design.problems.push(
      faulty(link.at, { path: link.path, text, problems, ...(further !== undefined && { further }) }),
    );
  }
}
