import { basename } from "node:path";
import type { Chair } from "../../chair/chair.ts";
import { type Check, checksOf, diagonalsOf, framesOf, type Order } from "../../joinery/frames.ts";
import { assemblyReport } from "./assembly-report.ts";
import { type Command, ENDED, eachFile, studyOf, toldOfErrors } from "./command.ts";
import { formatOption } from "./options.ts";
import type { AssembleOutput } from "./schema.ts";
import { brush, wrapped } from "./terminal.ts";

export const assemble: Command = {
  name: "assemble",
  usage: "assemble FILE [--format text|json]",
  summary: "give an order of gluing up, with the diagonals and lengths that prove each frame",
  options: { format: formatOption },
  takes: { least: 1, most: 1 },
  run(bench, files, options) {
    const { terminal } = bench;
    return eachFile(bench, files, (input) => {
      const { design, chair, problems } = studyOf(bench, input);
      const title = design.title?.value ?? basename(input.file);
      const order = framesOf(chair);
      if (options.format === "json")
        terminal.out(`${JSON.stringify(outputOf(title, chair, order), null, 2)}\n`);
      else
        terminal.out(
          `${assemblyReport(title, order, [...design.blocks.values()], design.units, brush(terminal.colour.out))}\n${wrapped(dry)}\n`,
        );
      const ended = toldOfErrors(bench, input.file, problems, "joints may be missing");
      return order.locked.length > 0 ? ENDED.faults : ended;
    });
  },
};

/** Printed under every order. */
const dry = "A calculation is not a test: put each frame together dry before any glue.";

function outputOf(title: string, chair: Chair, { frames, locked }: Order): AssembleOutput {
  const mm = (length: number) => Math.round(length * 1000) / 1000;
  const measure = ({ from, to, length }: Check) => ({ from, to, mm: mm(length) });
  return {
    chair: title,
    glueUps: frames.map((frame) => ({
      name: frame.name,
      brings: frame.brings,
      parts: frame.parts,
      closes: frame.closes,
      way: frame.way,
      first: frame.first,
      sprung: frame.sprung.map(({ joint, part, by, towards }) => ({ joint, part, mm: mm(by), towards })),
      direction: frame.direction.map((v) => Math.round(v * 1e6) / 1e6 + 0) as [number, number, number],
      diagonals: diagonalsOf(frame).map(
        ({ one, other }) => [measure(one), measure(other)] as [Measure, Measure],
      ),
      checks: checksOf(frame).map(measure),
      glue: frame.glue,
      cautions: frame.cautions,
    })),
    locked: locked.map(({ parts, joints }) => ({
      parts,
      joints: joints.map(({ name, angle, strays, slack }) => ({
        name: chair.joints.get(name)?.name ?? name,
        deg: Math.round((angle * 18000) / Math.PI) / 100,
        straysMm: mm(strays),
        slackMm: mm(slack),
      })),
    })),
  };
}

type Measure = AssembleOutput["glueUps"][number]["checks"][number];
