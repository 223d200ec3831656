import { describe, expect, it } from "vitest";
import { references } from "../../../server/editor/references.ts";
import { at, changed } from "./frame.ts";
import { plainView } from "./view.ts";

const shared = { "joints.chair": "joint far {\n  tenon thick 8, long 20\n}\n" };
const user = (name: string) =>
  plainView(`use "joints.chair"\nrail ${name} {\n  joined far\n}\n`, `file:///mess/${name}.chair`, shared);
const lines = (found: ReturnType<typeof references>) =>
  found.map(({ uri, range }) => `${uri.slice(uri.lastIndexOf("/") + 1)}:${range.start.line + 1}`);

describe("references", () => {
  it("finds every mention, the declaration only when asked for", () => {
    const { view, offset } = at("joint rail-te|non");
    expect(lines(references(view, offset, [], false))).toEqual([
      "chair.chair:32",
      "chair.chair:39",
      "chair.chair:49",
    ]);
    expect(lines(references(view, offset, [], true))).toHaveLength(4);
  });

  it("finds a post in dotted names, ends and angles, and not the direction of the same name", () => {
    const { view, offset } = at("post fro|nt");
    const texts = references(view, offset, [], true).map(({ range }) =>
      view.document.getText({ start: { line: range.start.line, character: 0 }, end: range.end }).trim(),
    );
    expect(texts).toEqual(["post front", "across front", "from front", "require seat-side.left.front"]);
    const back = at("post ba|ck");
    expect(references(back.view, back.offset, [], true).map(({ range }) => range.start.line + 1)).toEqual([
      20, 36, 40, 46, 58,
    ]);
  });

  it("finds mentions over the files that share a declaration, and not another thing of the same name", () => {
    const home = plainView(shared["joints.chair"], "file:///mess/joints.chair");
    const stranger = plainView("joint far {\n  tenon thick 8\n}\n", "file:///mess/stranger.chair");
    const found = references(home, 7, [user("a"), user("b"), stranger], true);
    expect(lines(found)).toEqual(["joints.chair:1", "a.chair:3", "b.chair:3"]);
  });

  it("finds them in broken text", () => {
    const broken = changed("  section 22 x 70\n  up", "  secton 22 x (\n  up");
    expect(lines(references(broken.view, broken.text.indexOf("rail-tenon"), [], false))).toHaveLength(3);
  });
});
