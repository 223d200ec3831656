/**
 * What a mend tells of movement is what the chair then does, as both are printed.
 */
import { expect, it } from "vitest";
import { mend } from "../../../server/mends/mends.ts";
import { samples } from "../../proofs/mended-texts.ts";
import { outcomeOf } from "../../proofs/mends-hold.ts";
import { plainView } from "../editor/view.ts";

const mess = samples["boathouse-mess-chair.chair"]!;

it.each([
  [
    "a rake over the limit",
    mess.replace("let back-lean = 6.5deg", "let back-lean = 9deg"),
    /which moves its top [\d.]+ mm (back|forward)/,
  ],
  ["a requirement not met", `${mess}require seat.height from 445 to 450\n`, /: seat\.height is then 4\d\d/],
])("%s", (name, text, told) => {
  const { study, files } = plainView(text, "file:///proof/chair.chair", { ...samples });
  mend(study, files);
  const titles = study.problems.flatMap(({ mends = [] }) => mends.map(({ title }) => title));
  expect(titles.join("\n")).toMatch(told);
  expect(outcomeOf({ name, text }).failures).toEqual([]);
});
