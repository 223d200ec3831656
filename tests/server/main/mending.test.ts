import { expect, it } from "vitest";
import { TextDocument } from "vscode-languageserver-textdocument";
import type { CodeAction } from "vscode-languageserver-types";
import { mendingFeatures } from "../../../server/main/features/mending.ts";
import { services } from "../../../server/main/services.ts";
import { viewOfFile } from "../../../server/main/view-of-file.ts";
import type { World } from "../../../server/main/world.ts";
import { frame } from "../../plain-frame.ts";

const uri = "file:///mess/chair.chair";

it("offers what mends a finding though what is late was worked out while that was tried", async () => {
  const text = frame().replace("foot", "foto");
  const document = TextDocument.create(uri, "chair", 1, text);
  const late = await services.late();
  const { view } = viewOfFile({
    document,
    services: {
      ...services,
      *mend(study, files, problems) {
        yield* services.mend(study, files, problems);
        yield* view.deepen(late);
      },
    },
    textOf: () => undefined,
    other: () => undefined,
  });
  const at = document.positionAt(text.indexOf("foto"));
  const given = {
    textDocument: { uri },
    range: { start: at, end: at },
    context: { diagnostics: [], only: ["quickfix"] },
  };
  const world = { views: { get: () => view }, client: {}, settings: async () => ({ rules: {} }) };
  const [codeActions] = mendingFeatures;
  const answered = await codeActions!.answer(
    world as unknown as World,
    given as never,
    { isCancellationRequested: false } as never,
  );
  expect(view.study.late).toBeDefined();
  expect((answered as CodeAction[]).map(({ title }) => title).join()).toContain("foot");
});
