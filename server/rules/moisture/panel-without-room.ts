import type { Fix } from "../../../grammar/problem.ts";
import { sentence } from "../../../grammar/sentences/sentence.ts";
import type { SeatSurface } from "../../chair/chair.ts";
import { addedLine } from "../machinery/add-line.ts";
import { placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, lengthOrMore, SAME_LENGTH, tell, written } from "../machinery/say.ts";
import { climateInWords, movementSource } from "./climate.ts";

export const panelWithoutRoom: Rule = {
  code: "panel-without-room",
  severity: "warning",
  title: "Seat without room to swell",
  explanation:
    "A board that lies in rebates or grooves swells across its grain in damp air. Where it has less room than that it pushes the rails off their posts or splits itself. Give it a wider `gap`, make it when the air is damp, or turn its grain the short way. `climate` says between what the chair lives, `timber … moisture` how dry it is when it is made.",
  source: movementSource,
  late: "only",
  find({ chair, tree, late }) {
    if (!late?.wood.panel) return [];
    const { seat, design } = chair;
    const { climate, panel } = late.wood;
    if (!seat || panel.swells <= panel.room + SAME_LENGTH) return [];
    const print = (mm: number) => length(mm, design.units);
    const [, damp] = climateInWords(climate);
    const gap = lengthOrMore(panel.swells / 2, design.units);
    return [
      tell(panelWithoutRoom, placeOf(design, [seat.design.gap, seat.design.rests, { at: seat.design.at }]), {
        message: sentence("panel-without-room", {
          swells: print(panel.swells),
          when: `${damp} ${climate.given.of === "humidity" ? "humidity" : "moisture"}`,
          room: print(panel.room),
        }),
        otherwise: sentence("panel-without-room.otherwise", { gap }),
        subject: "seat",
        found: print(panel.room),
        allowed: sentence("figure.or-more", { figure: print(panel.swells) }),
        badness: panel.swells - panel.room,
        fixes: widerGap(tree.text, seat, written(gap)),
      }),
    ];
  },
};

/** The gap that it needs, in place of the one given or as a line of its own. */
function widerGap(text: string, { design }: SeatSurface, gap: string): Fix[] {
  if (design.file !== undefined) return [];
  if (design.gap) {
    if (design.gap.file !== undefined) return [];
    const { start, end } = design.gap.at;
    return [{ title: sentence("panel-without-room.widen", { gap }), edits: [{ start, end, text: gap }] }];
  }
  const edit = addedLine(text, design.statement, `gap ${gap}`);
  return edit ? [{ title: sentence("panel-without-room.add", { gap }), edits: [edit] }] : [];
}
