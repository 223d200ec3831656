import { describe, expect, it } from "vitest";
import { completion } from "../../../server/editor/completion.ts";
import { startsIn } from "../../../server/editor/starts.ts";
import { changed, edited, frame, type Placed } from "./frame.ts";
import { viewOf } from "./view.ts";

const labels = ({ view, offset }: Placed, bySpace = false) =>
  completion(view, offset, { snippets: true, bySpace }).map(({ label }) => label);

/** The text after taking one of the completions. */
function taken({ view, offset }: Placed, label: string, snippets = false, files: string[] = []): string {
  const item = completion(view, offset, { snippets, files }).find((each) => each.label === label);
  if (!item?.textEdit || !("range" in item.textEdit)) throw new Error(`there is no "${label}"`);
  return edited(view, [item.textEdit]);
}

describe("completion at the start of a line", () => {
  it("offers the statements of the block it stands in that are not given yet", () => {
    const offered = labels(changed("  height top\n", "  |\n  height top\n"));
    expect(offered).toEqual(expect.arrayContaining(["rake", "taper", "kick", "turn", "bend"]));
    expect(offered).not.toEqual(expect.arrayContaining(["section"]));
    expect(offered).not.toContain("height");
    expect(offered).not.toContain("up");
    expect(offered).not.toContain("post");
  });

  it("offers the file's statements outside all blocks", () => {
    const offered = labels(changed("angle back-rake", "|\nangle back-rake"));
    expect(offered).toEqual(expect.arrayContaining(["post", "rail", "joint", "let", "accept", "trim"]));
    expect(offered).not.toContain("units");
    expect(offered).not.toContain("section");
  });

  it("puts what must be given first", () => {
    const { view, offset } = viewOf("post a {\n  |\n}\n");
    const sorted = completion(view, offset, { snippets: false }).sort((a, b) =>
      (a.sortText ?? "") < (b.sortText ?? "") ? -1 : 1,
    );
    expect(sorted.slice(0, 2).map(({ label }) => label)).toEqual(["section", "foot"]);
  });

  it("writes a whole block, with the lines it must have and places to fill in", () => {
    const place = viewOf('chair "x"\npo|\n');
    expect(taken(place, "post", true)).toBe(
      // biome-ignore lint/suspicious/noTemplateCurlyInString: the form of a client's snippet
      'chair "x"\npost ${1:front} pair {\n\tsection ${2:40} x ${3:40}\n\tfoot out ${4:205}, back ${5:20}\n\t$0\n}\n',
    );
    expect(taken(place, "post", false)).toBe('chair "x"\npost front pair {\n');
  });

  it("writes only the word where a block follows already", () => {
    expect(taken(changed("post front pair {", "po|st front pair {"), "post", true)).toBe(frame);
  });

  it("carries documentation from the table", () => {
    const { view, offset } = viewOf("post a {\n  sp|\n}\n");
    const splay = completion(view, offset, { snippets: false }).find(({ label }) => label === "splay");
    expect(splay?.documentation).toMatchObject({
      value: expect.stringContaining("Lean seen from the front"),
    });
  });
});

describe("completion inside a line", () => {
  it("offers names of the right kind", () => {
    expect(labels(changed("joined rail-tenon", "joined |"))).toEqual(["rail-tenon"]);
    const members = labels(changed("  across front", "  across |"));
    expect(members).toEqual(expect.arrayContaining(["front", "back"]));
    expect(members).not.toContain("rail-tenon");
    expect(members).not.toContain("seat-front");
  });

  it("takes the place of the word being written", () => {
    expect(taken(changed("joined rail-tenon", "joined rai|l"), "rail-tenon")).toContain(
      "joined rail-tenon\n",
    );
  });

  it("offers marker words and choices", () => {
    expect(labels(changed("foot out 175, back 452", "foot out 175, |"))).toEqual(["back"]);
    expect(labels(changed("units mm", "units |"))).toEqual(["mm", "cm", "in"]);
    expect(labels(changed("rake 6deg above 475", "rake 6deg |"))).toEqual(
      expect.arrayContaining(["above", "over"]),
    );
  });

  it("offers units of the right kind after a number", () => {
    expect(labels(changed("rake 6deg", "rake 6|"))).toEqual(["deg"]);
    expect(labels(changed("section 40 x 40", "section 40|"))).toEqual(["mm", "cm", "m", "in", "ft"]);
    expect(taken(changed("rake 6deg above", "rake 6d| above"), "deg")).toBe(frame);
  });

  it("offers lets and functions in an expression, worked-out values where they may stand", () => {
    const height = labels(changed("height top", "height |"));
    expect(height).toEqual(expect.arrayContaining(["seat-height", "top", "max"]));
    expect(height).not.toContain("seat.slope");
    expect(labels(changed("height top", "height seat-height + |"))).toContain("seat-height");
    expect(labels(changed("require seat.slope from", "require seat.| from"))).toEqual(
      expect.arrayContaining(["seat.slope", "seat.height"]),
    );
  });

  it("says nothing in comments and quoted text", () => {
    expect(labels(changed("# Stands plumb.", "# Stands |"))).toEqual([]);
    expect(labels(changed('"Mess frame"', '"Mess |frame"'))).toEqual([]);
  });

  it("brings up a list after a space only where a name or one of a few words must follow", () => {
    expect(labels(changed("joined rail-tenon", "joined |"), true)).toEqual(["rail-tenon"]);
    expect(labels(changed("  height top", "  height |"), true)).toEqual([]);
    expect(labels(changed("  height top", "  |height top"), true)).toEqual([]);
  });
});

describe("completion of what is named and what is worth", () => {
  const files = ["joints.chair", "../other.chair"];
  const named = ({ view, offset }: Placed, bySpace = false) =>
    completion(view, offset, { snippets: true, files, bySpace }).map(({ label }) => label);

  it("offers the files that may be named after `use` and `like`, in quotes and without", () => {
    for (const word of ["use", "like"]) {
      expect(named(viewOf(`${word} |`), true)).toEqual(files);
      expect(named(viewOf(`${word} "|`))).toEqual(files);
      const inside = viewOf(`${word} "jo|ints"\nunits mm\n`);
      const item = completion(inside.view, inside.offset, { snippets: false, files })[0]!;
      expect(edited(inside.view, [item.textEdit as { range: never; newText: string }])).toBe(
        `${word} "joints.chair"\nunits mm\n`,
      );
      expect(taken(viewOf(`${word} |`), "joints.chair", false, files)).toBe(`${word} "joints.chair"`);
    }
    expect(named(viewOf('chair "|"'))).toEqual([]);
  });

  it("has libraries first after `use`, chairs first after `like`, each by how near it is", () => {
    const asked = {
      snippets: false,
      files: ["a-chair.chair", "joints.chair", "../b-chair.chair", "../values.chair"],
      libraries: new Set(["joints.chair", "../values.chair"]),
    };
    const sorted = (marked: string) => {
      const { view, offset } = viewOf(marked);
      return completion(view, offset, asked)
        .sort((a, b) => ((a.sortText ?? "") < (b.sortText ?? "") ? -1 : 1))
        .map(({ label }) => label);
    };
    const [near, joints, far, values] = asked.files;
    expect(sorted('use "|')).toEqual([joints, values, near, far]);
    expect(sorted("use |")).toEqual([joints, values, near, far]);
    expect(sorted('like "|')).toEqual([near, far, joints, values]);
  });

  const inOrder = ({ view, offset }: ReturnType<typeof viewOf>) =>
    completion(view, offset, { snippets: true })
      .map(({ label, sortText }) => [sortText ?? label, label] as const)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([, label]) => label);

  it("has the fitting kind first: posts before rails, values of the chair before those of its parts and before lets", () => {
    const across = inOrder(changed("across back", "across |"));
    expect(across[0]).toBe("back");
    expect(across[1]).toBe("front");
    const required = inOrder(changed("angle back-rake", "require |\nangle back-rake"));
    expect(required.indexOf("seat.height")).toBeLessThan(required.indexOf("top"));
    expect(required.indexOf("top")).toBeLessThan(
      required.findIndex((label) => /^(front|back)\.left\./.test(label)),
    );
  });

  it("has the parts of a chair before single lines about all of it", () => {
    const offered = inOrder(changed("angle back-rake", "|\nangle back-rake"));
    expect(offered.indexOf("rail")).toBeLessThan(offered.indexOf("trim"));
    expect(offered.indexOf("trim")).toBeLessThan(offered.indexOf(startsIn("mm")[0]!.label));
  });

  it("has values beside names, those that fit the place first", () => {
    const place = changed("  splay 2deg", "  splay |");
    place.view.study.design.lets.set("lean", {
      ...place.view.study.design.lets.get("top")!,
      name: "lean",
      value: { value: { number: 0.1, dimension: "angle" }, at: { start: 0, end: 0 } } as never,
    });
    const items = completion(place.view, place.offset, { snippets: false });
    const top = items.find(({ label }) => label === "top");
    expect(top?.labelDetails?.description).toBe("930 mm");
    const sorted = items.map(({ label, sortText }) => [sortText ?? label, label]).sort();
    const order = sorted.map(([, label]) => label);
    expect(order.indexOf("lean")).toBeLessThan(order.indexOf("top"));
    expect(order.indexOf("top")).toBeLessThan(order.indexOf("max"));
  });

  it("offers whole pieces to start from only where a line of the file begins, and each reads without a fault, in every unit", () => {
    for (const unit of ["mm", "cm", "in"]) {
      for (const { label, text } of startsIn(unit)) {
        expect(labels(viewOf(`units ${unit}\n|`))).toContain(label);
        const { tree } = viewOf(`chair "x"\nunits ${unit}\n${text}`).view;
        expect(tree.problems, `${label}, ${unit}`).toEqual([]);
      }
    }
    const { label } = startsIn("mm")[0]!;
    for (const place of [
      "post a {\n  |\n}",
      "# |",
      'note 2024-01-01 "|"',
      "let a = |",
      "rail b {\n  up 3\n  |",
    ])
      expect(labels(viewOf(place)), place).not.toContain(label);
  });
});

describe("completion in broken text", () => {
  it("works in a block that is not closed", () => {
    expect(
      labels(viewOf("joint j {\n  tenon thick 8\n}\npost front pair {\n  section 40 x 40\n  |")),
    ).toEqual(expect.arrayContaining(["foot", "height"]));
    expect(labels(viewOf("joint j {\n  tenon thick 8\n}\nrail r {\n  joined |"))).toEqual(["j"]);
  });

  it("works beside lines that cannot be read", () => {
    const place = changed("  across front\n", "  acros ((( front\n  joined |\n");
    expect(labels(place)).toContain("rail-tenon");
  });

  it("works in an empty file and past its end", () => {
    expect(labels(viewOf("|"))).toContain("chair");
    expect(() => completion(viewOf("").view, 100, { snippets: true })).not.toThrow();
  });
});
