/**
 * Load cases, levels and climates as a maker meets them in the editor.
 */
import { describe, expect, it } from "vitest";
import { completion } from "../../../server/editor/completion.ts";
import { formatting } from "../../../server/editor/formatting.ts";

import { references } from "../../../server/editor/references.ts";
import { rename } from "../../../server/editor/rename.ts";
import { documentSymbols } from "../../../server/editor/symbols.ts";
import { edited } from "./frame.ts";
import { plainView, viewOf } from "./view.ts";

const chair = `post back pair { section 40 x 40; foot out 150, back 300; height 900 }
post front pair { section 40 x 40; foot out 150, back 0; height 430 }
rail crest { across back; section 20 x 60; up 880 }
rail arm pair { from front to back; section 20 x 40; up 400 }
seat board { on arm; thick 20 }
`;
const load = "load lean {\n  push 300N back on crest at 1/2\n  push 200N forward on back.left at 700\n}\n";
const offered = (marked: string) => {
  const { view, offset } = viewOf(chair + marked);
  return completion(view, offset, { snippets: false }).map(({ label }) => label);
};

describe("completion", () => {
  it("offers the three at the start of a line, and a load's own lines within it", () => {
    expect(offered("|")).toEqual(expect.arrayContaining(["load", "strength", "climate"]));
    expect(offered("load lean {\n  |\n}\n")).toEqual(expect.arrayContaining(["push", "stops", "times"]));
  });

  it("offers which way, on what, and against which sides", () => {
    expect(offered("load lean {\n  push 300N |\n}\n")).toEqual(
      expect.arrayContaining(["down", "up", "forward", "back", "out", "in", "left", "right"]),
    );
    const targets = offered("load lean {\n  push 300N down on |\n}\n");
    expect(targets).toEqual(expect.arrayContaining(["seat", "crest", "arm", "back"]));
    expect(offered("load lean {\n  stops |\n}\n").sort()).toEqual(["back", "front", "left", "right"]);
  });

  it("offers the levels, and what a climate is given by", () => {
    expect(offered("strength |\n").sort()).toEqual(["domestic", "public", "severe"]);
    expect(offered("climate |\n").sort()).toEqual(["humidity", "moisture"]);
  });
});

describe("rename and references", () => {
  const renamed = (marked: string, name: string) => {
    const { view, offset } = viewOf(marked);
    const answer = rename(view, offset, name, []);
    return "refused" in answer ? answer.refused : edited(view, answer.changes?.[view.uri] ?? []);
  };

  it("change the part that is pushed, from its block and from the push", () => {
    const wanted = (chair + load).replaceAll("crest", "comb");
    expect(renamed(chair.replace("rail crest", "rail cr|est") + load, "comb")).toBe(wanted);
    expect(renamed(chair + load.replace("on crest", "on cr|est"), "comb")).toBe(wanted);
    const post = renamed(chair + load.replace("back.left", "ba|ck.left"), "rear");
    expect(post).toContain("push 300N back on crest");
    expect(post).toContain("forward on rear.left at 700");
  });

  it("change the load itself, also where a file that starts from it takes it away", () => {
    const base = plainView(chair + load, "file:///mess/base.chair");
    const user = plainView('like "base.chair"\nwithout lean\n', "file:///mess/user.chair", {
      "base.chair": chair + load,
    });
    const answer = rename(base, (chair + load).indexOf("lean"), "swing", [user]);
    if ("refused" in answer) throw new Error(answer.refused);
    expect(edited(base, answer.changes?.[base.uri] ?? [])).toContain("load swing {");
    expect(edited(user, answer.changes?.[user.uri] ?? [])).toContain("without swing");
  });

  it("find each push on a part", () => {
    const { view, offset } = viewOf(chair.replace("rail crest", "rail cr|est") + load);
    expect(references(view, offset, [], true).map(({ range }) => range.start.line + 1)).toEqual([3, 7]);
  });
});

describe("formatting and the outline", () => {
  it("lay a load out, once and no further", () => {
    const two = { insertSpaces: true, tabSize: 2 };
    const { view } = viewOf(
      "strength   public\nclimate  humidity 30% to   50%\nload lean {\npush 300N   back on seat at out 20 , back 100\n  stops front , back\ntimes 20\n}\n",
    );
    const tidy = edited(view, formatting(view, two));
    expect(tidy).toContain("strength public\nclimate humidity 30% to 50%\n");
    expect(tidy).toContain(
      "load lean {\n  push 300N back on seat at out 20, back 100\n  stops front, back\n  times 20\n}\n",
    );
    const again = viewOf(tidy).view;
    expect(edited(again, formatting(again, two))).toBe(tidy);
  });

  it("have a load by its name", () => {
    const names = documentSymbols(viewOf(chair + load).view).map(({ name }) => name);
    expect(names.some((name) => name.includes("lean"))).toBe(true);
  });
});
