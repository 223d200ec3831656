import { parse } from "../../../grammar/parser.ts";
import { vocabulary } from "../../../grammar/vocabulary/index.ts";
import type { Design, Quantity } from "../../../server/design/design.ts";
import { evaluate } from "../../../server/design/evaluate.ts";

export interface Folder {
  [name: string]: string;
}

const normal = (path: string): string => {
  const kept: string[] = [];
  for (const part of path.split("/")) {
    if (part === "..") kept.pop();
    else if (part !== ".") kept.push(part);
  }
  return kept.join("/");
};

/** The design of a text that stands as `here.chair` in a folder with these other files. */
export function read(text: string, folder: Folder = {}, known?: Record<string, Quantity>): Design {
  return evaluate({
    tree: parse(text, vocabulary),
    address: "here.chair",
    files: {
      resolve: (from, path) =>
        normal(from.includes("/") ? `${from.slice(0, from.lastIndexOf("/"))}/${path}` : path),
      read: (address) => (address === "here.chair" ? text : folder[address]),
    },
    known: new Map(Object.entries(known ?? {})),
  });
}

/** The design's problems as `code: text at fault`, in the order of the text. */
export function faults(text: string, folder: Folder = {}): string[] {
  return read(text, folder).problems.map(({ code, start, end }) => `${code}: ${text.slice(start, end)}`);
}

/** The texts that the fixes of the first problem of a code make. */
export function mended(text: string, code: string, folder: Folder = {}): string[] {
  const problem = read(text, folder).problems.find((each) => each.code === code);
  return (problem?.fixes ?? []).map(({ edits }) =>
    [...edits]
      .sort((a, b) => b.start - a.start)
      .reduce((now, { start, end, text: put }) => now.slice(0, start) + put + now.slice(end), text),
  );
}

export const deg = (degrees: number): number => degrees * (Math.PI / 180);

/** What stands at a fact's place. */
export const textAt = (text: string, { at }: { at: { start: number; end: number } }): string =>
  text.slice(at.start, at.end);

/** Values without their places, so that a whole part can be compared. */
export function values(part: unknown): unknown {
  if (part instanceof Map) return Object.fromEntries([...part].map(([key, value]) => [key, values(value)]));
  if (Array.isArray(part)) return part.map(values);
  if (typeof part !== "object" || part === null) return part;
  if ("value" in part && "at" in part) return values(part.value);
  const hidden = ["at", "statement", "subjectAt", "ruleAt", "expression", "titleAt"];
  return Object.fromEntries(
    Object.entries(part).flatMap(([key, value]) =>
      hidden.includes(key) && typeof value === "object" ? [] : [[key, values(value)]],
    ),
  );
}
