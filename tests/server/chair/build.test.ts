import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { buildChair } from "../../../server/chair/build.ts";
import type { Chair } from "../../../server/chair/chair.ts";
import type { Design } from "../../../server/design/design.ts";
import { shareName, shareOf, time } from "../../share.ts";
import { settled } from "./from-text.ts";

const sample = (name: string) =>
  readFileSync(new URL(`../../../samples/${name}.chair`, import.meta.url), "utf8");

/** No stage failed, and every number is one. */
function sound(chair: Chair, what: string): void {
  const failed = chair.faults.filter(
    (fault) => "message" in fault && fault.message.includes("could not be worked out"),
  );
  expect(failed, what).toEqual([]);
  for (const worked of chair.values.values()) {
    expect(Number.isFinite(worked.number), `${worked.name} of ${what}`).toBe(true);
  }
  for (const joint of chair.joints.values()) {
    const numbers = [joint.volume, joint.mortiseWall, joint.depthThere, joint.glueArea, ...joint.root];
    expect(numbers.every(Number.isFinite), `${joint.name} of ${what}`).toBe(true);
  }
}

/** Of the lines of a chair, and of its numbers, one in so many is changed in `npm test`. */
const ONE_IN = 4;

describe(`a text with a line taken out, ${shareName(ONE_IN)}`, { timeout: time }, () => {
  for (const name of ["boathouse-mess-chair", "landing-bench"]) {
    test(name, () => {
      const lines = sample(name).split("\n");
      for (const k of shareOf([...lines.keys()], ONE_IN)) {
        const { chair } = settled(lines.filter((_, at) => at !== k).join("\n"));
        sound(chair, `${name} without line ${k + 1}: ${lines[k]}`);
      }
    });
  }
});

describe(`numbers no maker would write, ${shareName(ONE_IN)}`, { timeout: time }, () => {
  const text = sample("boathouse-mess-chair");
  const numbers = [...text.matchAll(/(?<=[ ,])\d+(\.\d+)?(?=(deg|%|kg)?\b)/g)];

  test("are survived", () => {
    for (const [k, match] of shareOf([...numbers.entries()], ONE_IN)) {
      const odd = ["0", "100000", "0.0001", "89"][k % 4]!;
      const changed = text.slice(0, match.index) + odd + text.slice(match.index + match[0].length);
      sound(settled(changed).chair, `${odd} for ${match[0]} at ${match.index}`);
    }
    expect(numbers.length).toBeGreaterThan(50);
  });
});

test("a design that breaks the builder costs a fault, not an exception", () => {
  const { design } = settled(sample("boathouse-mess-chair"));
  const broken = { ...design, posts: undefined, trims: undefined } as unknown as Design;
  const chair = buildChair(broken);
  expect(chair.posts.size).toBe(0);
  expect(chair.faults.some((fault) => fault.is === "not-buildable")).toBe(true);
});
