import { sentence } from "../../../grammar/sentences/sentence.ts";
import type { BoardRef, Design, Given, SawnDesign } from "../../design/design.ts";
import { placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { tell } from "../machinery/say.ts";

export const boardNotThere: Rule = {
  code: "board-not-there",
  severity: "warning",
  title: "A part asks for a board that is not there, or for two",
  explanation:
    "`sawn from` and `match` name a board, with a number where there are several alike: `plank.2`. The number must be one that the board's `count` has. And a part that is pinned to one board by `sawn from`, or by one `match`, cannot come from another.",
  source: "The file's own lines.",
  find({ design }) {
    const findings = [...pinned(design)].flatMap(({ name, sawnFrom }) => missing(design, name, sawnFrom));
    const first = new Map<string, { board: Given<BoardRef>; by: string }>();
    for (const { name, sawnFrom } of pinned(design))
      first.set(name, { board: sawnFrom, by: sentence("board-not-there.by-sawn-from") });
    for (const match of design.matches) {
      findings.push(...missing(design, match.parts[0]!.value.name, match.board));
      for (const { value } of match.parts) {
        const stem = value.name.split(".")[0]!;
        const before = first.get(stem);
        if (before && said(before.board) !== said(match.board))
          findings.push(
            tell(
              boardNotThere,
              placeOf(design, [{ ...match.board, ...(match.file && { file: match.file }) }]),
              {
                message: sentence("board-not-there.twice", {
                  part: stem,
                  board: said(before.board),
                  by: before.by,
                  other: said(match.board),
                }),
                subject: stem,
                found: said(match.board),
                allowed: said(before.board),
              },
            ),
          );
        if (!before) first.set(stem, { board: match.board, by: sentence("board-not-there.by-match") });
      }
    }
    return findings;
  },
};

function* pinned(design: Design): Iterable<{ name: string; sawnFrom: Given<BoardRef> }> {
  const parts: (SawnDesign & { name?: string })[] = [
    ...design.posts.values(),
    ...design.rails.values(),
    ...design.slats.values(),
    ...design.sticks.values(),
    ...design.bows.values(),
    ...design.blocks.values(),
    ...(design.seat ? [design.seat] : []),
  ];
  for (const { name = "seat", sawnFrom } of parts) if (sawnFrom) yield { name, sawnFrom };
}

const said = ({ value: { name, which } }: Given<BoardRef>): string =>
  which === undefined ? name : `${name}.${which}`;

function missing(design: Design, subject: string, ref: Given<BoardRef>) {
  const count = design.boards.get(ref.value.name)?.count?.value ?? 1;
  const { which } = ref.value;
  if (which === undefined || (which >= 1 && which <= count)) return [];
  const values = { board: said(ref), name: ref.value.name, count };
  return [
    tell(boardNotThere, placeOf(design, [ref]), {
      message: sentence(count === 1 ? "board-not-there.one" : "board-not-there.several", values),
      subject,
      found: said(ref),
    }),
  ];
}
