import { basename } from "node:path";
import { finish } from "../../../grammar/steps.ts";
import { type Hiding, type Plan, planOf, type Stock, stockList } from "../../boards/plan.ts";
import { boardsReport } from "./boards-report.ts";
import { type Command, eachFile, studyOf, toldOfErrors } from "./command.ts";
import { formatOption } from "./options.ts";
import type { BoardsOutput } from "./schema.ts";
import { brush } from "./terminal.ts";

export const boards: Command = {
  name: "boards",
  usage: "boards FILE [--format text|json]",
  summary: "list the stock a chair is made of, and plan how it is sawn from boards",
  options: { format: formatOption },
  takes: { least: 1, most: 1 },
  run(bench, files, options) {
    const { terminal } = bench;
    return eachFile(bench, files, (input) => {
      const { design, chair, problems } = studyOf(bench, input);
      const stock = stockList(chair);
      const plan = finish(planOf(stock, design.matches));
      if (options.format === "json") terminal.out(`${JSON.stringify(boardsOutput(stock, plan), null, 2)}\n`);
      else {
        const title = design.title?.value ?? basename(input.file);
        terminal.out(boardsReport(title, stock, plan, design.units, brush(terminal.colour.out)));
      }
      return toldOfErrors(bench, input.file, problems, "parts may be missing");
    });
  },
};

const mm = (number: number): number => Number(number.toFixed(3));
/** mm³ to m³, kept fine enough for a single slat. */
const m3 = (number: number): number => Number((number / 1e9).toFixed(9));

const underOutput = ({ what, x, y, long, wide, face, deepest, firstEnd }: Hiding) => ({
  what: what ?? null,
  x: mm(x),
  y: mm(y),
  long: mm(long),
  wide: mm(wide),
  face,
  deepest: deepest === undefined ? null : mm(deepest),
  firstEnd: firstEnd ?? null,
});

/** Stock list and plan as JSON; lengths in mm, volumes in m³. */
export function boardsOutput(stock: Stock, plan: Plan): BoardsOutput {
  const size = ({ thick, wide, long }: { thick: number; wide: number; long: number }) => ({
    thick: mm(thick),
    wide: mm(wide),
    long: mm(long),
  });
  return {
    parts: stock.lines.map(({ name, number, timber, finished, blank }) => ({
      name,
      number,
      timber: timber?.species ?? null,
      finished: size(finished),
      blank: size(blank),
    })),
    plan: {
      boards: plan.boards.map(({ name, board, pieces, cuts }) => ({
        name,
        ...size(board),
        pieces: pieces.map(({ part, x, y, z, turned, outline, under, ...piece }) => ({
          part,
          x: mm(x),
          y: mm(y),
          z: mm(z),
          ...size(piece),
          turned,
          ...(outline && { outline: outline.map(([u, v]): [number, number] => [mm(u), mm(v)]) }),
          ...(under && { under: under.map(underOutput) }),
        })),
        cuts: cuts.map(({ is, at, from, to }) => ({ is, at: mm(at), from: mm(from), to: mm(to) })),
      })),
      offcuts: plan.boards.flatMap(({ name, board, offcuts }) =>
        offcuts.map(({ x, y, long, wide }) => ({
          board: name,
          x: mm(x),
          y: mm(y),
          long: mm(long),
          wide: mm(wide),
          thick: mm(board.thick),
        })),
      ),
      lacking: plan.lacking,
      used: m3(plan.used),
      bound: m3(plan.bound),
    },
  };
}
