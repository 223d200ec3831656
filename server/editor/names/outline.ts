/**
 * The names in a file, read off its words alone: what it declares, which files it starts from and what it takes away. Cheap enough for a
 * folder of a thousand chairs, none of which is built for it.
 */
import type { Shape, Vocabulary } from "../../../grammar/row.ts";
import { endOf, lex, T, type Token } from "../../../grammar/tokens.ts";

interface Outlined {
  name: string;
  /** The word of its statement: `post`, `let`. */
  word: string;
  start: number;
  end: number;
}

export interface Outline {
  title?: string;
  /** The first of a name given twice. */
  declared: ReadonlyMap<string, Outlined>;
  /** Files named, as written. */
  links: readonly { word: "use" | "like"; path: string }[];
  /** Names after `without`. */
  without: ReadonlySet<string>;
}

/** Longer files are passed over: no chair is 1 MB long. */
const LONGEST = 1024 * 1024;

const nothing: Outline = { declared: new Map(), links: [], without: new Set() };

/** The outline of a text; of one that is far too long for a chair an empty one. */
export function outlineOf(text: string, vocabulary: Vocabulary): Outline {
  if (text.length > LONGEST) return nothing;
  const naming = namingWords(vocabulary);
  const declared = new Map<string, Outlined>();
  const links: Outline["links"][number][] = [];
  const without = new Set<string>();
  let title: string | undefined;
  const { tokens } = lex(text);
  for (let at = 0; at < tokens.length; at++) {
    const [head, next] = [tokens[at]!, tokens[at + 1]];
    if (head.tokenType !== T.Word || !begins(tokens[at - 1]) || next === undefined) continue;
    const word = head.image;
    if (naming.has(word) && next.tokenType === T.Word) {
      const [name, start] = [next.image, next.startOffset];
      if (!declared.has(name)) declared.set(name, { name, word, start, end: endOf(next) });
    } else if ((word === "use" || word === "like") && next.tokenType === T.Text) {
      links.push({ word, path: textOf(next) });
    } else if (word === "chair" && next.tokenType === T.Text) title ??= textOf(next);
    else if (word === "without") {
      for (let name = at + 1; name < tokens.length && !begins(tokens[name]); name++)
        if (tokens[name]!.tokenType === T.Word) without.add(tokens[name]!.image.split(".")[0]!);
    }
  }
  return { declared, links, without, ...(title && { title }) };
}

/** Whether a statement begins after a token; the first has none before it. */
const begins = (before: Token | undefined): boolean =>
  before === undefined ||
  before.tokenType === T.Newline ||
  before.tokenType === T.Semicolon ||
  before.tokenType === T.Open ||
  before.tokenType === T.Close;

const textOf = ({ image }: Token): string => image.slice(1, -1).replace(/\\(["\\])/g, "$1");

const known = new Map<Vocabulary, ReadonlySet<string>>();

/** Words of statements that give a thing its name. */
function namingWords(vocabulary: Vocabulary): ReadonlySet<string> {
  const before = known.get(vocabulary);
  if (before) return before;
  const words = new Set(vocabulary.rows.filter(({ shape }) => namesFirst(shape)).map(({ word }) => word));
  known.set(vocabulary, words);
  return words;
}

/** Whether a shape begins with a new name. */
function namesFirst(shape: Shape): boolean {
  if (shape.is === "slot") return shape.slot === "name";
  switch (shape.is) {
    case "maybe":
    case "list":
      return namesFirst(shape.of);
    case "seq":
      return shape.of.slice(0, 1).some(namesFirst);
    case "either":
    case "clauses":
      return shape.of.some(namesFirst);
    default:
      return false;
  }
}
