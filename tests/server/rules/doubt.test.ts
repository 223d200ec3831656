import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { rules } from "../../../server/rules/index.ts";
import { boundsOf } from "../../../server/rules/machinery/limits.ts";
import { allFound } from "../../../server/rules/machinery/rule.ts";
import { check, messagesOf, studied } from "../../check.ts";
import { frame } from "../../plain-frame.ts";

describe("where the text has errors", () => {
  it("a part that is not built gets no second fault, nor what depends on it", () => {
    const broken = frame().replace(
      "rail seat-side pair {\n  from front to back",
      "rail seat-side pair {\n  from frnt to back",
    );
    check(
      broken
        .replace("  from frnt", "  from frnt")
        .replace("frnt to back\n", "frnt to back\n  #    ^^^^ unknown-name\n"),
    );
  });

  it("a part whose lines cannot all be read is not judged, the others are", () => {
    const text = frame({
      joint: "tenon thick 4, long 26",
      front: "section 40 x 40\nfoot out 200, back 20\nheight 430\ntapr 30 x 30 from 200 to foot",
    });
    const found = studied(text).problems.filter(({ code }) => code === "tenon-too-thin");
    expect(found.map(({ subject }) => subject)).toEqual(["seat-side.left to back.left"]);
  });

  it("what a joint lacks is told once, on the joint", () => {
    const text = frame({ joint: "glue pva" });
    check(text.replace("joint plain {", "joint plain {\n#     ^^^^^ member-without-joint"));
    expect(messagesOf(text, "member-without-joint")).toEqual([
      "The joint plain has no tenon, so nothing holds seat-front.",
    ]);
  });

  it("no rule throws, whatever line of a chair is missing", () => {
    const sample = readFileSync(new URL("../../../samples/mess-armchair.chair", import.meta.url), "utf8");
    const library = readFileSync(new URL("../../../samples/boathouse-joints.chair", import.meta.url), "utf8");
    const lines = sample.split("\n");
    const thrown: string[] = [];
    // Every fourth line: the whole is a second of work.
    for (let k = 0; k < lines.length; k += 4) {
      const text = lines.filter((_, n) => n !== k).join("\n");
      const { tree, design, chair } = studied(text, { "boathouse-joints.chair": library });
      for (const rule of rules) {
        try {
          allFound(rule, { tree, design, chair, rules, ...boundsOf(rule, design) });
        } catch (error) {
          thrown.push(`${rule.code} without "${lines[k]}": ${error}`);
        }
      }
    }
    expect(thrown).toEqual([]);
  });
});
