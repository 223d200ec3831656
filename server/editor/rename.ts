/**
 * Giving a thing another name, everywhere it is spoken of. Refused where the text cannot be trusted to be understood.
 */

import type { Range, TextEdit, WorkspaceEdit } from "vscode-languageserver-types";
import { isSyntax } from "../../grammar/format.ts";
import { editorSentence } from "../../grammar/sentences/editor-sentence.ts";
import { valueWords } from "../../grammar/vocabulary/values.ts";
import { type Knowledge, knowledgeOf } from "./names/family.ts";
import { nameAt } from "./names/names.ts";
import { everyMention } from "./references.ts";
import { rangeOf, type View } from "./view.ts";

export interface Refused {
  refused: string;
}

/** The name at a place with its range, or why it cannot be changed. */
export function prepareRename(view: View, offset: number): { range: Range; placeholder: string } | Refused {
  const broken = whyBroken(view);
  if (broken) return broken;
  const mention = nameAt(view, offset);
  if (!mention) return { refused: editorSentence("rename.kinds") };
  // What a file takes away with `without` it does not have, and yet speaks of.
  const takenAway = mention.statement.word?.text === "without" && view.outline.links.length > 0;
  if (!takenAway && !view.study.design.names.has(mention.name))
    return { refused: editorSentence("rename.nothing", { name: mention.name }) };
  return { range: rangeOf(view.document, mention), placeholder: mention.name };
}

/** The edits that give the thing at a place its new name, in this file and in `others` that know it; or why not. */
export function rename(
  view: View,
  offset: number,
  newName: string,
  others: readonly View[],
): WorkspaceEdit | Refused {
  const prepared = prepareRename(view, offset);
  if ("refused" in prepared) return prepared;
  const name = newName.trim();
  const found = everyMention(view, offset, others);
  const touched = [...new Set(found.map((each) => each.view))];
  const known = knowledgeOf(name, [view, ...others]);
  const refusal =
    whyNotName(view, name) ??
    touched
      .map((other) => whyTaken(other, prepared.placeholder, name, known) ?? whyBroken(other, view))
      .find(Boolean);
  if (refusal) return refusal;
  if (
    !touched.some((other) => found.some((each) => each.view === other && each.mention.is === "declaration"))
  ) {
    return {
      refused: editorSentence("rename.unreadable", { name: prepared.placeholder }),
    };
  }
  const changes: Record<string, TextEdit[]> = {};
  for (const { view: other, mention } of found) {
    const edits = changes[other.uri] ?? [];
    edits.push({ range: rangeOf(other.document, mention), newText: name });
    changes[other.uri] = edits;
  }
  return { changes };
}

/** Names that belong to the whole chair's worked-out values. */
const reserved = new Set(valueWords.map(({ word }) => word.split(".")[0]));

/** Words of the language that posts are mostly called by, which no line mistakes for anything else. */
const customary = new Set(["front", "back"]);

function whyNotName({ vocabulary }: View, name: string): Refused | undefined {
  if (/^[a-z][a-z0-9-]*$/i.test(name) && !name.endsWith("-")) {
    if (reserved.has(name)) return { refused: editorSentence("rename.value", { name }) };
    const isWord =
      !customary.has(name) &&
      (vocabulary.rows.some(({ word }) => word === name) ||
        vocabulary.words.some(({ word }) => word === name));
    return isWord
      ? {
          refused: editorSentence("rename.word", { name }),
        }
      : undefined;
  }
  return {
    refused: editorSentence("rename.not-a-name", { name }),
  };
}

function whyTaken(view: View, before: string, name: string, known: Knowledge): Refused | undefined {
  if (name === before || known.word(view) === undefined) return undefined;
  return { refused: editorSentence("rename.taken", { name }) };
}

function whyBroken(view: View, asked: View = view): Refused | undefined {
  const error = view.tree.problems.find(({ severity, code }) => severity === "error" && isSyntax(code));
  if (!error) return undefined;
  const line = view.document.positionAt(error.start).line + 1;
  const where =
    view === asked ? `Line ${line}` : `Line ${line} of ${view.uri.slice(view.uri.lastIndexOf("/") + 1)}`;
  return {
    refused: editorSentence("rename.file-unreadable", { file: where, why: error.message.replace(/\.$/, "") }),
  };
}
