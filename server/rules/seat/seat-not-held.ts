import { addedLine } from "../../../grammar/add-line.ts";
import type { Fix } from "../../../grammar/problem.ts";
import { sentence } from "../../../grammar/sentences/sentence.ts";
import type { Chair } from "../../chair/chair.ts";
import { millimetresIn, printBareLength } from "../../design/units.ts";
import { placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, SAME_LENGTH, tell } from "../machinery/say.ts";
import { seatRails } from "./rests.ts";

/** Width and thickness of the strip that is offered, in mm and in inches (common practice). */
const STRIP = { metric: [20, 15], inches: [0.75, 0.625] } as const;

export const seatNotHeld: Rule = {
  code: "seat-not-held",
  severity: "warning",
  title: "Drop-in seat that stands on nothing",
  explanation:
    "A drop-in seat that is thicker than it stands proud hangs between its rails, and nothing carries what lies between them. Fix strips to the rails' inside faces and say `rests on strips`, cut rebates and say `rests in rebates`, cut grooves and say `rests in grooves`, or let the whole of it lie on the rails: `proud` as much as `thick`.",
  source: "Common practice: a loose seat frame lies on a strip, a rebate or a groove all round.",
  find({ chair, tree }) {
    const { seat } = chair;
    if (seat?.design.kind !== "drop-in" || (seat.design.rests?.value ?? "rails") !== "rails") return [];
    const { design } = seat;
    const { units } = chair.design;
    const thick = design.thick?.value;
    const proud = design.proud?.value ?? 0;
    if (design.thick === undefined || thick === undefined || proud >= thick - SAME_LENGTH) return [];
    const place = placeOf(chair.design, [design.proud, design.thick, { at: design.at }]);
    return [
      tell(seatNotHeld, place, {
        message: sentence("seat-not-held", {
          thick: length(thick, units),
          proud: length(Math.max(0, proud), units),
          below: length(thick - Math.max(0, proud), units),
        }),
        otherwise: sentence("seat-not-held.otherwise"),
        subject: "seat",
        found: sentence("found.proud", { figure: length(proud, units) }),
        allowed: sentence("found.proud", { figure: length(thick, units) }),
        badness: thick - proud,
        fixes: stripsFor(chair, tree.text, thick - proud),
      }),
    ];
  },
};

/** A strip on each rail of the seat, and the seat on the strips; none where a rail is too narrow, or stands in another file. */
function stripsFor(chair: Chair, text: string, at: number): Fix[] {
  const { seat, design } = chair;
  if (!seat || seat.design.file !== undefined || seat.design.rests) return [];
  const { units } = design;
  const [wide, thick] =
    units === "in" ? STRIP.inches.map((each) => each * millimetresIn("in")) : STRIP.metric;
  const rails = new Set(seatRails(chair, seat.design).map((rail) => rail.design));
  const bare = (mm: number) => printBareLength(mm, units, 64);
  const line = `strip ${bare(wide!)} x ${bare(thick!)} at ${bare(at)}`;
  const edits = [...rails].map((rail) => {
    const room = rail.is === "rail" && !rail.round && (rail.section?.value.second ?? 0) >= at + wide!;
    return room && rail.file === undefined ? addedLine(text, rail.statement, line) : undefined;
  });
  edits.push(addedLine(text, seat.design.statement, "rests on strips"));
  const whole = edits.flatMap((edit) => edit ?? []);
  if (rails.size === 0 || whole.length < edits.length) return [];
  return [{ title: sentence("fix.fix-strips", { line }), edits: whole.sort((a, b) => a.start - b.start) }];
}
