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
    expect(renamed(at("let seat-he|ight"), "rise")).toBe(frame.replaceAll("seat-height", "rise"));
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
