import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { diagonalsOf, framesOf, framesWith } from "../../../server/joinery/frames.ts";
import { orderOf } from "../../../server/joinery/order.ts";
import { messagesOf, studied } from "../../check.ts";
import { exampleOf } from "../../rule-examples.ts";

const folder = new URL("../../../samples/", import.meta.url);
const names = readdirSync(folder).filter((name) => name.endsWith(".chair"));
const files = Object.fromEntries(names.map((name) => [name, readFileSync(new URL(name, folder), "utf8")]));

describe("an order for a chair", () => {
  it("the mess chair goes together with the least springing: side frames first, then what goes across", () => {
    const order = framesOf(studied(files["boathouse-mess-chair.chair"] ?? "", files).chair);
    expect(order.frames.map(({ name }) => name)).toEqual([
      "right side frame",
      "panel of back-lower and crest",
      "left side frame",
      "whole chair",
    ]);
    const last = order.frames.at(-1)!;
    expect(last.way).toBe("straight side to side");
    expect(last.brings).toHaveLength(5);
    expect(last.first.map(({ part, into }) => `${part} into ${into.join(" and ")}`)).toEqual([
      "seat-front into front.right",
      "seat-back into back.right",
      "the panel of back-lower and crest into back.right",
    ]);
    expect(last.sprung).toEqual([]);
    // Both rails lie 4.5° off the line that is midway between their tenons, in opposite ways.
    const side = order.frames[0]!;
    expect(side.sprung.map(({ part, towards }) => `${part} ${towards}`)).toEqual([
      "seat-side.right up",
      "side-stretcher.right down",
    ]);
    for (const { by } of side.sprung) expect(by).toBeLessThan(0.5);
    expect(framesWith(order, "seat-front to front.left")[0]?.name).toBe("whole chair");
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
      const across = framesOf(chair)
        .frames.map(diagonalsOf)
        .flatMap((diagonals) =>
          diagonals.filter(({ one }) => one.from.includes(".left") !== one.to.includes(".left")),
        );
      for (const { one, other } of across) expect(one.length).toBeCloseTo(other.length, 6);
    },
  );

  it("side rails with tenons at odds lock, and each way out that is named does free them", () => {
    const text = exampleOf("cannot-be-assembled") ?? "";
    const [said] = messagesOf(text, "cannot-be-assembled");
    expect(said).toMatch(/strays [\d.]+ mm \(\d/);
    expect(messagesOf(text.replaceAll("tenon square", "tenon in-line"), "cannot-be-assembled")).toEqual([]);
    const long = /a tenon ([\d.]+) mm long/.exec(said ?? "")?.[1];
    if (long) expect(messagesOf(text.replace("long 34", `long ${long}`), "cannot-be-assembled")).toEqual([]);
  });
});
