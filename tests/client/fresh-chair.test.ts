/**
 * What *New Chair* offers: every sample that stands for a kind of chair, and a bare one, each a text of its own.
 */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { bareChair, fileNameFor, freshChair, kindsOfChair, titleOf } from "../../client/fresh-chair.ts";
import { resolveAddress } from "../../server/main/addresses.ts";
import { type OtherFiles, study } from "../../server/study.ts";
import { root } from "../house/project-files.ts";

const samples = join(root, "samples");
const textOf = (name: string) => readFileSync(join(samples, name), "utf8");
const nowhere: OtherFiles = { resolve: resolveAddress, read: () => undefined };
const beside = { resolve: resolveAddress, read: (address: string) => textOf(address.replace(/^.*\//, "")) };
const studied = (text: string, files = nowhere) => study({ text, address: "file:///mess/new.chair", files });

describe("a new chair", () => {
  it("may be begun from every sample that is a chair of its own", () => {
    const own = readdirSync(samples).filter((name) => {
      const text = name.endsWith(".chair") ? textOf(name) : "";
      return /^chair "/m.test(text) && !/^like "/m.test(text);
    });
    expect(kindsOfChair.map(({ sample }) => `${sample}.chair`).sort()).toEqual(own.sort());
  });

  it.each(kindsOfChair)("from $sample is whole without other files, and the same chair", ({ sample }) => {
    const text = textOf(`${sample}.chair`);
    const fresh = freshChair(text, (name) => textOf(name), "2026-11-27");
    expect(fresh).not.toMatch(/^use /m);
    expect(fresh.match(/^note .*$/gm)).toEqual([`note 2026-11-27 "Begun from: ${titleOf(text)}."`]);
    expect(fresh).toMatch(/^(chair|units) /);
    const [was, now] = [studied(text, beside), studied(fresh)];
    const found = (of: typeof was) => of.problems.map(({ code, subject }) => `${code} ${subject}`).sort();
    expect(found(now)).toEqual(found(was));
    const values = (of: typeof was) => [...of.chair.values].map(([name, { number }]) => [name, number]);
    expect(values(now)).toEqual(values(was));
  });

  it("may be a bare one, in which nothing is found", () => {
    const fresh = freshChair(bareChair, () => undefined, "2026-11-27");
    expect(studied(fresh).problems).toEqual([]);
    expect(studied(fresh).chair.seat).toBeDefined();
  });

  it("is named by its title", () => {
    expect(["Mess-room armchair", 'Å "b" / c', "…", "Café № 2"].map(fileNameFor)).toEqual([
      "mess-room-armchair.chair",
      "a-b-c.chair",
      "chair.chair",
      "cafe-no-2.chair",
    ]);
  });
});
