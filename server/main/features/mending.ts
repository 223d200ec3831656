import { type ClientCapabilities, CodeActionKind, type CodeActionParams } from "vscode-languageserver";
import { asked, codeActionSteps, FIX_ALL } from "../../editor/code-actions.ts";
import { meet, spanOf } from "../../editor/view.ts";
import { isOfReading } from "../../rules/file/language.ts";
import type { Study } from "../../study.ts";
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
      const stop = () => token.isCancellationRequested || world.views.get(view.uri) !== view;
      if (asked(CodeActionKind.QuickFix, context.only)) {
        const near = () => view.study.problems.filter((problem) => meet(problem, span));
        // A mend has to hold with what is worked out late as well, but for a misspelt word.
        if (!near().every((problem) => problem.mends || isOfReading(problem)))
          await finishInTurns(view.deepen(await world.services.late()), stop);
        // That may be done meanwhile by somebody else: then the study is another, with findings of its own.
        let mended: Study | undefined;
        while (mended !== view.study && !stop()) {
          mended = view.study;
          await finishInTurns(view.mend(near()), stop);
        }
      }
      const settings = await world.settings(view.uri);
      const given = { only: context.only, placesCaret: placesCaret(world.client) };
      return (await finishInTurns(codeActionSteps(view, span, settings, given), stop)) ?? [];
    },
  }),
];

/** Whether the client takes snippets in the edits of an action. */
const placesCaret = ({ workspace }: ClientCapabilities): boolean =>
  workspace?.workspaceEdit?.snippetEditSupport === true && workspace.workspaceEdit.documentChanges === true;
