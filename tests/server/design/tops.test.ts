import { describe, expect, it } from "vitest";
import { applyEdits } from "../../../grammar/format.ts";
import { studied } from "../../check.ts";
import { read } from "../../house/project-files.ts";

const files = { "boathouse-joints.chair": read("samples/boathouse-joints.chair") };
const armchair = read("samples/mess-armchair.chair");
const over = "    over\n    overhang 36\n";

/** All that is found, and the text with the first fix of the first finding. */
function found(text: string) {
  const { problems } = studied(text, files);
  const [fix] = problems[0]?.fixes ?? [];
  return { codes: problems.map(({ code }) => code), mended: fix && applyEdits(text, fix.edits) };
}

describe("an end under which a post's top has to be", () => {
  it("is told once when it does not lie over that post, with the line that mends it", () => {
    const { codes, mended } = found(armchair.replace(over, "    overhang 36\n"));
    expect(codes).toEqual(["needs-over"]);
    expect(mended).toContain("  end front {\n    overhang 36\n    over\n  }");
    expect(studied(mended ?? "", files).problems).toEqual([]);
  });

  it("is given a block of its own where it has none", () => {
    const { codes, mended } = found(armchair.replace(`  end front {\n${over}  }\n`, ""));
    expect(codes).toEqual(["needs-over"]);
    expect(mended).toContain("  end front { over }\n}");
    expect(studied(mended ?? "", files).problems.filter(({ code }) => code === "needs-over")).toEqual([]);
  });

  it("is told once of both ends of a rail", () => {
    const { codes, mended } = found(
      armchair.replace(/ {2}over back\n( {2}overhang .*\n)?/, "  across back\n"),
    );
    expect(codes.filter((code) => code === "needs-over")).toHaveLength(1);
    expect(found(mended ?? "").codes).not.toContain("needs-over");
  });

  it("is not told again where the line is misspelt", () => {
    expect(found(armchair.replace(over, "    ovr\n    overhang 36\n")).codes).toEqual(["unknown-word"]);
  });

  it("keeps the line ends of the file", () => {
    const { mended } = found(armchair.replace(over, "    overhang 36\n").replace(/\n/g, "\r\n"));
    expect(mended).toContain("    overhang 36\r\n    over\r\n  }");
  });

  it("may be let into a post that has a height of its own", () => {
    const high = armchair
      .replace(`  end front {\n${over}  }\n`, "  end front {\n    joined arm-tenon\n  }\n")
      .replace("  top into arm with boathouse-top", "  height 700");
    expect(found(high).codes).not.toContain("needs-over");
  });
});
