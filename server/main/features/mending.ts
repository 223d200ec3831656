import { CodeActionKind, type CodeActionParams } from "vscode-languageserver";
import { codeActions, FIX_ALL } from "../../editor/code-actions.ts";
import { meet, spanOf } from "../../editor/view.ts";
import { type Feature, onDocument } from "../feature.ts";
import { finishInTurns } from "../in-turns.ts";

export const mendingFeatures: Feature[] = [
  onDocument({
    name: "code-actions",
    method: "textDocument/codeAction",
    capability: { codeActionProvider: { codeActionKinds: ["quickfix", FIX_ALL] } },
    empty: [],
    async answer(view, { range, context }: CodeActionParams, world, token) {
      const span = spanOf(view.document, range);
      const all = context.only?.some((kind) => kind.startsWith(CodeActionKind.Source)) === true;
      const near = view.study.problems.filter((problem) => all || meet(problem, span));
      const stop = () => token.isCancellationRequested || world.views.get(view.uri) !== view;
      await finishInTurns(view.mend(near), stop);
      return stop() ? [] : codeActions(view, span, await world.settings(view.uri), context.only);
    },
  }),
];
