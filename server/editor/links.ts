/**
 * The files named by `use` and `like`.
 */
import type { DocumentLink } from "vscode-languageserver-types";
import type { Span } from "../../grammar/problem.ts";
import { rangeOf, type View } from "./view.ts";

export interface FileLink extends Span {
  word: "use" | "like";
  address: string;
}

/** Each file named in this one, with its place in the text; the quotes are left out of it. */
export function fileLinks(view: View): FileLink[] {
  return view.tree.statements.flatMap((statement) => {
    const word = statement.word?.text;
    if (word !== "use" && word !== "like") return [];
    return statement.parts.flatMap((part) => {
      if (part.is !== "text" || !part.text) return [];
      return [
        {
          word,
          start: part.start + 1,
          end: Math.max(part.start + 1, part.end - 1),
          address: view.resolve(part.text),
        },
      ];
    });
  });
}

export function linkAt(view: View, offset: number): FileLink | undefined {
  return fileLinks(view).find(({ start, end }) => start <= offset && offset <= end);
}

/** Links that open the files named. */
export function documentLinks(view: View): DocumentLink[] {
  return fileLinks(view).map((link) => ({
    range: rangeOf(view.document, link),
    target: link.address,
    tooltip: "Open this file",
  }));
}
