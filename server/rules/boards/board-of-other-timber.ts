import { sentence } from "../../../grammar/sentences/sentence.ts";
import { stockFor } from "../../boards/questions.ts";
import { most, sourcesOf } from "../machinery/figures.ts";
import { placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { listed, tell } from "../machinery/say.ts";

export const boardOfOtherTimber: Rule = {
  code: "board-of-other-timber",
  severity: "warning",
  title: "A board is not of the parts' timber, or far from its moisture",
  explanation:
    "A board is only sawn for parts of its own species. One that no part is made of is never used. And a board much wetter or drier than the parts are to be moves after they are cut: joints open, panels cup. Let it come to the moisture of the room first. `limit board-of-other-timber to 4%` changes how far moisture may be apart, in percent of moisture.",
  source: sourcesOf("board-moisture-apart"),
  limit: { high: most("board-moisture-apart"), dimension: "share" },
  asksForMissing: true,
  find({ chair, limit }) {
    const { lines } = stockFor(chair);
    const { design } = chair;
    const species = [...new Set(lines.flatMap(({ timber }) => timber?.species ?? []))];
    const allowed = limit.high ?? Number.POSITIVE_INFINITY;
    return [...design.boards.values(), ...design.yards.values()].flatMap((board) => {
      const timber = board.timber?.value;
      if (!timber || !board.timber || lines.length === 0) return [];
      const place = placeOf(design, [board.timber, board]);
      if (species.length > 0 && !species.includes(timber.species))
        return tell(boardOfOtherTimber, place, {
          message: sentence("board-of-other-timber", {
            board: board.name,
            timber: timber.species,
            species: listed(species),
          }),
          subject: board.name,
          found: timber.species,
          allowed: species.join(", "),
        });
      const parts = lines.flatMap((line) =>
        line.timber?.species === timber.species ? (line.timber.moisture ?? []) : [],
      );
      if (timber.moisture === undefined || parts.length === 0) return [];
      const apart = Math.max(...parts.map((moisture) => Math.abs(moisture - timber.moisture!))) / 100;
      if (apart <= allowed + 1e-9) return [];
      return tell(boardOfOtherTimber, place, {
        message: sentence("board-of-other-timber.moisture", {
          board: board.name,
          moisture: percent(timber.moisture),
          parts: percent(parts[0]!),
          apart: percent(apart * 100),
          allowed: percent(allowed * 100),
        }),
        subject: board.name,
        found: percent(apart * 100),
        allowed: sentence("figure.or-less", { figure: percent(allowed * 100) }),
        badness: apart - allowed,
      });
    });
  },
};

const percent = (number: number): string => `${Number(number.toFixed(1))} %`;
