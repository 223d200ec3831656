import { sentence } from "../../../grammar/sentences/sentence.ts";
import { linesTooBig, stockFor } from "../../boards/questions.ts";
import { placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, lengthOrMore, tell } from "../machinery/say.ts";

export const partTooBigForBoards: Rule = {
  code: "part-too-big-for-boards",
  severity: "warning",
  title: "No board is big enough for a part",
  explanation:
    "The blank that a part is planed from must come out of one board: its finished size with what `waste` takes, and inside the board's ends and wane. Where every board and yard of its timber is too thin, too narrow or too short, the part has to be glued up, made smaller, or sawn from another board.",
  source: "Geometry alone: the blank against the boards.",
  find({ chair }) {
    const { units, names } = chair.design;
    return linesTooBig(stockFor(chair)).flatMap(({ line, measure, needs, most }) => {
      const part = line.is === "seat" ? chair.design.seat : names.get(line.stem);
      if (!part) return [];
      const section = line.called === line.stem && "section" in part ? part.section : undefined;
      const need = lengthOrMore(needs, units);
      return tell(
        partTooBigForBoards,
        placeOf(chair.design, [measure === "long" ? undefined : section, part]),
        {
          message: sentence(`part-too-big-for-boards.${measure}`, {
            part: line.called,
            needs: need,
            most: length(most, units),
          }),
          subject: line.called,
          found: need,
          allowed: sentence("figure.or-less", { figure: length(most, units) }),
          badness: needs - most,
        },
      );
    });
  },
};
