/**
 * Merging by facts. Its laws are tried on random triples: `npm run prove merge` takes two thousand. node-diff3 is the oracle beside it:
 * where lines merge cleanly and the sides changed different facts, both have to come to one chair.
 */
import { readFileSync } from "node:fs";
import { diff3Merge } from "node-diff3";
import { describe, expect, it } from "vitest";
import { mergeChairs } from "../../../server/compare/merge/merge.ts";
import {
  figureChanged,
  linesOf,
  lineTaken,
  noteAdded,
  pick,
  type Random,
  randomFrom,
  reordered,
  rewritten,
} from "./random-changes.ts";

const sample = readFileSync(new URL("../../../samples/boathouse-mess-chair.chair", import.meta.url), "utf8");
const marks = { ours: "ours", theirs: "theirs", size: 7 };
const merged = (base: string, ours: string, theirs: string) => {
  const found = mergeChairs({ base, ours, theirs }, marks);
  if (found === undefined) throw new Error("not merged by facts");
  return found;
};

const base = `# For the mess.
chair "Stool"
units mm

# Turned later.
post leg pair {
  section 40 x 40
  foot out 150, back 0
  height 440  # to try
}

rail tie {
  across leg
  section 20 x 60
  up 400
}

note 2026-03-14 "First one."
`;

describe("merging by facts", () => {
  it("takes changes of different properties of one block from both sides", () => {
    const ours = base.replace("height 440", "height 450");
    const theirs = base.replace("foot out 150", "foot out 160");
    expect(merged(base, ours, theirs)).toEqual({
      text: base.replace("height 440", "height 450").replace("foot out 150", "foot out 160"),
      conflicts: 0,
    });
  });

  it("does so when one side moved the block or laid it out otherwise", () => {
    const tie = /rail tie \{[^}]*\}\n/.exec(base)![0];
    const moved = base
      .replace(`\n${tie}`, "")
      .replace("# Turned later.", `${tie}\n# Turned later.`)
      .replaceAll("  section", "\tsection");
    const changed = base.replace("up 400", "up 390").replace("height 440", "height 450");
    const { text, conflicts } = merged(base, moved, changed);
    expect(conflicts).toBe(0);
    expect(text).toBe(moved.replace("up 400", "up 390").replace("height 440", "height 450"));
    expect(merged(base, changed, moved).text.indexOf("rail tie")).toBeLessThan(
      merged(base, changed, moved).text.indexOf("post leg"),
    );
  });

  it("marks the one line that both changed, at the size and with the names asked for", () => {
    const { text, conflicts } = mergeChairs(
      {
        base,
        ours: base.replace("440", "450"),
        theirs: base.replace("440", "460").replace("up 400", "up 390"),
      },
      { ours: "HEAD", theirs: "side", size: 9 },
    )!;
    expect(conflicts).toBe(1);
    expect(text).toBe(
      base
        .replace("up 400", "up 390")
        .replace(
          "  height 440  # to try\n",
          "<<<<<<<<< HEAD\n  height 450  # to try\n=========\n  height 460  # to try\n>>>>>>>>> side\n",
        ),
    );
  });

  it("marks what one side took away and the other changed", () => {
    const without = base.replace(/\nrail tie \{[^}]*\}\n/, "");
    const changed = base.replace("up 400", "up 390");
    const { text, conflicts } = merged(base, without, changed);
    expect(conflicts).toBe(1);
    expect(text).toContain("<<<<<<< ours\n=======\nrail tie {");
    expect(text).toContain("up 390");
    expect(merged(base, without, base.replace("440", "441"))).toEqual({
      text: without.replace("440", "441"),
      conflicts: 0,
    });
  });

  it("keeps comments of both, and notes of both by date", () => {
    const ours = base
      .replace("# Turned later.", "# Turned later.\n# By hand.")
      .replace("# to try", "# tried")
      .concat('note 2026-05-02 "Third."\n');
    const theirs = base
      .replace("# Turned later.", "# Turned later.\n# In ash.")
      .replace("up 400", "up 400 # level")
      .concat('note 2026-04-01 "Second."\n');
    const { text, conflicts } = merged(base, ours, theirs);
    expect(conflicts).toBe(0);
    expect(text).toContain("# Turned later.\n# By hand.\n# In ash.\npost leg");
    expect(text).toContain("height 440  # tried");
    expect(text).toContain("up 400 # level");
    expect(text.match(/note [\d-]+/g)).toEqual(["note 2026-03-14", "note 2026-04-01", "note 2026-05-02"]);
  });

  it("follows what one side renamed into what the other changed", () => {
    const ours = base.replaceAll("leg", "upright");
    const theirs = base
      .replace("height 440", "height 450")
      .concat("rail brace {\n  across leg\n  section 20 x 40\n  up 200\n}\n");
    const { text, conflicts } = merged(base, ours, theirs);
    expect(conflicts).toBe(0);
    expect(text).not.toContain("leg");
    expect(text).toContain("post upright pair {\n  section 40 x 40\n  foot out 150, back 0\n  height 450");
    expect(text).toContain("rail brace {\n  across upright");
  });

  it("puts statements that share a line on lines of their own where it has to", () => {
    const short = "post a { section 40 x 40; foot out 150, back 0; height 440 }\n";
    const { text, conflicts } = merged(short, short.replace("440", "450"), short.replace("150", "160"));
    expect(conflicts).toBe(0);
    expect(text).toBe("post a {\n  section 40 x 40\n  foot out 160, back 0\n  height 450\n}\n");
  });

  it("leaves to lines what does not read whole, or is in another unit", () => {
    const broken = base.replace("height 440", "hieght 440");
    expect(
      mergeChairs({ base, ours: broken, theirs: base.replace("up 400", "up 390") }, marks),
    ).toBeUndefined();
    const inches = base.replace("units mm", "units in");
    expect(
      mergeChairs({ base, ours: inches, theirs: base.replace("up 400", "up 390") }, marks),
    ).toBeUndefined();
  });

  it("keeps the line ends of ours", () => {
    const ours = base.replaceAll("\n", "\r\n").replace("440", "450");
    const { text } = merged(base, ours, base.replace("up 400", "up 390"));
    expect(text).toBe(ours.replace("up 400", "up 390"));
  });
});

/** What a text says, one string a fact, read by the tests' own reader of lines. */
const saidIn = (text: string) =>
  linesOf(text)
    .filter(({ word }) => !/^[<=>]{7}/.test(word))
    .map(({ blocks, word, rest }) => [...blocks, word, rest].join(" | ").replace(/\s+/g, " "))
    .sort();

function side(text: string, random: Random): string {
  let made = text;
  for (let n = 1 + Math.floor(random() * 3); n > 0; n--) {
    const change = pick(random, [figureChanged, figureChanged, lineTaken, noteAdded, railAdded])(
      made,
      random,
    );
    made = change?.text ?? made;
  }
  if (random() < 0.3) made = reordered(made, random);
  return random() < 0.3 ? rewritten(made, random) : made;
}

function railAdded(text: string, random: Random) {
  const name = `stretcher-${Math.floor(random() * 1000)}`;
  const up = 100 + Math.floor(random() * 200);
  return { text: `${text.trimEnd()}\n\nrail ${name} {\n  across back\n  section 18 x 40\n  up ${up}\n}\n` };
}

/** Whether a text has the facts it shares with the base in the base's order: a line merge can put a change into the wrong of two moved blocks. */
function keepsOrder(text: string): boolean {
  const facts = (of: string) =>
    linesOf(of).map(({ blocks, word, rest }) => [...blocks, word, rest].join(" | ").replace(/\s+/g, " "));
  const [base, mine] = [facts(sample), facts(text)];
  const common = base.filter((fact) => mine.includes(fact));
  return mine.filter((fact) => base.includes(fact)).every((fact, k) => fact === common[k]);
}

/** The question a fact answers: its block and first word. */
const asks = (fact: string) => fact.split(" | ").slice(0, -1).join(" | ");

const runs = Number(process.env.SEATWRIGHT_RUNS ?? 40);

describe("laws of merging", () => {
  it(`hold for random triples (${runs})`, () => {
    const random = randomFrom(2000);
    let oracle = 0;
    let clean = 0;
    for (let run = 0; run < runs; run++) {
      const [ours, theirs] = [side(sample, random), side(sample, random)];
      const told = { run, ours, theirs };
      const before = saidIn(sample);
      // With itself or with the base nothing changes.
      expect(merged(sample, ours, ours)).toEqual({ text: ours, conflicts: 0 });
      expect(merged(sample, ours, sample)).toEqual({ text: ours, conflicts: 0 });
      expect(merged(sample, sample, theirs)).toEqual({ text: theirs, conflicts: 0 });
      expect({ ...told, said: saidIn(merged(sample, ours, rewritten(sample, random)).text) }).toEqual({
        ...told,
        said: saidIn(ours),
      });
      const [one, other] = [merged(sample, ours, theirs), merged(sample, theirs, ours)];
      // Symmetric but for order.
      expect({ ...told, said: saidIn(one.text), conflicts: one.conflicts }).toEqual({
        ...told,
        said: saidIn(other.text),
        conflicts: other.conflicts,
      });
      // No fact that a side chose is lost; what neither touched is there; what one took away and the other left is not.
      const said = saidIn(one.text);
      const [mine, others] = [saidIn(ours), saidIn(theirs)];
      const lost = [...mine, ...others].filter((fact) => !before.includes(fact) && !said.includes(fact));
      expect({ ...told, lost }).toEqual({ ...told, lost: [] });
      const kept = before.filter((fact) => mine.includes(fact) && others.includes(fact));
      expect({ ...told, gone: kept.filter((fact) => !said.includes(fact)) }).toEqual({ ...told, gone: [] });
      if (one.conflicts === 0) {
        clean++;
        const back = before.filter(
          (fact) => said.includes(fact) && !(mine.includes(fact) && others.includes(fact)),
        );
        expect({ ...told, back }).toEqual({ ...told, back: [] });
      }
      // The same chair as by lines, where lines merge cleanly, no block was moved and the sides changed different facts.
      if (!keepsOrder(ours) || !keepsOrder(theirs)) continue;
      const lines = diff3Merge(ours.split("\n"), sample.split("\n"), theirs.split("\n"));
      if (lines.some(({ conflict }) => conflict)) continue;
      const touched = (side: string[]) =>
        new Set(
          [
            ...side.filter((fact) => !before.includes(fact)),
            ...before.filter((fact) => !side.includes(fact)),
          ].map(asks),
        );
      const theirsTouched = touched(others);
      if ([...touched(mine)].some((question) => theirsTouched.has(question))) continue;
      oracle++;
      const text = lines.flatMap(({ ok }) => ok ?? []).join("\n");
      expect({ ...told, said, conflicts: one.conflicts }).toEqual({
        ...told,
        said: saidIn(text),
        conflicts: 0,
      });
    }
    expect(clean).toBeGreaterThan(runs / 4);
    expect(oracle).toBeGreaterThan(runs / 20);
  }, 3_600_000);
});
