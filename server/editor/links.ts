/**
 * The files named by `use` and `like`.
 */
import type { DocumentLink } from "vscode-languageserver-types";
import type { Span } from "../../grammar/problem.ts";
import { rangeOf, type View } from "./view.ts";

interface FileLink extends Span {
  word: "use" | "like";
  address: string;
}

/** Each chair named in this one, with its place in the text; the quotes are left out of it. What is not a file is left out. */
function fileLinks(view: View): FileLink[] {
  return view.tree.statements.flatMap((statement) => {
    const word = statement.word?.text;
    if (word !== "use" && word !== "like") return [];
    return statement.parts.flatMap((part) => {
      const address = part.is === "text" && part.text ? view.resolve(part.text) : undefined;
      if (address === undefined || !/\.chair$/i.test(address)) return [];
      return [{ word, start: part.start + 1, end: Math.max(part.start + 1, part.end - 1), address }];
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
