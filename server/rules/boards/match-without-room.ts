import { sentence } from "../../../grammar/sentences/sentence.ts";
import type { Wanted } from "../../boards/cells.ts";
import type { Size } from "../../boards/parts.ts";
import { matchesWithoutRoom, stockFor } from "../../boards/questions.ts";
import type { WoodBoard } from "../../boards/wood.ts";
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
      const { at, file, board, laid, statement } = matches[match]!;
      const { measure, summed, needs, there } = tightest(wanted, boards, laid, saw);
      const names = [...new Set(wanted.lines.map(({ stock }) => stock.stem))];
      const place = placeOf(chair.design, [{ at, ...(file && { file }) }]);
      if (named) {
        const timbers = [...new Set(wanted.lines.flatMap(({ stock }) => stock.timber?.species ?? []))];
        return tell(matchWithoutRoom, place, {
          message: sentence("match-without-room.timber", {
            parts: listed(names),
            timbers: listed(timbers),
            board: board.value.name,
            timber: named.timber?.species ?? "",
          }),
          subject: names.join(" and "),
          found: timbers.join(", "),
          allowed: named.timber?.species ?? "",
        });
      }
      const other = laid === "end to end" ? "side by side" : "end to end";
      return tell(matchWithoutRoom, place, {
        message: sentence(`match-without-room.${measure}`, {
          parts: listed(names),
          laid: sentence(`laid.${laid}`),
          needs: length(needs, units),
          board: board.value.name,
          there: length(there, units),
        }),
        subject: names.join(" and "),
        found: length(needs, units),
        allowed: length(there, units),
        fixes: file
          ? []
          : [
              {
                title: sentence("fix.lay", { how: sentence(`laid.${other}`) }),
                edits: [{ start: at.end, end: statement.end, text: ` ${other}` }],
              },
            ],
        otherwise: summed ? sentence("match-without-room.fewer") : sentence("match-without-room.other"),
      });
    });
  },
};

/** The measure by which the boards fall furthest short of what is matched, whether the parts' own add up in it, what it takes and the most that there is, mm. */
function tightest(
  { lines }: Wanted,
  boards: readonly WoodBoard[],
  laid: "side by side" | "end to end",
  saw: number,
): { measure: keyof Size; summed: boolean; needs: number; there: number } {
  const sizes = lines.map(({ stock }) => stock.blank);
  const most = (of: keyof Size) => Math.max(...sizes.map((size) => size[of]));
  const all = (of: keyof Size) => sizes.reduce((sum, size) => sum + size[of], 0) + saw * (sizes.length - 1);
  const along: keyof Size = laid === "end to end" ? "long" : "wide";
  const found = (["wide", "long", "thick"] as const).map((measure) => ({
    measure,
    summed: measure === along,
    needs: measure === along ? all(measure) : most(measure),
    there: Math.max(0, ...boards.map(({ clear, thick }) => (measure === "thick" ? thick : clear[measure]))),
  }));
  return found.reduce((worst, one) => (one.needs - one.there > worst.needs - worst.there ? one : worst));
}
