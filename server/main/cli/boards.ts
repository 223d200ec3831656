import { basename } from "node:path";
import { finish } from "../../../grammar/steps.ts";
import { type Hiding, type Plan, planOf, type Stock, stockList } from "../../boards/plan.ts";
import type { BoardsAsked } from "../../drawing/boards/boards-pages.ts";
import { type PaperName, papers } from "../../drawing/markout/paper.ts";
import type { PageFormat } from "../markout/page-files.ts";
import { boardsReport } from "./boards-report.ts";
import {
  type Bench,
  type Command,
  ENDED,
  lettersOf,
  misuse,
  type Options,
  studyOf,
  toldOfErrors,
} from "./command.ts";
import { formatOption, outOption } from "./options.ts";
import { readInput } from "./read-input.ts";
import type { BoardsOutput } from "./schema.ts";
import { brush, harmless } from "./terminal.ts";
import { stemOf, written, writtenPages } from "./writing.ts";

export const boards: Command = {
  name: "boards",
  usage: "boards FILE [--format text|json|pdf|svg] [--paper a4|a3|letter|tabloid] [-o FILE]",
  summary: "list the stock a chair is made of, and plan how it is sawn from boards",
  options: {
    paper: {
      type: "string",
      values: "a4|a3|letter|tabloid",
      does: "the paper of PDF and SVG pages; a4 unless the file is in inches",
    },
    format: formatOption,
    out: outOption,
  },
  formats: ["text", "json", "pdf", "svg"],
  takes: { least: 1, most: 1 },
  run(bench, [file], options) {
    const { terminal } = bench;
    const { format, out, paper } = options;
    if (paper !== undefined && !(String(paper) in papers))
      return misuse(bench, `"--paper ${paper}" is not known; there are "a4", "a3", "letter" and "tabloid".`);
    if (paper !== undefined && format !== "pdf" && format !== "svg")
      return misuse(bench, '"--paper" is for pages: ask for them with "--format pdf" or "--format svg".');
    const input = readInput(file!);
    if (!("text" in input)) {
      terminal.error(`${brush(terminal.colour.error)("bold", harmless(input.file))}: ${input.refused}.\n`);
      return ENDED.misuse;
    }
    const { design, chair, problems } = studyOf(bench, input);
    const stock = stockList(chair);
    const plan = finish(planOf(stock, design.matches));
    const title = design.title?.value ?? basename(input.file);
    const end = () => toldOfErrors(bench, input.file, problems, "parts may be missing");
    if (format === "pdf" || format === "svg") {
      const size = (paper as PaperName | undefined) ?? (design.units === "in" ? "letter" : "a4");
      return writePages(
        bench,
        { title, stock, plan, unit: design.units, paper: size, format, out, file: file! },
        end,
      );
    }
    const text =
      format === "json"
        ? `${JSON.stringify(boardsOutput(stock, plan), null, 2)}\n`
        : boardsReport(title, stock, plan, design.units, brush(out === undefined && terminal.colour.out));
    const ending = written(bench, text, out);
    return ending === ENDED.well ? end() : ending;
  },
};

/** One PDF, or a folder of SVGs; beside where the command is run unless told otherwise. */
async function writePages(
  bench: Bench,
  asked: BoardsAsked & { format: PageFormat; out: Options[string]; file: string },
  end: () => number,
): Promise<number> {
  const { makeBoards } = await import("../boards/node.ts");
  const made = await makeBoards({ ...asked, date: new Date(), ...lettersOf(bench) });
  const ending = writtenPages(bench, made, { ...asked, stem: `${stemOf(asked.file)}-boards` });
  return ending === ENDED.well ? end() : ending;
}

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
