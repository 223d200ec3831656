import { TextDocument } from "vscode-languageserver-textdocument";
import { parse } from "../../../grammar/parser.ts";
import { vocabulary } from "../../../grammar/vocabulary/index.ts";
import { outlineOf } from "../../../server/editor/names/outline.ts";
import type { View } from "../../../server/editor/view.ts";
import { resolveNamed } from "../../../server/main/named-files.ts";
import { mendSteps } from "../../../server/mends/mends.ts";
import { rules } from "../../../server/rules/index.ts";
import { settle } from "../../../server/settle.ts";
import { deepenSteps, type Study, study } from "../../../server/study.ts";

export const address = "file:///mess/chair.chair";

/** A view of chair text; `|` marks the cursor, which is taken out and given as `offset`. Other files by their names. */
export function viewOf(
  marked: string,
  files: Record<string, string> = {},
): { view: View; offset: number; text: string } {
  const offset = marked.indexOf("|");
  const text = offset < 0 ? marked : marked.slice(0, offset) + marked.slice(offset + 1);
  return { view: plainView(text, address, files), offset: Math.max(0, offset), text };
}

/** The view of one of several files. */
export function plainView(text: string, uri: string, files: Record<string, string> = {}): View {
  const document = TextDocument.create(uri, "chair", 1, text);
  const read = (wanted: string) => files[wanted.slice(wanted.lastIndexOf("/") + 1)];
  const tree = parse(text, vocabulary);
  let made: Study | undefined;
  const view: View = {
    uri,
    document,
    tree,
    outline: outlineOf(text, vocabulary),
    get study() {
      made ??= study({ text, address: uri, files: { resolve: resolveNamed, read }, tree });
      return made;
    },
    *work() {
      yield;
      return this.study;
    },
    lastStudy: undefined,
    *reread(other) {
      yield;
      return study({ text: other, address: uri, files: { resolve: resolveNamed, read } }).problems;
    },
    rework: (changed) =>
      settle({ tree: changed, address: uri, files: { resolve: resolveNamed, read } }).chair,
    *deepen(work) {
      const quick = view.study;
      if (!quick.late) made = yield* deepenSteps(quick, work);
    },
    mend: (problems) => mendSteps(view.study, { resolve: resolveNamed, read }, problems),
    files: { resolve: resolveNamed, read },
    ranges: new Map(),
    vocabulary,
    rules,
    other(wanted) {
      const found = read(wanted);
      return found === undefined ? undefined : TextDocument.create(wanted, "chair", 1, found);
    },
    resolve: (path) => resolveNamed(uri, path),
  };
  return view;
}
