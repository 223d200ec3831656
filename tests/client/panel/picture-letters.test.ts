/**
 * The pictorial view beside the other views with all that can be laid over them: its flags and its caption on no other words.
 */
import { expect, it } from "vitest";
import { arranged, type Laid } from "../../../client/panel/webview/arrange.ts";
import { flaggedIn } from "../../../client/panel/webview/flag-places.ts";
import { lettered } from "../../../client/panel/webview/lettering/labels.ts";
import { namedIn } from "../../../client/panel/webview/lettering/named.ts";
import { captionLines, pictureFlagged } from "../../../client/panel/webview/lettering/picture-letters.ts";
import { captionDrop, LINE } from "../../../client/panel/webview/lettering/type-scale.ts";
import { areasOf } from "../../../client/panel/webview/pictorial/picture-areas.ts";
import { eyes } from "../../../server/drawing/pictorial/eye.ts";
import { captionOf } from "../../../server/drawing/pictorial/framed.ts";
import { lookAt, middleSeen, type Room, roomOf } from "../../../server/drawing/pictorial/look.ts";
import { overlayNames, type Point } from "../../../server/drawing/sheet.ts";
import type { Fault } from "../../../server/editor/faults.ts";
import { corners, leastWidth, overlap, panelSizes } from "./rooms-of-words.ts";
import { chairs, faultsIn, sheetOf, toldOf, turnableOf } from "./sample-sheets.ts";

interface Words {
  says: string;
  box: readonly Point[];
}

const eye = eyes["front-left"]!;

/** The flags of the picture where they stand on the sheet, px. */
function flagsOf(laid: Laid, room: Room, areas: ReturnType<typeof areasOf>, faults: Fault[]): Words[] {
  const { scale } = laid;
  const { x, y } = laid.pictorial!;
  const [right, up] = middleSeen(room, eye);
  const [left, top] = [room.width / 2 - right, room.height / 2 + up];
  const bounds = { left: -left, right: room.width - left, top: -top, foot: room.height - top };
  return pictureFlagged({ areas, faults, bounds, scale }).map((one) => {
    const at: Point = [one.at[0] + (x + left) * scale, one.at[1] + (y + top) * scale];
    return { says: String(one.lines), box: corners({ ...one, at }) };
  });
}

function captionOn({ scale, pictorial, figures }: Laid, room: Room, words: string): Words[] {
  const { x, y } = pictorial!;
  const middle = (x + room.width / 2) * scale;
  const first = (y + room.height) * scale + captionDrop(figures);
  return captionLines(words, room.width * scale, figures).map((says, k) => {
    const half = leastWidth(says, figures) / 2;
    const foot = first + k * LINE * figures;
    return {
      says,
      box: [
        [middle - half, foot - 0.7 * figures],
        [middle + half, foot],
      ],
    };
  });
}

// Each sample in one of the sizes: a picture of a chair takes as long as all of its lettering.
const cases = chairs.map(([path], k) => [path, panelSizes[k % panelSizes.length]!] as const);

it.each(cases)(
  "the pictorial view of %s keeps its flags and caption to itself in %j",
  (path, [width, height]) => {
    const sheet = sheetOf(path, overlayNames);
    const faults = faultsIn(sheet);
    const turnable = turnableOf(path);
    for (const apart of [0, 1]) {
      const room = roomOf(turnable, { apart: apart > 0 });
      const areas = areasOf(lookAt(turnable, { eye, apart }));
      for (const look of ["all", "pictorial"] as const) {
        const laid = arranged(sheet, { room: { width, height }, look, pictorial: room });
        const flagged = Object.fromEntries(
          laid.views.map(({ name, areas: own }) => [name, flaggedIn(own, faults)]),
        );
        const named = namedIn(laid.views, toldOf(path));
        const others: Words[] = lettered(laid, { scale: laid.scale, flagged, named }).map((one) => ({
          says: String(one.lines),
          box: corners(one),
        }));
        const flags = flagsOf(laid, room, areas, faults);
        // A low panel that shows all views has no room for flags beside so small a picture.
        if (look === "pictorial") expect(flags.length).toBeGreaterThan(0);
        const own = [...flags, ...captionOn(laid, room, captionOf(turnable, { eye, apart }))];
        for (const [k, { says, box }] of own.entries()) {
          const on = [...others, ...own.slice(k + 1)].find((other) => overlap(box, other.box));
          expect(on ? `${says} on ${on.says}` : "", `${look}, ${apart}`).toBe("");
        }
      }
    }
  },
);
