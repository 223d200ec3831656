/**
 * One chair out of several files: what `use` and `like` bring in. Each file is read once, however many name it, and no more is read
 * than `reach` allows, so that a few short files that name each other over and over cost no more than what stands in them.
 */

import type { Problem, Span } from "../../grammar/problem.ts";
import { sentence } from "../../grammar/sentences/sentence.ts";
import type { Steps } from "../../grammar/steps.ts";
import type { Tree } from "../../grammar/tree.ts";
import type { Design, LengthUnit } from "./design.ts";
import { faulty, problemAt, shortName } from "./faulty.ts";
import {
  type Item,
  inherit,
  itemsOf,
  labelled,
  lent,
  merge,
  type OtherTexts,
  type Source,
  withouts,
} from "./merge.ts";
import { type Reach, reachOf } from "./reach.ts";
import { millimetresIn } from "./units.ts";

interface Gathering {
  tree: Tree;
  address: string;
  files: OtherTexts;
  read(text: string): Steps<Tree>;
}

export interface Gathered {
  items: Item[];
  unit: LengthUnit;
  links: Design["links"];
  problems: Problem[];
}

/** Where the file at hand names a file, and as what. */
interface Naming extends Span {
  path: string;
}

/** What a file gives to those that name it. */
interface Reading {
  address: string;
  items: Item[];
  unit: LengthUnit;
  text: string;
  /** Its own errors of reading; there may be none. */
  errors: readonly Problem[];
}

/** What goes along through all the files of one chair. */
interface Gatherer extends Gathering {
  reach: Reach;
  /** Addresses on the way from the file at hand to the one being read. */
  way: string[];
  readings: Map<string, Reading>;
  links: Design["links"];
  problems: Problem[];
}

/** All statements that make the chair, with the places they come from. Never throws; a file that cannot be read is a problem. */
export function* gatherSteps(given: Gathering): Steps<Gathered> {
  const gatherer: Gatherer = {
    ...given,
    reach: reachOf(),
    way: [given.address],
    readings: new Map(),
    links: [],
    problems: [],
  };
  const { items, unit } = yield* gatherFile(gatherer, given.tree, given.address, undefined);
  return { items, unit, links: gatherer.links, problems: gatherer.problems };
}

function* gatherFile(
  gatherer: Gatherer,
  tree: Tree,
  address: string,
  via: Naming | undefined,
): Steps<{ items: Item[]; unit: LengthUnit }> {
  let base: Item[] = [];
  let unit: LengthUnit = "mm";
  for (const statement of tree.statements) {
    const kind = statement.word?.text;
    if ((kind !== "use" && kind !== "like") || statement.row === undefined) continue;
    const path = labelled(statement, "path");
    if (path?.text === undefined || path.text === "") continue;
    const at: Naming = { start: path.start, end: path.end, path: path.text };
    const found = yield* follow(gatherer, path.text, address, via ?? at);
    if (via === undefined) {
      const place = { start: at.start, end: at.end };
      gatherer.links.push({ kind, path: path.text, at: place, found: found !== undefined });
    }
    if (found === undefined) continue;
    tellErrors(gatherer, found, via, at);
    const brought = kind === "like" ? inherit(found.items) : found.items.filter(lent);
    if (!gatherer.reach.merges(base.length + brought.length)) {
      tellBeyond(gatherer, via ?? at);
      continue;
    }
    base = merge(base, brought);
    if (kind === "like") unit = found.unit;
    yield;
  }
  unit = unitOf(tree) ?? unit;
  const source: Source = { text: tree.text, unit, bare: millimetresIn(unit) };
  if (via !== undefined) {
    source.file = address;
    source.via = via;
  }
  const own = itemsOf(tree.statements, source, 0);
  const kept = withouts(own, base, (fact, name) => {
    if (via === undefined) {
      const message = sentence("unknown-name.take-away", { name });
      gatherer.problems.push(problemAt("unknown-name", fact, message));
    }
  });
  return { items: merge(kept, own), unit };
}

/** What the file at a path gives; nothing when it cannot or must not be read, which is reported at `here` in the file at hand. */
function* follow(gatherer: Gatherer, path: string, from: string, here: Naming): Steps<Reading | undefined> {
  const { files, way, readings, reach } = gatherer;
  const tell = (code: string, message: string): undefined => {
    if (!isTold(gatherer, here)) gatherer.problems.push(problemAt(code, here, message));
  };
  /** What a file further on names is not repeated here: only the file that names it. */
  const nested = way.length > 1;
  const named = nested ? sentence("file.named-by", { file: shortName(from) }) : path;
  const address = files.resolve(from, path);
  if (address === undefined || !/\.chair$/i.test(address)) {
    return tell("refused-file", sentence("refused-file", { file: named }));
  }
  if (way.includes(address)) {
    const names = [...way.slice(way.indexOf(address)), address].map(shortName).join(" → ");
    return tell("circular-file", sentence("circular-file", { files: names }));
  }
  const before = readings.get(address);
  if (before !== undefined) return before;
  if (!reach.follows(way.length)) return tellBeyond(gatherer, here);
  const text = files.read(address);
  if (text === undefined) {
    return tell(
      "missing-file",
      nested ? sentence("missing-file.named", { file: named }) : sentence("missing-file", { path }),
    );
  }
  if (!reach.reads(text)) return tellBeyond(gatherer, here);
  const tree = yield* gatherer.read(text);
  way.push(address);
  const { items, unit } = yield* gatherFile(gatherer, tree, address, here);
  way.pop();
  if (tree.statements.length === 0 && !isTold(gatherer, here)) {
    const which = nested ? sentence("file.named-by", { file: shortName(from) }) : path;
    const told = problemAt("empty-file", here, sentence("empty-file", { file: which }));
    gatherer.problems.push({ ...told, severity: "warning" });
  }
  const errors = tree.problems.filter(({ severity }) => severity === "error");
  const reading = { address, items, unit, text, errors };
  readings.set(address, reading);
  return reading;
}

/** Errors of reading in a file that is named here, or that a file named here leads to. */
function tellErrors(gatherer: Gatherer, found: Reading, via: Naming | undefined, at: Naming): void {
  const { address: further, text, errors: problems } = found;
  const here = via ?? at;
  if (problems.length === 0 || isTold(gatherer, here)) return;
  const from = { path: here.path, text, problems };
  gatherer.problems.push(faulty(here, via === undefined ? from : { ...from, further }));
}

function isTold({ problems }: Gatherer, { start }: Span): boolean {
  return problems.some((problem) => problem.start === start);
}

/** Says once for all that more is named than is read. */
function tellBeyond({ reach, problems }: Gatherer, here: Span): undefined {
  const message = reach.beyond();
  if (message !== undefined) problems.push(problemAt("too-many-files", here, message));
}

function unitOf(tree: Tree): LengthUnit | undefined {
  for (const statement of tree.statements) {
    if (statement.word?.text !== "units") continue;
    const unit = labelled(statement, "unit")?.name;
    if (unit === "mm" || unit === "cm" || unit === "in") return unit;
  }
  return undefined;
}
