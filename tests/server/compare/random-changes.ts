/**
 * Random sensible changes of a chair's text, made line by line with no help of the language's own reader, so that what is reported
 * them can be held against what was done.
 */
import { resolveAddress } from "../../../server/main/addresses.ts";

/** A text changed in one place, and what that is as a fact. */
export interface Change {
  text: string;
  part: string;
  property: string;
  old: string | null;
  new: string | null;
}

export type Random = () => number;

/** A small generator of random numbers with a seed (mulberry32). */
export function randomFrom(seed: number): Random {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

export const pick = <T>(random: Random, of: readonly T[]): T => of[Math.floor(random() * of.length)]!;

interface TextLine {
  at: number;
  /** `rail crest`, then `end back`. */
  blocks: string[];
  word: string;
  rest: string;
}

/** Lines that say something, with the blocks they stand in; comments and braces taken off. */
export function linesOf(text: string): TextLine[] {
  const blocks: string[] = [];
  const found: TextLine[] = [];
  text.split("\n").forEach((line, at) => {
    const said = line.replace(/#.*$/, "").trim();
    if (said === "") return;
    if (said === "}") blocks.pop();
    else if (said.endsWith("{")) blocks.push(said.slice(0, -1).trim());
    else {
      const [, word = "", rest = ""] = /^(\S+)\s*(.*)$/.exec(said) ?? [];
      found.push({ at, blocks: [...blocks], word, rest });
    }
  });
  return found;
}

/** What a line says as a fact: of which part, which property, and its words; nothing for a line of the whole file. */
export function placeOf({
  blocks,
  word,
  rest,
}: TextLine): { part: string; property: string; shown: string } | undefined {
  if (word === "let") {
    const [, name = "", value = ""] = /^(\S+)\s*=\s*(.*)$/.exec(rest) ?? [];
    return { part: name, property: "let", shown: value };
  }
  const [head, ...inner] = blocks;
  if (head === undefined) return undefined;
  const [kind, name] = head.split(" ");
  const part = kind === "seat" ? "seat" : name!;
  return { part, property: [...inner, word].join(" "), shown: rest };
}

/** One figure of one line a little larger or smaller. */
export function figureChanged(text: string, random: Random): Change | undefined {
  const candidates = linesOf(text).filter(
    (line) => placeOf(line) && /\d/.test(line.rest) && !/^count|^timber/.test(line.word),
  );
  const line = pick(random, candidates);
  const place = placeOf(line)!;
  const figures = [...place.shown.matchAll(/(?<![\w./-])\d+(?:\.\d+)?(?![\w./]*\/)/g)];
  if (figures.length === 0) return undefined;
  const figure = pick(random, figures);
  const before = Number(figure[0]);
  const by = Math.max(1, Math.round(before * 0.05));
  const after = before + (random() < 0.5 && before > by ? -by : by);
  const end = figure.index + figure[0].length;
  const shown = place.shown.slice(0, figure.index) + String(after) + place.shown.slice(end);
  const lines = text.split("\n");
  lines[line.at] = lines[line.at]!.replace(place.shown, () => shown);
  return { text: lines.join("\n"), part: place.part, property: place.property, old: place.shown, new: shown };
}

/** A property that a part can do without taken out. */
export function lineTaken(text: string, random: Random): Change | undefined {
  const optional = /^(taper|arch|bow|fall|splay|turn|face|stand|mitre|haunch|peg|sag|proud|timber|fit|glue)$/;
  const candidates = linesOf(text).filter((line) => line.blocks.length > 0 && optional.test(line.word));
  if (candidates.length === 0) return undefined;
  const line = pick(random, candidates);
  const { part, property, shown } = placeOf(line)!;
  const lines = text.split("\n");
  lines.splice(line.at, 1);
  return { text: lines.join("\n"), part, property, old: shown, new: null };
}

/** A remark of the maker's added at the end. */
export function noteAdded(text: string, random: Random): Change {
  const day = String(1 + Math.floor(random() * 28)).padStart(2, "0");
  const said = `Sat in for ${1 + Math.floor(random() * 90)} minutes.`;
  const note = `note 2026-11-${day} "${said}"`;
  const file = { part: "", property: `note 2026-11-${day}`, old: null, new: said };
  return { text: `${text.trimEnd()}\n${note}\n`, ...file };
}

/** The same chair written otherwise: blanks, comments, and the order of its blocks. */
export function rewritten(text: string, random: Random): string {
  const out: string[] = [];
  const step = pick(random, ["  ", "    ", "\t"]);
  for (const line of text.split("\n")) {
    if (random() < 0.05) out.push("   # a remark in passing");
    if (random() < 0.05) out.push("");
    const stretched = /["#]/.test(line)
      ? line
      : line.replace(/(?<=\S) (?=[^\s=])/g, () => (random() < 0.1 ? "   " : " "));
    out.push(stretched.replace(/^ +/, (margin) => step.repeat(margin.length / 2)));
  }
  return out.join("\n");
}

/** The blocks of the file in another order; what belongs to no block stays where it is. */
export function reordered(text: string, random: Random): string {
  const lines = text.split("\n");
  const blocks: [number, number][] = [];
  let start = -1;
  let depth = 0;
  lines.forEach((line, k) => {
    const said = line.replace(/#.*$/, "").trim();
    if (said.endsWith("{") && depth++ === 0) start = k;
    if (said === "}" && --depth === 0) blocks.push([start, k]);
  });
  if (blocks.length < 2) return text;
  const [one, other] = [pick(random, blocks), pick(random, blocks)].sort((a, b) => a[0] - b[0]);
  if (one![0] === other![0]) return text;
  const cut = ([from, to]: [number, number]) => lines.slice(from, to + 1);
  return [
    ...lines.slice(0, one![0]),
    ...cut(other!),
    ...lines.slice(one![1] + 1, other![0]),
    ...cut(one!),
    ...lines.slice(other![1] + 1),
  ].join("\n");
}

export const nowhere = { resolve: resolveAddress, read: () => undefined };
