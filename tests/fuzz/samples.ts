/**
 * The samples as files that a server could have open, and what a change of them must keep.
 */
import { readdirSync, readFileSync } from "node:fs";
import type { TextEdit } from "vscode-languageserver-types";
import { applyEdits } from "../../grammar/format.ts";
import type { View } from "../../server/editor/view.ts";
import { resolveNamed } from "../../server/main/named-files.ts";
import { type Study, study } from "../../server/study.ts";

const folder = new URL("../../samples/", import.meta.url);

/** The text of each sample by its file's name. */
export const sampleTexts: Readonly<Record<string, string>> = Object.fromEntries(
  readdirSync(folder)
    .filter((file) => file.endsWith(".chair"))
    .sort()
    .map((file) => [file, readFileSync(new URL(file, folder), "utf8")]),
);

export const addressOf = (file: string): string => `file:///samples/${file}`;
const fileOf = (address: string): string => address.slice(address.lastIndexOf("/") + 1);

/** A file studied among others, with the names of those that it reads. */
export function studyAmong(
  texts: Readonly<Record<string, string>>,
  file: string,
): { study: Study; reads: Set<string> } {
  const reads = new Set([file]);
  const read = (address: string) => {
    reads.add(fileOf(address));
    return texts[fileOf(address)];
  };
  const made = study({
    text: texts[file]!,
    address: addressOf(file),
    files: { resolve: resolveNamed, read },
  });
  return { study: made, reads };
}

/** Every value of a chair in order, without its name: names of parts are part of those. */
export const valuesOf = ({ chair }: Study): string[] =>
  [...chair.values.values()].map(({ number, dimension }) => `${dimension} ${number.toPrecision(9)}`).sort();

export const codesOf = ({ problems }: Study): string[] => problems.map(({ code }) => code).sort();

/** A text after an editor's edits. */
export function edited(view: View, edits: readonly TextEdit[]): string {
  const { document } = view;
  const own = edits.map(({ range, newText }) => ({
    start: document.offsetAt(range.start),
    end: document.offsetAt(range.end),
    text: newText,
  }));
  return applyEdits(
    document.getText(),
    own.sort((a, b) => a.start - b.start),
  );
}
