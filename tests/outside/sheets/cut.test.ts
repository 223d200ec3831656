/**
 * The sheets are proved by cutting from them, out of the stock that they name: a cutter that reads nothing but the printed figures makes every part of every sample with
 * manifold-3d 3.5.4 (Apache-2.0), an independent library of exact set operations on solids, and what it makes is the part: nothing is left
 * standing and nothing cut away by more than 0.3 mm, in inch files by more than a step. Then the pieces are put together by their joints: they make the chair.
 */
import { fileURLToPath } from "node:url";
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, it } from "vitest";
import type { Chair } from "../../../server/chair/chair.ts";
import type { Sheets } from "../../../server/drawing/markout/sheet/sheet.ts";
import markoutSchema from "../../../server/main/cli/schema/markout.schema.json" with { type: "json" };
import { whyNot } from "../../../server/main/markout/refusal.ts";
import { studied } from "../../check.ts";
import { ranInTime } from "../../server/main/cli/bench.ts";
import { studiedSample } from "../samples.ts";
import { assembled } from "./assembled.ts";
import { overlapsOf } from "./overlaps.ts";
import { allowed, breaksOut, farthestOut, readSheets, stepOf, straysOf } from "./proof.ts";
import { randomTexts, samplesOfShare, toCut, whole } from "./share.ts";

/** The schema that is published with the command line, held by Ajv 8 (MIT). */
const fitsSchema = new Ajv2020({ strict: false }).compile(markoutSchema);

/** In `npm test` every eighth part of the samples. */
const EVERY = whole ? 1 : 8;

describe.each(samplesOfShare)("the sheets of %s", (name) => {
  const { chair } = studiedSample(name);
  const sheets = readSheets(chair);

  it("are enough to cut each part by", { timeout: 3_600_000 }, () => {
    // A stool has few parts: three of them at least are cut.
    const own = sheets.parts.filter(({ marks }) => marks[0]?.kind !== "mirror");
    const every = Math.max(1, Math.min(EVERY, Math.floor(own.length / 3)));
    const strays = straysOf(chair, sheets, every);
    expect(strays.length).toBeGreaterThan(2);
    expect(strays.filter((stray) => farthestOut(stray) > allowed(sheets))).toEqual([]);
  });

  it("are what the command line writes, by its published schema", async () => {
    const file = fileURLToPath(new URL(`../../../samples/${name}.chair`, import.meta.url));
    const written: unknown = JSON.parse((await ranInTime("markout", file, "--format", "json")).out);
    expect(fitsSchema(written), JSON.stringify(fitsSchema.errors)).toBe(true);
    expect(written).toEqual(sheets);
  });

  it("leave no part out", () => {
    const named = sheets.parts.flatMap((part) => part.name.split(", "));
    // A woven seat is of no wood.
    const wooden = [...chair.members.values()].filter(
      (member) => member.is !== "seat" || member.design.kind !== "woven",
    );
    expect(named.sort()).toEqual(wooden.map((member) => member.name).sort());
    for (const { number, name: all } of sheets.parts) expect(all.split(", ")).toHaveLength(number);
  });

  it("leave no wood of one piece in another", { timeout: 3_600_000 }, () => {
    const overlaps = overlapsOf(chair, sheets, whole ? 1 : 20);
    expect(overlaps.length).toBeGreaterThan(0);
    // Either of the two may stray.
    expect(overlaps.filter(({ by }) => by > 2 * allowed(sheets))).toEqual([]);
  });

  it("bring all parts together", () => {
    const { joined, apart, unmet } = together(chair, sheets);
    expect(joined).toBeGreaterThan(4);
    expect({ apart, unmet }).toEqual({ apart: [], unmet: [] });
  });
});

/** Put together, what lies farther off than is allowed: a part from where the chair has it, a tenon from its mortise. */
function together(chair: Chair, sheets: Sheets) {
  const { strays, gaps, unmet } = assembled(chair, sheets);
  // Two printed places, each rounded to half a step at most, hold a part.
  const place = (lever: number) => allowed(sheets) + stepOf(sheets) * Math.max(1, lever);
  return {
    joined: gaps.length,
    apart: [
      ...strays.filter(({ by, lever }) => by > place(lever)),
      ...gaps.filter(({ by }) => by > allowed(sheets)),
    ],
    unmet,
  };
}

it("a padded seat comes out of the stock that its sheet names, whatever share of the parts is cut", () => {
  const { chair } = studiedSample("small-mess-chair");
  const sheets = readSheets(chair);
  const [seat] = straysOf(chair, { ...sheets, parts: sheets.parts.filter(({ name }) => name === "seat") });
  expect(seat?.over).toBeLessThan(allowed(sheets));
});

it("the sheets of random chairs are enough to cut each part by and bring all together", {
  timeout: 36_000_000,
}, async () => {
  let parts = 0;
  let made = 0;
  let worst = { part: "", by: 0 };
  const failed: string[] = [];
  const tell = (k: number, what: string) => {
    failed.push(what);
    if (whole) console.log(`chair ${k}, ${what}`);
  };
  const texts = randomTexts();
  for (const [k, text] of texts.entries()) {
    if (made === toCut) break;
    const { chair, problems } = studied(text);
    // No sheets are made of a chair with errors, such as mortises that run into each other; there is no face to set out on what breaks out.
    const errors = problems.filter(({ severity }) => severity === "error").length;
    if (whyNot(chair, errors) !== undefined || breaksOut(chair)) continue;
    made++;
    const sheets = readSheets(chair);
    const { apart, unmet } = together(chair, sheets);
    if (apart.length + unmet.length > 0) tell(k, `apart: ${JSON.stringify(apart)} ${unmet.join()}\n${text}`);
    for (const stray of straysOf(chair, sheets)) {
      const { part, proud, missing, over = 0 } = stray;
      const by = farthestOut(stray);
      if (by > worst.by) worst = { part, by };
      parts++;
      if (by <= allowed(sheets)) continue;
      tell(
        k,
        `${part}: ${proud.toFixed(2)} proud, ${missing.toFixed(2)} missing, ${over.toFixed(2)} over its stock\n${text}`,
      );
    }
    if (whole && made % 10 === 9) console.log(`${made} of ${toCut} random chairs, ${failed.length} failures`);
    // What is written reaches the terminal between two chairs.
    await new Promise(setImmediate);
  }
  expect(failed).toEqual([]);
  expect(made).toBe(toCut);
  expect(parts).toBeGreaterThan(3);
  console.log(
    `${parts} parts of ${made} random chairs; the worst strays ${worst.by.toFixed(2)} mm (${worst.part})`,
  );
});
