import { describe, expect, it } from "vitest";
import { folding } from "../../../server/editor/folding.ts";
import { viewOf } from "./view.ts";

const folds = (text: string) =>
  folding(viewOf(text).view).map(
    ({ startLine, endLine, kind }) => `${startLine}-${endLine}${kind ? ` ${kind}` : ""}`,
  );

describe("folding", () => {
  it("folds blocks down to their closing brace, and inner ones", () => {
    expect(folds("rail r {\n  across front\n  end left {\n    tenon square\n  }\n}\n")).toEqual([
      "0-4",
      "2-3",
    ]);
  });

  it("folds runs of comment lines", () => {
    expect(folds("# one\n# two\n\n# alone\nunits mm # behind\n# three\n# four\n")).toEqual([
      "0-1 comment",
      "5-6 comment",
    ]);
  });

  it("folds a block that is not closed", () => {
    expect(folds("post a {\n  section 40 x 40\n  foot out 205, back 20\n")[0]).toMatch(/^0-[23]$/);
  });

  it("keeps to the client's limit", () => {
    expect(folding(viewOf("post a {\n\n}\npost b {\n\n}\n").view, 1)).toHaveLength(1);
  });
});
