/**
 * `npm run prove lettering`: words on words on the drawing, over every sample, 35 sizes of panel, each choice of overlays, with names and
 * flags and without, every view looked at alone and all together.
 *
 *     node .build/run.mjs prove lettering [SHARE]
 *
 * SHARE such as 2/20: every 20th panel, from the second.
 */
import { arranged } from "../../client/panel/webview/arrange.ts";
import { flaggedIn } from "../../client/panel/webview/flag-places.ts";
import { lettered } from "../../client/panel/webview/lettering/labels.ts";
import { namedIn } from "../../client/panel/webview/lettering/named.ts";
import { overlayNames } from "../../server/drawing/sheet.ts";
import { corners, overlap } from "../client/panel/rooms-of-words.ts";
import { chairs, faultsIn, sheetOf, toldOf } from "../client/panel/sample-sheets.ts";

const widths = [360, 480, 600, 760, 960, 1280, 1600];
const heights = [400, 520, 640, 800, 1000];
const looks = ["all", "front", "side", "plan"] as const;
const overlays = Array.from({ length: 2 ** overlayNames.length }, (_, mask) =>
  overlayNames.filter((_name, k) => mask & (1 << k)),
);

const [first = 1, every = 1] = (process.argv.slice(2).find((each) => each.includes("/")) ?? "1/1")
  .split("/")
  .map(Number);
let panel = 0;
let drawings = 0;
const failures: string[] = [];
for (const [path] of chairs) {
  const told = toldOf(path);
  for (const shown of overlays) {
    const sheet = sheetOf(path, shown);
    const faults = faultsIn(sheet);
    for (const width of widths)
      for (const height of heights) {
        if (panel++ % every !== first % every) continue;
        for (const look of looks) {
          const laid = arranged(sheet, { room: { width, height }, look });
          for (const named of [false, true]) {
            drawings++;
            const placed = lettered(laid, {
              scale: laid.scale,
              flagged: Object.fromEntries(
                laid.views.map(({ name, areas }) => [name, named ? flaggedIn(areas, faults) : []]),
              ),
              ...(named && { named: namedIn(laid.views, told) }),
            });
            const boxes = placed.map(corners);
            for (const [k, box] of boxes.entries()) {
              const on = boxes.findIndex((other, n) => n > k && overlap(box, other));
              if (on >= 0)
                failures.push(
                  `${path}, ${width} × ${height}, ${look}, ${shown.join(" and ") || "bare"}${named ? ", named" : ""}: ${placed[k]?.lines} on ${placed[on]?.lines}`,
                );
            }
          }
        }
      }
  }
  console.error(`${path}: ${drawings} drawings, ${failures.length} with words on words`);
}
for (const line of failures) console.log(line);
console.log(`${drawings} drawings of ${chairs.length} chairs, ${failures.length} times words on words`);
process.exitCode = failures.length === 0 ? 0 : 1;
