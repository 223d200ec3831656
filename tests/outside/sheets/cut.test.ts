/**
 * The sheets are proved by cutting from them: a cutter that reads nothing but the printed figures makes every part of every sample with
 * manifold-3d 3.5.4 (Apache-2.0), an independent library of exact set operations on solids, and what it makes is the part: nothing is left
 * standing and nothing cut away by more than 0.3 mm, in inch files by more than a step.
 */
import { describe, expect, it } from "vitest";
import { sampleNames, studiedSample } from "../samples.ts";
import { allowed, readSheets, straysOf } from "./proof.ts";

describe.each(sampleNames)("the sheets of %s", (name) => {
  it("are enough to cut each part by", { timeout: 120_000 }, () => {
    const { chair } = studiedSample(name);
    const sheets = readSheets(chair);
    const strays = straysOf(chair, sheets);
    expect(strays.length).toBeGreaterThan(3);
    expect(strays.filter(({ proud, missing }) => Math.max(proud, missing) > allowed(sheets))).toEqual([]);
  });
});
