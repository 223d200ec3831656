import { describe, expect, it } from "vitest";
import { prepareRename, rename } from "../../../server/editor/rename.ts";
import { at, changed, edited, frame, type Placed } from "./frame.ts";
import { address, plainView, viewOf } from "./view.ts";

function renamed({ view, offset }: Placed, name: string): string {
  const answer = rename(view, offset, name, []);
  return "refused" in answer ? `refused: ${answer.refused}` : edited(view, answer.changes?.[view.uri] ?? []);
}

describe("rename", () => {
  it("changes every mention and nothing else", () => {
    expect(renamed(at("joined rail-te|non"), "mortised")).toBe(frame.replaceAll("rail-tenon", "mortised"));
    expect(renamed(at("let seat-he|ight"), "lift")).toBe(frame.replaceAll("seat-height", "lift"));
  });

  it("changes a post in dotted names and leaves directions alone", () => {
    const text = renamed(at("post ba|ck"), "rear");
    expect(text).toContain("foot out 205, back 20");
    expect(text).toContain("post rear pair {");
    expect(text).toContain("from front to rear");
    expect(text).toContain("end rear {");
    expect(text).toContain("between seat, rear above 530");
    expect(renamed(at("post fr|ont"), "fore")).toContain("require seat-side.left.fore.edge-bevel");
  });

  it("can be put back as it was", () => {
    const once = renamed(at("rail seat-fr|ont"), "apron");
    const place = at("rail apr|on", once);
    expect(renamed(place, "seat-front")).toBe(frame);
  });

  it("tells what will change", () => {
    const { view, offset } = at("across fro|nt");
    expect(prepareRename(view, offset)).toMatchObject({ placeholder: "front" });
  });

  it.each([
    ["2nd", 'refused: "2nd" is not a name'],
    ["a b", 'refused: "a b" is not a name'],
    ["back", "refused: There is already something called back."],
    ["seat", "refused: seat is the name of a worked-out value"],
    ["tenon", "refused: tenon is a word of the language"],
    ["left", "refused: left is a word of the language"],
    ["max", "refused: max is a word of the language"],
    ["section", "refused: section is a word of the language"],
  ])("refuses the name %s", (name, reason) => {
    expect(renamed(at("post fro|nt"), name)).toContain(reason);
  });

  it("is refused on words of the language and on names of nothing", () => {
    expect(renamed(at("sec|tion 40"), "x")).toContain("refused: Only the names");
    expect(renamed(viewOf("rail r {\n  joined no|thing\n}\n"), "x")).toContain(
      "refused: Nothing is called nothing",
    );
  });

  it("is refused in broken text, with the reason", () => {
    const broken = changed("  across front\n", "  acros front\n");
    expect(renamed({ ...broken, offset: broken.text.indexOf("post front") + 6 }, "fore")).toMatch(
      /^refused: Line 29 cannot be read \(.*\), so a mention might be missed; mend it first\.$/,
    );
  });

  it("follows a chair that is like another, which says anew of the same parts", () => {
    const files = { "base.chair": frame };
    const child = plainView(
      'like "base.chair"\npost front {\n  section 34 x 34\n}\nlet rise = 3\n',
      address,
      files,
    );
    const base = plainView(frame, "file:///mess/base.chair");
    const stranger = plainView(frame, "file:///mess/stranger.chair");
    const answer = rename(child, child.document.getText().indexOf("front"), "fore", [base, stranger]);
    const changes = ("refused" in answer ? undefined : answer.changes) ?? {};
    expect(Object.keys(changes).sort()).toEqual(["file:///mess/base.chair", address]);
    expect(edited(child, changes[address] ?? [])).toContain("post fore {");
    expect(edited(base, changes[base.uri] ?? [])).toContain("across fore\n");
  });

  it("reaches the lines that take the thing away", () => {
    const base = plainView(frame, "file:///mess/base.chair");
    const child = plainView('like "base.chair"\nwithout seat-front, seat-side\n', address, {
      "base.chair": frame,
    });
    const stranger = plainView("without seat-front\n", "file:///mess/stranger.chair");
    const answer = rename(base, frame.indexOf("rail seat-front") + 6, "apron", [child, stranger]);
    const changes = ("refused" in answer ? undefined : answer.changes) ?? {};
    expect(edited(child, changes[address] ?? [])).toBe('like "base.chair"\nwithout apron, seat-side\n');
    expect(changes[stranger.uri]).toBeUndefined();
    const back = rename(child, child.document.getText().indexOf("seat-front"), "apron", [base]);
    expect(Object.keys(("refused" in back ? undefined : back.changes) ?? {}).sort()).toEqual([
      base.uri,
      address,
    ]);
  });

  it("leaves alone a part that a used library happens to have too", () => {
    const files = { "lib.chair": "post front {\n  section 30 x 30\n}\n" };
    const user = plainView(`use "lib.chair"\n${frame}`, address, files);
    const lib = plainView(files["lib.chair"], "file:///mess/lib.chair");
    const answer = rename(user, user.document.getText().indexOf("post front") + 6, "fore", [lib]);
    expect("refused" in answer ? answer : Object.keys(answer.changes ?? {})).toEqual([address]);
  });

  it("reaches over files that share the thing", () => {
    const files = { "joints.chair": "joint far {\n  tenon thick 8, long 20\n}\n" };
    const here = plainView('use "joints.chair"\nrail r {\n  joined far\n}\n', address, files);
    const home = plainView(files["joints.chair"], "file:///mess/joints.chair");
    const answer = rename(here, here.document.getText().indexOf("far") + 1, "near", [home]);
    expect(
      "refused" in answer
        ? answer
        : Object.fromEntries(Object.entries(answer.changes ?? {}).map(([uri, edits]) => [uri, edits.length])),
    ).toEqual({
      [address]: 1,
      "file:///mess/joints.chair": 1,
    });
  });
});
