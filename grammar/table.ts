import type { Kind } from "./kind.ts";
import { nearest } from "./nearest.ts";
import type { Row, Shape, Vocabulary } from "./row.ts";

/** The vocabulary, indexed for reading. */
export interface Table {
  /** The rows of a kind of block that begin with a word; none when the word is unknown there. */
  rows(kind: Kind, word: string): readonly Row[];
  /** The words that statements of a kind of block begin with. */
  wordsOf(kind: Kind): readonly string[];
  /** The kinds of block in which a word begins a statement. */
  kindsOf(word: string): readonly Kind[];
  /** The rows of a kind of block that open another. */
  openers(kind: Kind): readonly Row[];
  isFunction(word: string): boolean;
  nearFunction(word: string): string | undefined;
}

const tables = new WeakMap<Vocabulary, Table>();
const none: readonly Row[] = [];

/** The index of a vocabulary, made once for each. */
export function tableOf(vocabulary: Vocabulary): Table {
  const known = tables.get(vocabulary);
  if (known !== undefined) return known;
  const table = index(vocabulary);
  tables.set(vocabulary, table);
  return table;
}

function index(vocabulary: Vocabulary): Table {
  const byKind = new Map<Kind, Map<string, Row[]>>();
  const kinds = new Map<string, Kind[]>();
  for (const row of vocabulary.rows) {
    let words = byKind.get(row.owner);
    if (words === undefined) {
      words = new Map();
      byKind.set(row.owner, words);
    }
    const rows = words.get(row.word);
    if (rows === undefined) {
      words.set(row.word, [row]);
      kinds.set(row.word, [...(kinds.get(row.word) ?? []), row.owner]);
    } else rows.push(row);
  }
  const functions = new Set(
    vocabulary.words.filter(({ sort }) => sort === "function").map(({ word }) => word),
  );
  const openers = new Map<Kind, Row[]>();
  for (const [kind, words] of byKind) {
    openers.set(
      kind,
      [...words.values()].flat().filter((row) => row.opens !== undefined),
    );
  }
  const wordLists = new Map([...byKind].map(([kind, words]) => [kind, [...words.keys()]]));
  return {
    rows: (kind, word) => byKind.get(kind)?.get(word) ?? none,
    wordsOf: (kind) => wordLists.get(kind) ?? [],
    kindsOf: (word) => kinds.get(word) ?? [],
    openers: (kind) => openers.get(kind) ?? none,
    isFunction: (word) => functions.has(word),
    nearFunction: (word) => nearest(word, functions),
  };
}

const marks = new WeakMap<Shape, ReadonlySet<string>>();

/** The marker words of a shape, and the words its choices take: none of them is ever an operand. */
export function markersOf(shape: Shape): ReadonlySet<string> {
  return remembered(marks, shape, () => gather(shape, true));
}

/** The words that must stand as they are: none of them is a name. A choice's words may be names elsewhere in the line. */
export function fixedWordsOf(shape: Shape): ReadonlySet<string> {
  return remembered(fixed, shape, () => gather(shape, false));
}

const fixed = new WeakMap<Shape, ReadonlySet<string>>();

function remembered(
  kept: WeakMap<Shape, ReadonlySet<string>>,
  shape: Shape,
  words: () => string[],
): ReadonlySet<string> {
  let found = kept.get(shape);
  if (found === undefined) {
    found = new Set(words());
    kept.set(shape, found);
  }
  return found;
}

function gather(shape: Shape, choices: boolean): string[] {
  if (shape.is === "word") return [shape.word];
  if (shape.is === "slot") return choices && shape.slot === "word" ? [...(shape.words ?? [])] : [];
  const inner = "length" in shape.of ? shape.of : [shape.of as Shape];
  return inner.flatMap((one) => gather(one, choices));
}
