import { matchesWithoutRoom, stockFor } from "../../boards/questions.ts";
import { placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, listed, tell } from "../machinery/say.ts";

export const matchWithoutRoom: Rule = {
  code: "match-without-room",
  severity: "warning",
  title: "Matched parts do not fit on their board",
  explanation:
    "Parts named by `match` are sawn next to each other from one board, so that grain and colour run on from piece to piece: side by side across the board, or end to end along it. Here no board of that name is thick, wide and long enough for all of them. Name another board, lay them the other way, or match fewer.",
  source: "Geometry alone: the blanks against the board.",
  find({ chair }) {
    const { units, matches } = chair.design;
    const { saw } = stockFor(chair).allowances;
    return matchesWithoutRoom(chair).map(({ match, wanted, boards, named }) => {
      const { at, file, board, laid } = matches[match]!;
      const sizes = wanted.lines.map(({ stock }) => stock.blank);
      const along = laid === "end to end" ? "long" : "wide";
      const needs = sizes.reduce((sum, size) => sum + size[along], 0) + saw * (sizes.length - 1);
      const there = Math.max(0, ...boards.map(({ clear }) => clear[along]));
      const names = [...new Set(wanted.lines.map(({ stock }) => stock.stem))];
      const place = placeOf(chair.design, [{ at, ...(file && { file }) }]);
      if (named) {
        const timbers = [...new Set(wanted.lines.flatMap(({ stock }) => stock.timber?.species ?? []))];
        return tell(matchWithoutRoom, place, {
          message: `${listed(names)} are ${listed(timbers)}, and ${board.value.name} is ${named.timber?.species}: matched parts come from one board, so all of them must be of its timber.`,
          subject: names.join(" and "),
          found: timbers.join(", "),
          allowed: named.timber?.species ?? "",
        });
      }
      return tell(matchWithoutRoom, place, {
        message: `${listed(names)} ${laid} take ${length(needs, units)} of ${board.value.name}, which has ${length(there, units)} clear, or are thicker or larger than it the other way: match fewer, lay them ${laid === "end to end" ? "side by side" : "end to end"}, or name another board.`,
        subject: names.join(" and "),
        found: length(needs, units),
        allowed: length(there, units),
      });
    });
  },
};
