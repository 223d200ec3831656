/**
 * `npm run prove lettering sheets`: every page of the sheets of every sample, on each paper, in its own units and in the others: letters as large
 * as there is room for, no words on words, nothing outside a border.
 */
import type { Chair } from "../../server/chair/chair.ts";
import { markoutPages } from "../../server/drawing/markout/pages.ts";
import { type PaperName, papers } from "../../server/drawing/markout/paper.ts";
import { chairOf, chairs } from "../client/panel/sample-sheets.ts";
import { faultsOn } from "../server/drawing/markout/page-faults.ts";

const inOthers = (chair: Chair): Chair => ({
  ...chair,
  design: { ...chair.design, units: chair.design.units === "in" ? "mm" : "in" },
});

let pages = 0;
const failures: string[] = [];
for (const [path] of chairs) {
  const chair = chairOf(path);
  for (const paper of Object.keys(papers) as PaperName[])
    for (const each of [chair, inOthers(chair)])
      for (const page of markoutPages(each, { paper, text: "0123abcd" })) {
        pages++;
        for (const fault of faultsOn(page))
          failures.push(`${path}, ${paper}, ${each.design.units}: ${fault}`);
      }
  console.error(`${path}: ${pages} pages, ${failures.length} faults`);
}
for (const line of failures) console.log(line);
console.log(`${pages} pages of the sheets of ${chairs.length} chairs, ${failures.length} faults`);
process.exitCode = pages > 0 && failures.length === 0 ? 0 : 1;
