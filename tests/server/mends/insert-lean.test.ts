/**
 * A lean that the legs lack is put in by a mend: the feet go out, the tops stay, and the chair stands.
 */
import { expect, it } from "vitest";
import { mend } from "../../../server/mends/mends.ts";
import { outcomeOf } from "../../proofs/mends-hold.ts";
import { exampleOf } from "../../rule-examples.ts";
import { plainView } from "../editor/view.ts";

it("a chair that tips over sideways is given splay on both sides of the line it goes over", () => {
  const text = exampleOf("tips-sideways")!;
  const before = plainView(text, "file:///proof/chair.chair");
  mend(before.study, before.files);
  const problem = before.study.problems.find(({ code }) => code === "tips-sideways");
  const given = problem?.mends?.find(({ title }) => title.startsWith("Give "));
  expect(given?.title).toMatch(
    /^Give front and back a `splay` of [\d.]+deg foot out, their tops as they are$/,
  );
  const mended = given!.edits.reduceRight(
    (whole, { start, end, text: put }) => whole.slice(0, start) + put + whole.slice(end),
    text,
  );
  const after = plainView(mended, "file:///proof/chair.chair").study;
  expect(after.problems.map(({ code }) => code)).not.toContain("tips-sideways");
  for (const [name, { top }] of before.study.chair.posts) {
    const then = after.chair.posts.get(name)!.top;
    for (const axis of [0, 1, 2] as const) expect(Math.abs(then[axis] - top[axis])).toBeLessThan(0.06);
  }
  expect(outcomeOf({ name: "tips-sideways", text }).failures).toEqual([]);
});
