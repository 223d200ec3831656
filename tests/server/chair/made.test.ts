/**
 * Parts taken over from an earlier version of a file: a study with them is the study without them, to the last bit.
 */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { type OtherFiles, type Study, study } from "../../../server/study.ts";
import { seeded } from "../../grammar/fixtures/random.ts";

const folder = new URL("../../../samples/", import.meta.url);
const textOf = (name: string) => readFileSync(new URL(name, folder), "utf8");
const files: OtherFiles = { resolve: (_from, path) => path, read: (address) => textOf(address) };
/** How many moved texts, of all samples where that is asked for: 1500 are every number of them. */
const runs = Number(process.env.SEATWRIGHT_RUNS ?? 8);
const names = process.env.SEATWRIGHT_RUNS
  ? readdirSync(folder).filter((name) => name.endsWith(".chair"))
  : ["boathouse-mess-chair.chair", "joined-stool.chair"];

/** Lines that are blanked, in all samples each where that is asked for. */
const every = process.env.SEATWRIGHT_RUNS ? 1 : 20;

const put = (text: string, at: number, was: string, is: string) =>
  text.slice(0, at) + is + text.slice(at + was.length);

/** Each text with one number a little larger, taken as it stands in the text. */
function movedTexts(name: string): { name: string; text: string }[] {
  const text = textOf(name);
  return [...text.matchAll(/(?<![\w.-])\d+(?:\.\d+)?/g)].map(({ 0: number, index }) => {
    const more = String(Number((Number(number) * 1.07).toFixed(3)));
    return { name, text: text.slice(0, index) + more + text.slice(index + number.length) };
  });
}

/** All that is known of a chair as text, part by part; where a statement stands in its tree is left out, and so is what was kept. */
function writtenOut({ chair, problems, accepted }: Study): Map<string, string> {
  const left = new Set(["statement", "answers", "made"]);
  const written = (value: unknown): string =>
    JSON.stringify(value, (key, each) => {
      if (left.has(key) || typeof each === "function") return undefined;
      if (each instanceof Map || each instanceof Set) return [...each];
      if (each instanceof Error) return each.message;
      if (typeof each === "number" && (!Number.isFinite(each) || Object.is(each, -0)))
        return `${1 / each} ${each}`;
      return each;
    });
  const { members, joints, values, faults, floor, stance, hanging, endless } = chair;
  return new Map([
    ...[...members].map(([name, member]) => [`part ${name}`, written([member, member.body.edges])] as const),
    ...[...joints].map(([name, joint]) => [`joint ${name}`, written(joint)] as const),
    ["values", written([values, endless])],
    ["stance", written([floor, stance, hanging, faults])],
    ["findings", written([problems, accepted])],
  ]);
}

describe("a study with parts of an earlier version", () => {
  it(`is the same as one without: ${runs} texts with a number moved, one after another`, {
    timeout: 3_600_000,
  }, () => {
    const random = seeded(41);
    const all = names.flatMap(movedTexts);
    const some = all.filter(() => random() * all.length < runs);
    let earlier: Study | undefined;
    for (const [k, { name, text }] of some.entries()) {
      if (name !== some[k - 1]?.name) earlier = study({ text: textOf(name), address: name, files });
      const alone = study({ text, address: name, files });
      const after = study({ text, address: name, files, ...(earlier && { earlier: earlier.chair }) });
      const [expected, found] = [writtenOut(alone), writtenOut(after)];
      const differ = [...expected].filter(([what, said]) => found.get(what) !== said).map(([what]) => what);
      expect(differ, text).toEqual([]);
      expect(found.size).toBe(expected.size);
      const { posts, rails, slats } = after.chair.design;
      for (const [part, member] of after.chair.members) {
        const { stem } = member.id;
        const own = posts.get(stem) ?? rails.get(stem) ?? slats.get(stem);
        if (own) expect(member.design, part).toBe(own);
      }
      earlier = after;
    }
  });

  it(`is the same as one without when a line goes or a word changes in its place: every ${every}th line`, {
    timeout: 3_600_000,
  }, () => {
    for (const name of names) {
      const text = textOf(name);
      const earlier = study({ text, address: name, files });
      const lines = [...text.matchAll(/^ *[a-z].*$/gm)].filter((_, k) => k % every === 0);
      // All else stays where it stands, so that it may be taken over.
      const blanked = lines.map(({ 0: line, index }) => put(text, index, line, " ".repeat(line.length)));
      const changed = [
        ["white-ash", "white-oak"],
        ["moisture 9%", "moisture 8%"],
        ["face inset", "face flush"],
      ].map(([from = "", to = ""]) => text.replace(from, to));
      for (const now of [...blanked, ...changed]) {
        const expected = writtenOut(study({ text: now, address: name, files }));
        const found = writtenOut(study({ text: now, address: name, files, earlier: earlier.chair }));
        expect(
          [...expected].filter(([what, said]) => found.get(what) !== said).map(([what]) => what),
        ).toEqual([]);
        expect(found.size).toBe(expected.size);
      }
    }
  });

  const mess = textOf("boathouse-mess-chair.chair");
  const of = (text: string, earlier?: Study) =>
    study({ text, address: "mess.chair", files, ...(earlier && { earlier: earlier.chair }) });
  const before = of(mess);
  const higher = of(mess.replace("seat-height = 440", "seat-height = 441"), before);

  it("takes over what does not depend on the figure, and builds the rest", () => {
    const bodyOf = ({ chair }: Study, part: string) => chair.members.get(part)?.body;
    for (const part of ["back-slat.1", "crest", "back-lower", "back.left"])
      expect(bodyOf(higher, part), part).toBe(bodyOf(before, part));
    for (const part of ["front.left", "seat-side.left", "seat"])
      expect(bodyOf(higher, part), part).not.toBe(bodyOf(before, part));
  });

  it("takes over a solid seat that nothing is changed of, its lines too", () => {
    const slip = textOf("slip-chair.chair");
    const seatOf = ({ chair }: Study) => chair.seat!.body;
    const first = of(slip);
    const crest = of(slip.replace("up 880", "up 884"), first);
    expect(seatOf(crest)).toBe(seatOf(first));
    expect(seatOf(of(slip.replace("hollow 12", "hollow 13"), crest))).not.toBe(seatOf(first));
  });

  it("takes over nothing that has moved in the text, so that findings stand where they should", () => {
    const later = of(`# One more line.\n${mess}`, before);
    expect(later.chair.members.get("crest")?.design.at.start).toBe(
      before.chair.members.get("crest")!.design.at.start + "# One more line.\n".length,
    );
  });

  it("keeps what one version is built of, not those before", () => {
    let last = before;
    for (let height = 430; height < 450; height++)
      last = of(mess.replace("seat-height = 440", `seat-height = ${height}`), last);
    const count = ({ chair }: Study) => [...chair.made.values()].reduce((sum, some) => sum + some.length, 0);
    expect(count(last)).toBe(count(before));
  });
});
