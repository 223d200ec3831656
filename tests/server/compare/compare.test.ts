import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { compare } from "../../../server/compare/compare.ts";
import { reportOf } from "../../../server/compare/report.ts";
import { resolveAddress } from "../../../server/main/addresses.ts";
import { study } from "../../../server/study.ts";

const sample = readFileSync(new URL("../../../samples/boathouse-mess-chair.chair", import.meta.url), "utf8");

type Others = Record<string, string>;

function sideOf(text: string, others: Others = {}) {
  const files = {
    resolve: resolveAddress,
    read: (address: string) => others[address.slice(address.lastIndexOf("/") + 1)],
  };
  return { study: study({ text, address: "file:///mess/here.chair", files }), files };
}

const between = (old: string, now: string, others: [Others, Others] = [{}, {}]) =>
  compare(sideOf(old, others[0]), sideOf(now, others[1]));

const facts = (comparison: ReturnType<typeof compare>) =>
  comparison.chosen.map(({ part, property, old, new: now, was }) => [
    part,
    property,
    old,
    now,
    ...(was === undefined ? [] : [was]),
  ]);

describe("what was chosen", () => {
  it("is a fact by part and property, old and new", () => {
    const { chosen, same } = between(sample, sample.replace("kick 4deg", "kick 5deg"));
    expect(chosen).toMatchObject([
      { part: "back", property: "kick", old: "4deg below 100 over 50", new: "5deg below 100 over 50" },
    ]);
    expect(same).toBe(false);
  });

  it("is nothing where the same is said otherwise", () => {
    const written = sample
      .replace("units mm", "units cm")
      .replace(/(?<![\w./"-])(\d+(?:\.\d+)?)(?= x| *\n|,)/g, "$1mm");
    expect(
      facts(
        between(
          "units mm\npost a {\n  foot out 20, back 30\n}\n",
          "units mm\npost a {\n  foot back 30mm, out 2cm\n}\n",
        ),
      ),
    ).toEqual([]);
    expect(
      facts(
        between(sample, sample.replace("6.5deg", "6.50deg").replace("section 40 x 40", "section (40) x 4cm")),
      ),
    ).toEqual([]);
    expect(written).not.toBe(sample);
  });

  it("knows a renamed part, value and joint again, with all that names them", () => {
    const renamed = sample
      .replaceAll("seat-side", "flank")
      .replace(/back-lean(?! 5)/g, "lean")
      .replaceAll("rail-tenon", "long-tenon");
    const { follows, anew, ...rest } = between(sample, renamed.replace("fall 15", "fall 16"));
    expect(facts({ follows, anew, ...rest })).toEqual([
      ["lean", "name", "back-lean", "lean", "back-lean"],
      ["long-tenon", "name", "rail-tenon", "long-tenon", "rail-tenon"],
      ["flank", "name", "seat-side", "flank", "seat-side"],
      ["side-stretcher", "fall", "15", "16"],
    ]);
    expect(follows.map(({ name }) => name).filter((name) => name.startsWith("flank."))).toEqual([]);
  });

  it("tells notes, acceptances and requirements with what they say", () => {
    const now = sample
      .replace("at most 5.5kg", "at most 5kg")
      .replace(/because "[^"]*"/, 'because "dry"')
      .concat('note 2026-11-27 "Arms next."\n');
    const told = facts(between(sample, now));
    expect(told).toContainEqual(["", "note 2026-11-27", null, "Arms next."]);
    expect(told.filter(([, property]) => String(property).startsWith("accept"))).toHaveLength(
      /because/.test(sample) ? 1 : 0,
    );
  });

  it("lists every fact of a part that is new or gone", () => {
    const brace = "rail brace {\n  across back\n  section 18 x 40\n  up 300\n  joined rail-tenon\n}\n";
    const added = between(sample, sample + brace);
    expect(facts(added)).toEqual([
      ["brace", "kind", null, "rail"],
      ["brace", "across", null, "back"],
      ["brace", "section", null, "18 x 40"],
      ["brace", "up", null, "300"],
      ["brace", "joined", null, "rail-tenon"],
    ]);
    expect(added.anew).toContainEqual({
      part: "brace",
      is: "added",
      why: "new part: make it, with its sheet",
    });
    expect(
      facts(between(sample + brace, sample)).map(([part, property, old, now]) => [part, property, now, old]),
    ).toEqual(facts(added).map(([part, property, old, now]) => [part, property, old, now]));
  });

  it("shows the word where another answers the same question", () => {
    const told = facts(
      between("post a {\n  foot out 20, back 30\n}\n", "post a {\n  top out 20, back 30\n}\n"),
    );
    expect(told).toEqual([["a", "top", "foot out 20, back 30", "top out 20, back 30"]]);
  });

  it("says in which unit, where the same figure stands in another", () => {
    const [units, let_] = facts(between("units mm\nlet a = 20 + 1\n", "units in\nlet a = 20 + 1\n"));
    expect(units).toEqual(["", "units", "mm", "in"]);
    expect(let_).toEqual(["a", "let", "20 + 1 (in mm)", "20 + 1 (in in)"]);
  });

  it("goes through what the file starts from and uses, as it is on that side", () => {
    const child = 'like "parent.chair"\n';
    const told = between(child, child, [
      { "parent.chair": sample },
      { "parent.chair": sample.replace("fall 15", "fall 18") },
    ]);
    expect(facts(told)).toEqual([["side-stretcher", "fall", "15", "18"]]);
    expect(told.anew.map(({ part }) => part)).toContain("side-stretcher.left");
  });
});

describe("what follows", () => {
  const now = sample.replace("kick 4deg", "kick 5deg");

  it("is every value whose print is another, the largest of each kind first", () => {
    const { follows } = between(sample, now);
    const [one, other] = [sideOf(sample), sideOf(now)].map(({ study: { chair } }) => chair.values);
    for (const { name, old, new: is } of follows) {
      expect([name, old]).toEqual([name, one!.get(name)?.number]);
      expect([name, is]).toEqual([name, other!.get(name)?.number]);
    }
    const told = new Set(follows.map(({ name }) => name));
    for (const [name, { number, dimension }] of other!) {
      const by = Math.abs(number - one!.get(name)!.number);
      // Printed to a tenth of a millimetre and of a degree.
      if (dimension === "length" && by > 0.1) expect(told).toContain(name);
      if (dimension === "angle" && by > 0.1 * (Math.PI / 180)) expect(told).toContain(name);
      if (by < 1e-9) expect(told).not.toContain(name);
    }
    const lengths = follows
      .filter(({ dimension }) => dimension === "length")
      .map(({ old, new: is }) => Math.abs(is! - old!));
    expect(lengths).toEqual([...lengths].sort((a, b) => b - a));
  });

  it("is the other way about when the sides are changed", () => {
    const there = between(sample, now);
    const back = between(now, sample);
    const byName = (a: { name: string }, b: { name: string }) => (a.name < b.name ? -1 : 1);
    const turned = back.follows.map(({ old, new: is, ...rest }) => ({ ...rest, old: is, new: old }));
    expect(turned.sort(byName)).toEqual([...there.follows].sort(byName));
    expect(back.found.new.map(({ code }) => code)).toEqual(there.found.gone.map(({ code }) => code));
    const parts = (of: typeof there) => of.anew.map(({ part, is }) => `${part} ${is}`).sort();
    expect(parts(back)).toEqual(parts(there));
  });

  it("is counted where it is too much to show, and never shortened for programs", () => {
    const comparison = between(sample, now);
    const [, follows] = reportOf(comparison, { units: { old: "mm", new: "mm" }, most: 3 });
    expect(follows?.rows).toHaveLength(3);
    expect(follows?.more).toBe(comparison.follows.length - 3);
  });
});

describe("what is found", () => {
  const raked = (lean: string) => sample.replace("let back-lean = 6.5deg", `let back-lean = ${lean}`);

  it("is new, worse, better or gone", () => {
    const codes = (problems: readonly { code: string }[]) => problems.map(({ code }) => code);
    const [well, bad, worse] = [sample, raked("12deg"), raked("14deg")];
    const fresh = between(well, bad).found;
    expect(codes(fresh.new)).toContain("rake-over-limit");
    expect(codes(between(bad, well).found.gone)).toContain("rake-over-limit");
    const further = between(bad, worse).found.changed.find(({ new: now }) => now.code === "rake-over-limit");
    expect(further).toMatchObject({ worse: true });
    const nearer = between(worse, bad).found.changed.find(({ new: now }) => now.code === "rake-over-limit");
    expect(nearer).toMatchObject({ worse: false });
  });
});

describe("what has to be made anew", () => {
  it("tells parts that changed, how, from parts that only moved", () => {
    const { anew } = between(sample, sample.replace("up 190", "up 200"));
    const of = (part: string) => anew.find((each) => each.part === part);
    expect(of("front.left")).toMatchObject({ is: "changed" });
    expect(of("front.left")?.why).toMatch(/1 mortise elsewhere, by up to (9\.9|10) mm; sheet/);
    expect(of("crest")).toBeUndefined();
    const moved = between(sample, sample.replace("foot out 175, back 452", "foot out 175, back 462")).anew;
    expect(moved.find(({ part }) => part === "crest")).toMatchObject({ is: "moved" });
    expect(moved.find(({ part }) => part === "seat-side.left")).toMatchObject({ is: "changed" });
    expect(moved.find(({ part }) => part === "seat-side.left")?.why).toMatch(/mm longer.*between shoulders/);
  });

  it("tells other timber", () => {
    const { anew } = between(sample, sample.replace("timber white-ash", "timber beech"));
    expect(anew.find(({ part }) => part === "crest")?.why).toBe("timber white-ash → beech; stock is another");
    expect(anew.at(-1)?.why).toMatch(/^stock list and plan of boards stale: \d+ parts have other blanks$/);
  });

  it("tells which blanks are other ones, and that a plan is stale where boards, allowances or the number differ", () => {
    const deeper = between(sample, sample.replace("section 20 x 90", "section 20 x 100")).anew;
    expect(deeper.find(({ part }) => part === "crest")?.why).toContain("10 mm wider; ");
    const blank = /blank [\d.]+ mm x ([\d.]+) mm x [\d.]+ mm → [\d.]+ mm x ([\d.]+) mm/.exec(
      deeper.find(({ part }) => part === "crest")?.why ?? "",
    );
    expect(Number(blank?.[2]) - Number(blank?.[1])).toBeCloseTo(10, 6);
    const eight = between(sample, `${sample}make 8\nwaste {\n  saw 5\n}\n`).anew;
    expect(eight.map(({ part, why }) => [part, why])).toEqual([
      [
        "",
        expect.stringMatching(
          /^stock list and plan of boards stale: 1 → 8 chairs, other allowances, blanks 0\.\d+ m³ → 0\.\d+ m³ in all$/,
        ),
      ],
    ]);
    expect(between(sample, sample.replace("below 100 over 50", "below 100 over 50 # said")).anew).toEqual([]);
  });
});

describe("texts that are not whole", () => {
  it.each([
    ["nothing", ""],
    ["half a chair", sample.slice(0, 900)],
    ["a word without sense", `${sample}\nrial x {\n`],
    ["no text at all", "\u0000 {{{ ]"],
  ])("are compared as far as they go: %s", (_, text) => {
    const { same, faulty } = between(sample, text);
    expect(same).toBe(false);
    if (text !== "") expect(faulty).toEqual({ old: false, new: true });
  });
});
