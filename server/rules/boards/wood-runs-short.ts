import { shortagesOf, stockFor } from "../../boards/questions.ts";
import { printTimber } from "../../design/units.ts";
import { type Candidate, placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, tell } from "../machinery/say.ts";

export const woodRunsShort: Rule = {
  code: "wood-runs-short",
  severity: "warning",
  title: "The boards to hand are not enough",
  explanation:
    "The blanks of all the chairs that `make` asks for hold more wood than the clear parts of the boards that are thick enough, saw cuts not yet counted. Add boards, or a `yard` that the rest is bought from. Where this finding is quiet the wood may still be too little: `seatwright boards` plans every cut and says which parts lack a place.",
  source: "Volumes alone: the blanks against the boards between their ends and wane.",
  asksForMissing: true,
  find({ chair }) {
    const { design } = chair;
    return shortagesOf(stockFor(chair)).map(({ thick, needed, there, species, lines }) => {
      const boards = [...design.boards.values()].filter(
        ({ timber }) => !timber || species === undefined || timber.value.species === species,
      );
      const make: Candidate | undefined = design.make;
      const wood = (mm3: number) => printTimber(mm3, design.units);
      return tell(woodRunsShort, placeOf(design, [make, ...boards]), {
        message: `Blanks ${length(thick, design.units)} and thicker take ${wood(needed)}, and the boards so thick have ${wood(there)} clear: ${wood(needed - there)} is lacking; add boards, or a yard to buy them from.`,
        subject: lines[0]!.stem,
        found: wood(needed),
        allowed: `${wood(there)} or less`,
        badness: needed - there,
      });
    });
  },
};
