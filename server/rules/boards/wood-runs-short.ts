import { sentence } from "../../../grammar/sentences/sentence.ts";
import { stockFor } from "../../boards/questions.ts";
import { type PartShort, shortagesOf, type ThicknessShort } from "../../boards/shortages.ts";
import type { Design } from "../../design/design.ts";
import { printTimber } from "../../design/units.ts";
import { type Candidate, placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, lengthOrMore, listed, tell } from "../machinery/say.ts";

export const woodRunsShort: Rule = {
  code: "wood-runs-short",
  severity: "warning",
  title: "The boards to hand are not enough",
  explanation:
    "Of one part more are needed than come out of the boards it may be sawn from, however they are cut; or the blanks of one thickness hold more wood than the clear parts of the boards so thick, saw cuts not yet counted. What is lacking is told as a length of such a board. Add boards, or a `yard` that the rest is bought from. `seatwright boards` plans every cut and says which parts lack a place.",
  source: "Geometry alone: the blanks against the boards between their ends and wane.",
  asksForMissing: true,
  find({ chair }) {
    const { design } = chair;
    return shortagesOf(stockFor(chair)).map((short) =>
      short.is === "part" ? partShort(design, short) : thicknessShort(design, short),
    );
  },
};

/** `2.4 m of board 50 mm thick and 207 mm wide`, in the file's unit. */
function boardText({ units }: Design, { long, wide, thick }: PartShort["lacking"]): string {
  return sentence("wood.board", {
    long: lengthOrMore(long, units),
    thick: length(thick, units),
    wide: length(wide, units),
  });
}

function partShort(design: Design, { line, number, there, only, lacking }: PartShort) {
  const part = line.is === "seat" ? design.seat : design.names.get(line.stem);
  const pin = part && "sawnFrom" in part ? part.sawnFrom : undefined;
  return tell(woodRunsShort, placeOf(design, [pin, design.make, part]), {
    message: sentence("wood-runs-short", {
      there,
      number,
      part: line.called,
      boards: only ?? sentence("wood-runs-short.boards"),
      long: length(line.blank.long, design.units),
      lacking: number - there,
      board: boardText(design, lacking),
    }),
    subject: line.called,
    found: String(there),
    allowed: sentence("figure.or-more", { figure: number }),
    badness: number - there,
  });
}

function thicknessShort(design: Design, { needed, there, species, lines, lacking }: ThicknessShort) {
  const boards = [...design.boards.values()].filter(
    ({ timber, size }) =>
      (!timber || species === undefined || timber.value.species === species) &&
      size?.value.thick === lacking.thick,
  );
  const make: Candidate | undefined = design.make;
  const wood = (mm3: number) => printTimber(mm3, design.units);
  return tell(woodRunsShort, placeOf(design, [make, ...boards]), {
    message: sentence("wood-runs-short.volume", {
      parts: listed([...new Set(lines.map(({ called }) => called))]),
      needed: wood(needed),
      thick: length(lacking.thick, design.units),
      there: wood(there),
      lacking: wood(needed - there),
      board: boardText(design, lacking),
    }),
    subject: lines[0]!.called,
    found: wood(needed),
    allowed: sentence("figure.or-less", { figure: wood(there) }),
    badness: needed - there,
  });
}
