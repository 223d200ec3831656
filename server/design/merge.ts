/**
 * One chair out of several files: what `like` and `use` bring in, and what this file says instead.
 */
import type { Problem, Span } from "../../grammar/problem.ts";
import type { Fact, Statement, Tree } from "../../grammar/tree.ts";
import type { Design, LengthUnit } from "./design.ts";
import { millimetresIn } from "./units.ts";

/** Gives the text of other files. `resolve` makes an address of a path written in the file at `from`. */
export interface OtherTexts {
  resolve(from: string, path: string): string;
  read(address: string): string | undefined;
}

/** The file a line stands in. */
export interface Source {
  /** Its address, when it is not the file at hand. */
  file?: string;
  text: string;
  unit: LengthUnit;
  /** Millimetres a bare length stands for. */
  bare: number;
  /** Where the file at hand names the file that led here. */
  via?: Span;
}

export interface Line {
  statement: Statement;
  source: Source;
}

/** A statement with what stands in its block, after merging. */
export interface Item extends Line {
  /** What it answers among its neighbours: two with one key answer the same question. */
  key: string;
  /** The header of the same name in the file that this one starts from. */
  earlier?: Line;
  items: Item[];
  /** Posts that a `trim` of the other file no longer speaks for. */
  dropped?: ReadonlySet<string>;
}

export interface Gathered {
  items: Item[];
  unit: LengthUnit;
  links: Design["links"];
  problems: Problem[];
}

export interface Gathering {
  tree: Tree;
  address: string;
  files: OtherTexts;
  read(text: string): Tree;
}

/** Longest row of files that each start from the next. */
const longestChain = 16;

/** All statements that make the chair, with the places they come from. Never throws; a file not found is a problem. */
export function gather(given: Gathering): Gathered {
  return gatherFile(given, [given.address], undefined);
}

function gatherFile(given: Gathering, chain: string[], via: Span | undefined): Gathered {
  const { tree, address } = given;
  const links: Design["links"] = [];
  const problems: Problem[] = [];
  let base: Item[] = [];
  let unit: LengthUnit = "mm";
  for (const statement of tree.statements) {
    const kind = statement.word?.text;
    if ((kind !== "use" && kind !== "like") || statement.row === undefined) continue;
    const path = factOf(statement, "path");
    if (path?.text === undefined || path.text === "") continue;
    const at: Span = { start: path.start, end: path.end };
    const found = follow(given, path.text, at, chain, via);
    links.push({ kind, path: path.text, at, found: found.gathered !== undefined });
    if (found.problem !== undefined) problems.push(found.problem);
    if (found.gathered === undefined) continue;
    problems.push(...found.gathered.problems);
    if (kind === "like") {
      base = merge(base, found.gathered.items.filter(inherited));
      unit = found.gathered.unit;
    } else {
      base = merge(base, found.gathered.items.filter(lent));
    }
  }
  unit = unitOf(tree) ?? unit;
  const source: Source = { text: tree.text, unit, bare: millimetresIn(unit) };
  if (via !== undefined) {
    source.file = address;
    source.via = via;
  }
  const own = itemsOf(tree.statements, source, 0);
  const kept = withouts(own, base, problems, via === undefined);
  return { items: merge(kept, own), unit, links, problems };
}

interface Followed {
  gathered?: Gathered;
  problem?: Problem;
}

function follow(given: Gathering, path: string, at: Span, chain: string[], via: Span | undefined): Followed {
  const here = via ?? at;
  const address = given.files.resolve(given.address, path);
  if (chain.includes(address) || chain.length > longestChain) {
    const names = [...chain.slice(chain.indexOf(address)), address].map(shortName).join(" → ");
    return {
      problem: error(
        "circular-file",
        here,
        `These files start from each other: ${names}; one of them must not.`,
      ),
    };
  }
  const text = given.files.read(address);
  if (text === undefined) {
    return {
      problem: error(
        "missing-file",
        here,
        `There is no file ${path} to be read; its path starts at this file's folder.`,
      ),
    };
  }
  const tree = given.read(text);
  const gathered = gatherFile({ ...given, tree, address }, [...chain, address], here);
  const wrong = tree.problems.filter((problem) => problem.severity === "error").length;
  if (wrong === 0 || via !== undefined) return { gathered };
  return {
    gathered,
    problem: faulty(
      here,
      path,
      wrong,
      tree.problems.find((problem) => problem.severity === "error")?.message,
    ),
  };
}

/** The one problem that stands for all of another file's. */
export function faulty(at: Span, path: string, count: number, first: string | undefined): Problem {
  const many = count === 1 ? "has an error" : `has ${count} errors`;
  return error("faulty-file", at, `${path} ${many}; the first: ${first ?? "see there."}`);
}

function error(code: string, at: Span, message: string): Problem {
  return { code, severity: "error", message, start: at.start, end: at.end };
}

export const shortName = (address: string): string => address.slice(address.lastIndexOf("/") + 1);

/** Notes and accepts belong to the file they stand in. */
const inherited = (item: Item): boolean => !["note", "accept"].includes(item.statement.word?.text ?? "");

/** What a library file lends. */
const lent = (item: Item): boolean => ["joint", "let", "limit"].includes(item.statement.word?.text ?? "");

function unitOf(tree: Tree): LengthUnit | undefined {
  for (const statement of tree.statements) {
    if (statement.word?.text !== "units") continue;
    const unit = factOf(statement, "unit")?.name;
    if (unit === "mm" || unit === "cm" || unit === "in") return unit;
  }
  return undefined;
}

function itemsOf(statements: Statement[], source: Source, depth: number): Item[] {
  if (depth > 8) return [];
  return statements
    .filter((statement) => statement.row !== undefined)
    .map((statement) => ({
      statement,
      source,
      key: keyOf(statement),
      items: itemsOf(statement.block?.statements ?? [], source, depth + 1),
    }));
}

const named = new Set(["joint", "post", "rail", "slat", "block", "angle", "board", "let"]);

function keyOf(statement: Statement): string {
  const word = statement.word?.text ?? "";
  const facet = statement.row?.facet ?? word;
  if (statement.within !== "file")
    return word === "end" ? `end ${factOf(statement, "which")?.name ?? statement.start}` : facet;
  if (named.has(word)) return `name ${factOf(statement, "name")?.name ?? statement.start}`;
  if (word === "require") return `require ${subjectText(statement) ?? statement.start}`;
  if (word === "limit") return `limit ${factOf(statement, "rule")?.name ?? statement.start}`;
  if (statement.row?.many) return `${word} ${statement.start}`;
  return facet;
}

/** The dotted name on the left of a `require`, when it is a name alone. */
export function subjectText(statement: Statement): string | undefined {
  const value = factOf(statement, "subject")?.value;
  return value?.is === "name" ? value.name : undefined;
}

function factOf(statement: Statement, label: string): Fact | undefined {
  return statement.match?.facts.find((fact) => fact.label === label);
}

/** What `own` says replaces what `base` says of the same; blocks are merged property by property. */
function merge(base: Item[], own: Item[]): Item[] {
  if (base.length === 0) return own;
  const replaced = new Map<string, Item>();
  const trimmed = new Set(own.filter((item) => item.statement.word?.text === "trim").flatMap(postsOf));
  for (const item of own) if (!replaced.has(item.key)) replaced.set(item.key, item);
  const merged: Item[] = [];
  const used = new Set<Item>();
  for (const item of base) {
    const mine = replaced.get(item.key);
    if (mine === undefined) {
      merged.push(
        item.statement.word?.text === "trim" && trimmed.size > 0 ? { ...item, dropped: trimmed } : item,
      );
    } else if (
      mine.statement.row?.opens !== undefined &&
      mine.statement.word?.text === item.statement.word?.text
    ) {
      if (!used.has(mine)) merged.push({ ...mine, earlier: item, items: merge(item.items, mine.items) });
      used.add(mine);
    }
  }
  return [...merged, ...own.filter((item) => !used.has(item))];
}

function postsOf(item: Item): string[] {
  return (item.statement.match?.facts ?? []).flatMap((fact) =>
    fact.label === "post" && fact.name ? [fact.name] : [],
  );
}

/** What is left of `base` after the file's `without` lines. */
function withouts(own: Item[], base: Item[], problems: Problem[], atHand: boolean): Item[] {
  let kept = base;
  for (const item of own) {
    if (item.statement.word?.text !== "without") continue;
    for (const fact of item.statement.match?.facts ?? []) {
      if (fact.label !== "name" || fact.name === undefined) continue;
      const { name } = fact;
      const left = kept.filter((other) => !isCalled(other, name));
      if (left.length === kept.length && atHand) {
        problems.push(
          error(
            "unknown-name",
            fact,
            `There is no ${name} to take away: the file that this one starts from has none.`,
          ),
        );
      }
      kept = left;
    }
  }
  return kept;
}

function isCalled(item: Item, name: string): boolean {
  const word = item.statement.word?.text;
  return (
    item.key === `name ${name}` ||
    item.key === `require ${name}` ||
    item.key === `limit ${name}` ||
    (word === name && (name === "seat" || name === "trim"))
  );
}
