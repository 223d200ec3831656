import { describe, expect, it } from "vitest";
import type { MarkupContent } from "vscode-languageserver-types";
import { hover } from "../../../server/editor/hover.ts";
import { at, changed, type Placed } from "./frame.ts";

function told({ view, offset }: Placed): string {
  return (hover(view, offset)?.contents as MarkupContent | undefined)?.value ?? "";
}

/** The text a hover is about. */
function about({ view, offset }: Placed): string {
  const range = hover(view, offset)?.range;
  return range ? view.document.getText(range) : "";
}

describe("hover on a part", () => {
  it("tells a plumb post's lines, length and foot cut, with its description", () => {
    const says = told(at("post fr|ont"));
    expect(says).toContain("**post front**, a pair");
    expect(says).toContain("Stands plumb.");
    expect(says).toContain("Length 428 mm along its line");
    expect(says).toContain("Foot 205 mm out, 20 mm back");
    expect(says).toContain("As drawn: plumb");
    expect(says).toContain("Foot cut 90° (square)");
    expect(says).toContain("`seat-side.left`");
  });

  it("tells rake, splay, resultant and sightline of a post that leans both ways", () => {
    expect(told(at("post ba|ck"))).toMatch(
      /rake 6° back from plumb \(1:9\.5\), splay 2° out at the foot from plumb \(1:28\.6\), resultant 6\.3° on a sightline 18\.4° from fore-and-aft/,
    );
  });

  it("tells a rail's length and both bevels at each end, as degrees and as a rise in a run", () => {
    const says = told(at("rail seat-si|de"));
    expect(says).toMatch(/22 mm × 70 mm, [\d.]+ mm between shoulders/);
    expect(says).toMatch(/End `front`: enters `front.left`, face bevel .*edge bevel 8\d\.\d° \(1:\d+\.\d\)/);
    expect(says).toMatch(/End `back`: enters `back.left`/);
    expect(says).toMatch(/shoulder lines top 22\.\d mm, inside/);
  });

  it("tells a joint's sizes as cut where it is used, and everywhere from its header", () => {
    const use = told(at("up seat-height - 12\n  joined rail-t|enon"));
    expect(use).toContain("`seat-front to front.left`: tenon 7.3 mm × 54 mm, 25 mm long");
    expect(use).toContain("Shoulders: outside 7.3 mm, inside 7.3 mm, top 10 mm, bottom 6 mm");
    const all = told(at("joint rail-t|enon"));
    expect(all).toContain("Every rail of the seat.");
    expect(all).toContain("seat-back to back.left");
  });

  it("shows a joint in section where the editor can show pictures, and nowhere else", () => {
    const { view, offset } = at("up seat-height - 12\n  joined rail-t|enon");
    const says = (pictures: boolean) => (hover(view, offset, { pictures })!.contents as MarkupContent).value;
    const image = /!\[seat-front to front\.left in section\]\((data:image\/svg\+xml,[^\s()]+)\)/;
    const [, address = ""] = image.exec(says(true)) ?? [];
    expect(decodeURIComponent(address)).toMatch(/<svg .*<path .*<\/svg>$/);
    expect(says(false)).not.toContain("data:");
  });

  it("tells what holds a joint, and the glue-up that closes it", () => {
    const says = told(at("up seat-height - 12\n  joined rail-t|enon"));
    // Cheeks 54 high and 25 long but for the mitre.
    expect(says).toMatch(/Glued long grain to long grain over [\d.]+ mm²/);
    expect(says).toMatch(/Closes in glue-up \d of \d, the front frame, straight side to side/);
    expect(told(at("post fr|ont"))).toMatch(/Glued up in \d, the front frame/);
  });

  it("tells a declared angle with what it must keep to", () => {
    expect(told(at("angle back-r|ake"))).toMatch(/\d° ?.*To be from 4° to 9°/s);
  });

  it("works on a name in a part whose other lines are broken", () => {
    const broken = changed("height seat-height - 12\n}", "height seat-height - 12\n  taper (((\n}");
    expect(told({ ...broken, offset: broken.text.indexOf("post front") + 7 })).toContain("Length 428 mm");
  });
});

describe("hover on a value", () => {
  it("tells what an expression comes to in the file's units", () => {
    expect(told(at("height seat-height -| 12"))).toBe("Comes to 428 mm");
    const inches = changed("units mm", "units in", "units mm\nlet rise = 17 3/8in - 1in\n");
    expect(told({ ...inches, offset: inches.text.indexOf("- 1in") })).toContain("Comes to 16 3/8 in");
  });

  it("tells a let's value and range", () => {
    expect(told(at("let seat-h|eight"))).toContain("Comes to 440 mm, adjustable from 420 mm to 470 mm");
    expect(told(at("height seat-he|ight - 12"))).toContain("adjustable");
  });

  it("tells a worked-out value with its meaning", () => {
    const place = at("require seat.sl|ope");
    expect(about(place)).toBe("seat.slope");
    expect(told(place)).toMatch(/\*\*seat\.slope\*\*\n\n.*°\. Slope of the sitting surface/);
  });

  it("tells an angle as a rise in a run too", () => {
    expect(told(at("rake |6deg"))).toContain("Comes to 6° (1:9.5)");
  });

  it("survives an expression that cannot be read", () => {
    const broken = changed("height seat-height - 12", "height seat-height - |");
    expect(() => told(broken)).not.toThrow();
  });
});

describe("hover on a word", () => {
  it("tells a row's meaning, example and default", () => {
    const says = told(at("  sha|pe", "post a {\n  shape at 200 round 44\n}\n"));
    expect(says).toContain("The outline at one height");
    expect(says).toContain("shape at 200 round 44");
    expect(told(at("  spl|ay 2deg"))).toContain("Without it: splay 0deg");
  });

  it("tells the same word by the block it stands in", () => {
    const text = "post a {\n  round 38\n}\njoint b {\n  round 16, long 25\n}\n";
    expect(told(at("rou|nd 38", text))).toContain("turned post");
    expect(told(at("rou|nd 16", text))).toContain("turned tenon");
  });

  it("tells marker words, choices and units", () => {
    expect(told(at("post front pa|ir"))).toContain("mirrored right twin");
    expect(told(at("seat drop-|in"))).toContain("drops in between the rails");
    expect(told(at("rake 6de|g"))).toContain("Degrees");
    expect(told(at("1/3 of ra|il"))).toContain("the rail that is joined");
  });

  it("says nothing in a comment, a blank or past the end", () => {
    expect(hover(at("# For the bo|at").view, at("# For the bo|at").offset)).toBeNull();
    expect(hover(at("units mm|").view, 99_999)).toBeNull();
  });
});
