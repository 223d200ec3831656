import { describe, expect, it } from "vitest";
import { documentLinks } from "../../../server/editor/links.ts";
import { viewOf } from "./view.ts";

describe("links", () => {
  it("lead from `use` and `like` to the files beside this one", () => {
    const { view } = viewOf(
      'like "../base/mess chair.chair"\nuse "joints.chair"\nnote 2026-03-14 "joints.chair"\n',
    );
    expect(documentLinks(view).map(({ range, target }) => [view.document.getText(range), target])).toEqual([
      ["../base/mess chair.chair", "file:///base/mess%20chair.chair"],
      ["joints.chair", "file:///mess/joints.chair"],
    ]);
  });

  it("are none where the path is missing or the quote is open", () => {
    expect(documentLinks(viewOf('use ""\nuse\nuse "joints').view)).toEqual([]);
  });
});
