import { addedLine } from "../../../grammar/add-line.ts";
import type { Fix } from "../../../grammar/problem.ts";
import { sentence } from "../../../grammar/sentences/sentence.ts";
import type { Chair, SeatSurface } from "../../chair/chair.ts";
import { printLengthUp } from "../../design/units.ts";
import { placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, SAME_LENGTH, tell, written } from "../machinery/say.ts";
import { climateInWords, movementSource } from "./climate.ts";

export const panelWithoutRoom: Rule = {
  code: "panel-without-room",
  severity: "warning",
  title: "Seat without room to move",
  explanation:
    "A board that lies in rebates or grooves swells across its grain in damp air. Where it has less room than that it pushes the rails off their posts or splits itself. Give it a wider `gap`, make it when the air is damp, or turn its grain the short way. In dry air it shrinks: where that takes its edges out of what they lie in, cut the rebates or grooves deeper. `climate` says between what the chair lives, `timber … moisture` how dry it is when it is made.",
  source: movementSource,
  late: "only",
  find({ chair, tree, late }) {
    if (!late?.wood.panel) return [];
    const { seat, design } = chair;
    const { climate, panel } = late.wood;
    if (!seat) return [];
    const place = placeOf(design, [seat.design.gap, seat.design.rests, { at: seat.design.at }]);
    const print = (mm: number) => length(mm, design.units);
    const { dry, damp } = climateInWords(climate);
    const deep = deepOf(chair);
    if (panel.swells > panel.room + SAME_LENGTH) {
      const gap = printLengthUp(panel.swells / 2, design.units);
      const opened = panel.clearance.dry + (panel.swells - panel.room) / 2;
      const slips = deep !== undefined && opened > deep + SAME_LENGTH;
      return [
        tell(panelWithoutRoom, place, {
          message: sentence("panel-without-room", {
            swells: print(panel.swells),
            damp,
            room: print(panel.room),
          }),
          otherwise: slips
            ? sentence("panel-without-room.otherwise-slips", { gap, dry, deep: print(deep) })
            : sentence("panel-without-room.otherwise", { gap }),
          subject: "seat",
          found: print(panel.room),
          allowed: sentence("figure.or-more", { figure: print(panel.swells) }),
          badness: panel.swells - panel.room,
          fixes: widerGap(tree.text, seat, written(gap)),
        }),
      ];
    }
    const open = panel.clearance.dry;
    if (deep === undefined || open <= deep + SAME_LENGTH) return [];
    return [
      tell(panelWithoutRoom, place, {
        message: sentence("panel-without-room.slips", { dry, open: print(open), deep: print(deep) }),
        otherwise: sentence("panel-without-room.slips.otherwise"),
        subject: "seat",
        found: print(open),
        allowed: sentence("figure.or-less", { figure: print(deep) }),
        badness: open - deep,
      }),
    ];
  },
};

/** How far the edges of a loose seat lie in the shallowest of its rebates or grooves without a gap; nothing where none is cut. */
function deepOf(chair: Chair): number | undefined {
  const on = new Set((chair.seat?.design.on ?? []).map(({ value }) => value.name));
  const rests = [...chair.rails.values()]
    .filter(({ id }) => on.has(id.stem))
    .flatMap(({ design }) => ("rests" in design ? design.rests.map(({ value }) => value) : []));
  const depths = rests.flatMap((rest) =>
    rest.is === "groove" ? [rest.deep] : rest.is === "rebate" ? [rest.wide] : [],
  );
  return depths.length > 0 ? Math.min(...depths) : undefined;
}

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
