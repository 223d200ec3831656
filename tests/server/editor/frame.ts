import type { View } from "../../../server/editor/view.ts";
import { address, plainView } from "./view.ts";

/** A frame with every kind of thing in it, to ask questions of. */
export const frame = `# For the boathouse mess room.
chair "Mess frame"
units mm
let seat-height = 440 within 420 to 470
let top = seat-height + 490

# Every rail of the seat.
joint rail-tenon {
  tenon thick 1/3 of rail, long 25
  shoulders top 10, bottom 6
  mitre
}
# Stands plumb.
post front pair {
  section 40 x 40
  foot out 205, back 20
  height seat-height - 12
}

post back pair {
  section 36 x 36
  foot out 175, back 452
  height top
  rake 6deg above 475
  splay 2deg
}

rail seat-front {
  across front
  section 22 x 70
  up seat-height - 12
  joined rail-tenon
}

rail seat-side pair {
  from front to back
  section 22 x 70
  up seat-height - 12
  joined rail-tenon
  end back {
    tenon square
  }
}

rail seat-back {
  across back
  section 22 x 70
  up seat-height - 12
  joined rail-tenon
}

seat drop-in {
  on seat-front, seat-side, seat-back
  thick 40
}

angle back-rake {
  between seat, back above 530
  limit 4deg to 9deg
}

require seat-side.left.front.edge-bevel from 80deg to 90deg
require seat.slope from -1deg to 3deg
`;

export interface Placed {
  view: View;
  offset: number;
  text: string;
}

/** The frame with the cursor where `|` stands in `marked`, a piece of its text that it holds once or more (the first counts). */
export function at(marked: string, text = frame, files: Record<string, string> = {}): Placed {
  const piece = marked.replace("|", "");
  const start = text.indexOf(piece);
  if (start < 0) throw new Error(`the text has no "${piece}"`);
  return { view: plainView(text, address, files), offset: start + marked.indexOf("|"), text };
}

/** The frame with one piece of its text put otherwise; a cursor `|` in the new piece is taken out. */
export function changed(from: string, to: string, text = frame): Placed {
  const start = text.indexOf(from);
  if (start < 0) throw new Error(`the text has no "${from}"`);
  const cursor = to.indexOf("|");
  const piece = to.replace("|", "");
  const now = text.slice(0, start) + piece + text.slice(start + from.length);
  return { view: plainView(now, address), offset: start + Math.max(0, cursor), text: now };
}

/** Text edits put into a text; they must not overlap. */
export function edited(
  view: View,
  edits: readonly { range: { start: Position; end: Position }; newText: string }[],
): string {
  const { document } = view;
  const sorted = [...edits].sort(
    (a, b) => document.offsetAt(b.range.start) - document.offsetAt(a.range.start),
  );
  let text = document.getText();
  for (const { range, newText } of sorted)
    text = text.slice(0, document.offsetAt(range.start)) + newText + text.slice(document.offsetAt(range.end));
  return text;
}

interface Position {
  line: number;
  character: number;
}
