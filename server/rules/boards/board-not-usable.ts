import { sentence } from "../../../grammar/sentences/sentence.ts";
import { allowancesOf } from "../../boards/allowances.ts";
import type { BoardDesign } from "../../design/design.ts";
import { type Candidate, placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, tell } from "../machinery/say.ts";

export const boardNotUsable: Rule = {
  code: "board-not-usable",
  severity: "warning",
  title: "Nothing can be sawn from a board as it is described",
  explanation:
    "A defect must lie within its board, the wane of both edges must leave wood between them, and what is cut off both ends must leave a length. Otherwise a figure is mistyped, and the plan would leave the board, or the defect, out.",
  source: "Geometry alone.",
  find({ chair }) {
    const { boards, units } = chair.design;
    const mm = (number: number) => length(number, units);
    return [...boards.values()].flatMap((board) =>
      faultsOf(board, allowancesOf(chair.design).ends, mm).map(({ at, message }) =>
        tell(boardNotUsable, placeOf(chair.design, [at, board]), { message, subject: board.name }),
      ),
    );
  },
};

function faultsOf(
  { name, size, wane, defects }: BoardDesign,
  ends: number,
  mm: (number: number) => string,
): { at: Candidate | undefined; message: string }[] {
  if (!size) return [];
  const { long, wide } = size.value;
  const faults = defects.flatMap((defect) => {
    const { at, fromEdge } = defect.value;
    if (at < long && fromEdge < wide) return [];
    const [where, most] = at >= long ? [mm(at), mm(long)] : [mm(fromEdge), mm(wide)];
    return [
      {
        at: defect as Candidate,
        message: sentence(at >= long ? "board-not-usable.defect-long" : "board-not-usable.defect-wide", {
          where,
          board: name,
          most,
        }),
      },
    ];
  });
  if (wane && 2 * wane.value >= wide)
    faults.push({
      at: wane,
      message: sentence("board-not-usable.wane", { wane: mm(wane.value), board: name, wide: mm(wide) }),
    });
  if (2 * ends >= long)
    faults.push({
      at: size,
      message: sentence("board-not-usable.ends", { ends: mm(ends), board: name, long: mm(long) }),
    });
  return faults;
}
