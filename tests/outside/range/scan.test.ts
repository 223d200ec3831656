/**
 * Ranges against a plain scan. All samples and random chairs at 400 places are `npm run prove ranges`; here a share of them.
 */
import { expect, it } from "vitest";
import { samples } from "../../server/range/files.ts";
import { boundedCases, randomCases, strays } from "./scan.ts";

const cases = [...boundedCases("joined-stool.chair", samples["joined-stool.chair"]!), ...randomCases(1)];

it.each(cases)(
  "$called: $choice has the findings of a scan",
  (each) => {
    expect(strays(each, 40)).toEqual([]);
  },
  300_000,
);
