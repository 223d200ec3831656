import { expect, it } from "vitest";
import { TextDocument } from "vscode-languageserver-textdocument";
import type { CodeAction } from "vscode-languageserver-types";
import { mendingFeatures } from "../../../server/main/features/mending.ts";
import { services } from "../../../server/main/services.ts";
import { viewOfFile } from "../../../server/main/view-of-file.ts";
import type { World } from "../../../server/main/world.ts";
import { mendSteps } from "../../../server/mends/mends.ts";
import { study } from "../../../server/study.ts";
import { frame } from "../../plain-frame.ts";

const uri = "file:///mess/chair.chair";

it.each(["before", "after"])(
  "offers what mends a finding though what is late was worked out %s that was tried",
  async (when) => {
    const text = frame().replace("foot", "foto");
    const document = TextDocument.create(uri, "chair", 1, text);
    const late = await services.late();
    const { view } = viewOfFile({
      document,
      services: {
        ...services,
        *mend(study, files, problems) {
          if (when === "before") yield* view.deepen(late);
          yield* services.mend(study, files, problems);
          if (when === "after") yield* view.deepen(late);
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
  },
);

it("goes on with mends whose trying was broken off", () => {
  const files = { resolve: (_from: string, path: string) => path, read: () => undefined };
  const studied = () => study({ text: frame().replace("foot", "foto"), address: uri, files });
  const countOf = (steps: Generator) => {
    let count = 0;
    while (!steps.next().done) count++;
    return count;
  };
  const whole = studied();
  const all = countOf(mendSteps(whole, files));
  const broken = studied();
  const half = mendSteps(broken, files);
  for (let k = 0; k < all / 2; k++) half.next();
  half.return();
  expect(countOf(mendSteps(broken, files))).toBeLessThanOrEqual(all / 2);
  expect(broken.problems.map(({ mends }) => mends)).toEqual(whole.problems.map(({ mends }) => mends));
});
