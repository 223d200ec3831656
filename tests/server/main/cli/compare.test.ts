import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { compareOutput, reckonOutput } from "../../../../server/main/cli/schema.ts";
import { chairs, messChair, mistyped, seatwright } from "./bench.ts";

const sample = readFileSync(messChair, "utf8");
const changed = sample
  .replace("kick 4deg", "kick 5deg")
  .replace("let back-lean = 6.5deg", "let back-lean = 12deg")
  .concat('note 2026-11-27 "Leans | <more>."\n');
const path = chairs({
  "old.chair": sample,
  "new.chair": changed,
  "stool.chair": mistyped,
  "laid-out.chair": sample.replaceAll("  ", "    "),
});

describe("seatwright compare", () => {
  it("gives JSON that fits its schema, with the values that reckon gives", () => {
    const { out, code } = seatwright("compare", path("old.chair"), path("new.chair"), "--format", "json");
    expect(code).toBe(1);
    const output = compareOutput.strict().parse(JSON.parse(out));
    expect(output.chosen.slice(1)).toEqual([
      { part: "back-lean", property: "let", old: "6.5deg", new: "12deg" },
      { part: "back", property: "kick", old: "4deg below 100 over 50", new: "5deg below 100 over 50" },
    ]);
    expect(output.chosen[0]).toEqual({
      part: "",
      property: "note 2026-11-27",
      old: null,
      new: "Leans | <more>.",
    });
    const values = (file: string) =>
      reckonOutput.parse(JSON.parse(seatwright("reckon", path(file), "--format", "json").out)).values;
    const [before, after] = [values("old.chair"), values("new.chair")];
    expect(output.follows.length).toBeGreaterThan(20);
    for (const { name, old, new: now, unit } of output.follows) {
      if (old !== null && before[name]) expect(before[name]).toEqual({ value: old, unit });
      if (now !== null && after[name]) expect(after[name]).toEqual({ value: now, unit });
    }
    expect(output.found.new.map((finding) => finding.code)).toContain("rake-over-limit");
    const found = output.found.new.find(({ code: of }) => of === "rake-over-limit");
    expect(found?.line).toBeGreaterThan(1);
  });

  it("says so when nothing of the chair differs, and ends with 0", () => {
    const { out, code } = seatwright("compare", path("old.chair"), path("laid-out.chair"));
    expect([code, out]).toEqual([0, expect.stringContaining("only layout, order or comments differ")]);
    const { out: same } = seatwright("compare", path("old.chair"), path("old.chair"), "--format", "markdown");
    expect(same).toContain("the texts are the same");
  });

  it("writes Markdown in which a maker's words stay words", () => {
    const { out } = seatwright("compare", path("old.chair"), path("new.chair"), "--format", "markdown");
    expect(out).toContain("| file | note 2026-11-27 | new: Leans \\| &lt;more>. |");
    expect(out).toContain("#### To make anew");
  });

  it("draws the old chair dashed behind the new, the parts that differ heavier", () => {
    const { out } = seatwright("compare", path("old.chair"), path("new.chair"), "--format", "svg");
    expect(out).toMatch(/<path class="before" data-part="back.left"[^>]* stroke-dasharray/);
    const width = (of: string) =>
      Number(new RegExp(`class="${of}"[^>]* stroke-width="([\\d.]+)"`).exec(out)?.[1]);
    expect(width('outline changed" data-part="back.left')).toBeGreaterThan(
      2 * width('outline" data-part="front.left'),
    );
  });

  it("compares what is not whole as far as it goes, and says so", () => {
    const { out, code } = seatwright("compare", path("old.chair"), path("stool.chair"));
    expect([code, out]).toEqual([1, expect.stringContaining("The new file has errors")]);
    expect(out).toContain("rail");
  });

  it("shortens what follows in text unless all is asked for", () => {
    const [some, all] = [[], ["--all"]].map((more) =>
      seatwright("compare", path("old.chair"), path("new.chair"), ...more),
    );
    expect(some?.out).toMatch(/and \d+ values more that moved less; --all lists them/);
    expect(all?.out).not.toContain("moved less");
    expect(all?.out.split("\n").length).toBeGreaterThan(some?.out.split("\n").length ?? 0);
  });

  it("asks for two chairs that can be read", () => {
    expect(seatwright("compare", path("old.chair")).code).toBe(2);
    expect(seatwright("compare", path("old.chair"), path("gone.chair"))).toMatchObject({
      code: 2,
      error: `${path("gone.chair")}: there is no such file.\n`,
    });
    expect(seatwright("compare", "-", "-").error).toContain("only one");
    expect(seatwright("compare", path("old.chair"), path("new.chair"), "--format", "pdf").code).toBe(2);
  });
});

describe("seatwright facts", () => {
  it("is the same however a text is laid out, and for a copy elsewhere", () => {
    const [one, other] = ["old.chair", "laid-out.chair"].map((file) => seatwright("facts", path(file)));
    expect(one?.out).toBe(other?.out);
    expect(one?.code).toBe(0);
    expect(one?.out).toMatch(/^back kick: 4deg below 100 over 50$/m);
    expect(one?.out).toMatch(/^seat-side end back tenon: square$/m);
    expect(one?.out).toMatch(/^# seat.height: 439.7 mm$/m);
  });

  it("gives lines that cannot be read as they stand", () => {
    expect(seatwright("facts", path("stool.chair")).out).toContain("sectoin 40 x 40");
  });
});
