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
    "Of one part more are needed than come out of the boards it may be sawn from, however they are cut; or the blanks of one thickness hold more wood than the clear parts of the boards so thick, saw cuts not yet counted. What is lacking is told as a length of such a board. Add boards, or a `yard` that the rest is bought from. Where this finding is quiet the wood may still be too little: `seatwright boards` plans every cut and says which parts lack a place.",
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
  return `${lengthOrMore(long, units)} of board ${length(thick, units)} thick and ${length(wide, units)} wide`;
}

function partShort(design: Design, { line, number, there, only, lacking }: PartShort) {
  const part = line.is === "seat" ? design.seat : design.names.get(line.stem);
  const pin = part && "sawnFrom" in part ? part.sawnFrom : undefined;
  return tell(woodRunsShort, placeOf(design, [pin, design.make, part]), {
    message: `At most ${there} of the ${number} ${line.stem} come out of ${only ?? "the boards to hand"}, each ${length(line.blank.long, design.units)} long: ${number - there} are lacking, ${boardText(design, lacking)} at least; add boards, or a yard to buy them from.`,
    subject: line.stem,
    found: String(there),
    allowed: `${number} or more`,
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
    message: `The blanks of ${listed([...new Set(lines.map(({ stem }) => stem))])} take ${wood(needed)} of boards ${length(lacking.thick, design.units)} thick, and there is ${wood(there)} clear: ${wood(needed - there)} is lacking, ${boardText(design, lacking)} at least; add boards, or a yard to buy them from.`,
    subject: lines[0]!.stem,
    found: wood(needed),
    allowed: `${wood(there)} or less`,
    badness: needed - there,
  });
}
