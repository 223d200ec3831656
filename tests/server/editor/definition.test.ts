import { describe, expect, it } from "vitest";
import { definition, definitionLinks } from "../../../server/editor/definition.ts";
import { at, changed, type Placed } from "./frame.ts";
import { address, plainView, viewOf } from "./view.ts";

/** Each definition as its file's name, line and text. */
function found({ view, offset }: Placed, files: Record<string, string> = {}) {
  return definition(view, offset).map(({ uri, range }) => {
    const text = files[uri.slice(uri.lastIndexOf("/") + 1)];
    const document = text === undefined ? view.document : plainView(text, uri).document;
    return `${uri.slice(uri.lastIndexOf("/") + 1)}:${range.start.line + 1} ${document.getText(range)}`;
  });
}

describe("definition", () => {
  it("goes from a name to where it is given", () => {
    expect(found(at("joined rail-te|non"))).toEqual(["chair.chair:8 rail-tenon"]);
    expect(found(at("across fro|nt"))).toEqual(["chair.chair:14 front"]);
    expect(found(at("height seat-h|eight"))).toEqual(["chair.chair:4 seat-height"]);
    expect(found(at("end ba|ck"))).toEqual(["chair.chair:20 back"]);
  });

  it("goes from the pieces of a dotted name each to its own", () => {
    expect(found(at("require seat-si|de.left.front.edge-bevel"))).toEqual(["chair.chair:35 seat-side"]);
    expect(found(at("require seat-side.left.fro|nt.edge-bevel"))).toEqual(["chair.chair:14 front"]);
  });

  it("goes nowhere from words of the language", () => {
    expect(found(at("require seat.sl|ope"))).toEqual([]);
    expect(found(at("foot out 205, ba|ck 20"))).toEqual([]);
    expect(found(at("sec|tion 40"))).toEqual([]);
  });

  it("tells the stretch it was asked from to clients that show it", () => {
    const { view, offset } = at("joined rail-te|non");
    const [link] = definitionLinks(view, offset);
    expect(link?.originSelectionRange && view.document.getText(link.originSelectionRange)).toBe("rail-tenon");
  });

  it("goes to another file by `use`, and to the file itself from its path", () => {
    const files = { "joints.chair": "\njoint far {\n  tenon thick 8, long 20\n}\n" };
    const text = 'use "joints.chair"\nrail r {\n  joined far\n}\n';
    expect(
      found({ view: plainView(text, address, files), offset: text.indexOf("far") + 1, text }, files),
    ).toEqual(["joints.chair:2 far"]);
    expect(found({ view: plainView(text, address, files), offset: 8, text }, files)).toEqual([
      "joints.chair:1 ",
    ]);
    expect(found(viewOf('use "no|where.chair"\n'))).toEqual([]);
  });

  it("works beside broken lines", () => {
    const broken = changed("  across front\n", "  acros )) front {\n  joined rail-te|non\n");
    expect(found(broken)).toEqual(["chair.chair:8 rail-tenon"]);
  });
});
