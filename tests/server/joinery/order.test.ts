import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { framesOf, framesWith } from "../../../server/joinery/frames.ts";
import { orderOf } from "../../../server/joinery/order.ts";
import { frame } from "../../../server/rules/examples.ts";
import { ruleOf } from "../../../server/rules/index.ts";
import { fixed, messagesOf, studied } from "../../check.ts";

const folder = new URL("../../../samples/", import.meta.url);
const names = readdirSync(folder).filter((name) => name.endsWith(".chair"));
const files = Object.fromEntries(names.map((name) => [name, readFileSync(new URL(name, folder), "utf8")]));

describe("an order for a chair", () => {
  it("the mess chair goes together as a maker would do it: front frame, back frame, then the sides", () => {
    const order = framesOf(studied(files["boathouse-mess-chair.chair"] ?? "", files).chair);
    expect(order.frames.map(({ name }) => name)).toEqual([
      "front frame",
      "panel of back-lower and crest",
      "back frame",
      "whole chair",
    ]);
    const last = order.frames.at(-1);
    expect(last?.way).toBe("straight front to back");
    expect(last?.brings).toHaveLength(6);
    expect(framesWith(order, "seat-front to front.left")[0]?.name).toBe("front frame");
  });

  it.each(names)(
    "%s: every joint is closed once, and frames alike left and right have equal diagonals",
    (name) => {
      const { chair } = studied(files[name] ?? "", files);
      const { glueUps, locked } = orderOf(chair);
      expect(locked).toEqual([]);
      const cut = [...chair.joints.values()]
        .filter(({ tenon }) => tenon.length > 0)
        .map((joint) => joint.name);
      expect(glueUps.flatMap(({ closes }) => closes).sort()).toEqual(cut.sort());
      const across = framesOf(chair).frames.flatMap(({ diagonals }) =>
        diagonals.filter(({ one }) => one.from.includes(".left") !== one.to.includes(".left")),
      );
      for (const { one, other } of across) expect(one.length).toBeCloseTo(other.length, 6);
    },
  );

  it("side rails with tenons at odds lock, and each way out that is named does free them", () => {
    const text = ruleOf("cannot-be-assembled")?.example ?? "";
    const [said] = messagesOf(text, "cannot-be-assembled");
    expect(said).toMatch(/strays [\d.]+ mm \(\d/);
    expect(messagesOf(text.replaceAll("tenon square", "tenon in-line"), "cannot-be-assembled")).toEqual([]);
    const long = /a tenon ([\d.]+) mm long/.exec(said ?? "")?.[1];
    if (long) expect(messagesOf(text.replace("long 34", `long ${long}`), "cannot-be-assembled")).toEqual([]);
  });
});

describe("tenons inside a post", () => {
  const text = ruleOf("tenons-meet")?.example ?? "";

  it("meet: 8 × 8 × 44 mm where two tenons 8 thick and 26 long cross in a post of 40, worked by hand", () => {
    expect(messagesOf(text, "tenons-meet")[0]).toContain(`${8 * 8 * 44} mm³`);
  });

  it("no longer meet after each fix", () => {
    for (const title of ["Mitre them", "Make them 16mm long"]) {
      expect(messagesOf(fixed(text, "tenons-meet", title), "tenons-meet"), title).toEqual([]);
    }
    expect(messagesOf(text.replace("long 26", "long 17"), "tenons-meet")).toHaveLength(1);
  });

  it("leave a post as wood enough, or say what is left", () => {
    // Two tenons 8 by 26, each mitred to 20 on its middle, in 40 by 40: 1 − 320 / 1600.
    expect(messagesOf(frame({ more: "limit post-weakened to 0.7\n" }), "post-weakened")).toEqual([]);
    expect(messagesOf(frame({ more: "limit post-weakened to 0.85\n" }), "post-weakened")[0]).toMatch(
      /only 80 %/,
    );
  });

  it("near the top of a post: 4 mm of wood is told with the shoulder that would do, and the fix does", () => {
    const near = ruleOf("mortise-near-end")?.example ?? "";
    expect(messagesOf(near, "mortise-near-end")[0]).toContain("only 4 mm");
    expect(messagesOf(fixed(near, "mortise-near-end", "Make the shoulder 6mm"), "mortise-near-end")).toEqual(
      [],
    );
  });

  it("a peg 16 from the shoulder of a tenon 21 long has 21 − 16 − 4 = 1 mm to its end", () => {
    const text = frame({ joint: "tenon thick 8, long 21\nmitre gap 0.01\npeg 8 draw 1 setback 16" });
    expect(messagesOf(text, "peg-misplaced")[0]).toMatch(/leaves [01](\.\d)? mm of wood to the end/);
    expect(
      messagesOf(text.replace("setback 16", "setback 10").replace("peg 8", "peg 6"), "peg-misplaced"),
    ).toEqual([]);
  });
});
