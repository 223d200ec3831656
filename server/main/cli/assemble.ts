import { basename } from "node:path";
import type { Chair } from "../../chair/chair.ts";
import type { LengthUnit } from "../../design/design.ts";
import { printAngle, printLength } from "../../design/units.ts";
import type { LockedJoint } from "../../joinery/assembly.ts";
import { type Check, type FrameUp, framesOf, type Order } from "../../joinery/frames.ts";
import { type Command, ENDED, eachFile, studyOf } from "./command.ts";
import type { AssembleOutput } from "./schema.ts";
import { brush, harmless } from "./terminal.ts";

export const assemble: Command = {
  name: "assemble",
  usage: "assemble FILE [--format text|json]",
  summary: "give an order of gluing up, with the diagonals and lengths that prove each frame",
  options: { format: { type: "string" } },
  takes: { least: 1, most: 1 },
  run(bench, files, options) {
    const { terminal } = bench;
    return eachFile(bench, files, (input) => {
      const { design, chair, problems } = studyOf(bench, input);
      const title = design.title?.value ?? basename(input.file);
      const order = framesOf(chair);
      if (options.format === "json")
        terminal.out(`${JSON.stringify(outputOf(title, chair, order), null, 2)}\n`);
      else {
        const paint = brush(terminal.colour.out);
        terminal.out(`${paint("bold", harmless(title))}\n${harmlessLines(told(order, design.units))}\n`);
      }
      const errors = problems.filter(({ severity }) => severity === "error").length;
      if (errors)
        terminal.error(
          `${harmless(input.file)}: ${errors === 1 ? "1 error" : `${errors} errors`}, so joints may be missing; "seatwright check" tells.\n`,
        );
      return errors || order.locked.length > 0 ? ENDED.faults : ENDED.well;
    });
  },
};

const harmlessLines = (lines: readonly string[]): string => lines.map(harmless).join("\n");

function told({ frames, locked }: Order, unit: LengthUnit): string[] {
  if (frames.length === 0 && locked.length === 0) return ["  Nothing is joined by a tenon."];
  const lines = frames.flatMap((frame, k) => ["", ...frameLines(frame, k + 1, unit)]);
  for (const { joints } of locked)
    lines.push("", "No order closes these:", ...joints.map((joint) => `  ${lockedLine(joint, unit)}`));
  return [...lines, "", "Try every frame dry first. Corner blocks and the seat come after."];
}

function frameLines(frame: FrameUp, number: number, unit: LengthUnit): string[] {
  const measure = ({ from, to, length }: Check) => `${from} to ${to} ${printLength(length, unit)}`;
  return [
    `${number}. ${frame.name}`,
    `  bring together, ${frame.way}: ${frame.brings.join(", ")}`,
    `  closes: ${frame.closes.join("; ")}`,
    ...frame.diagonals.map(({ one, other }) => `  diagonals: ${measure(one)}; ${measure(other)}`),
    ...frame.checks.map((check) => `  check: ${measure(check)}`),
    ...frame.cautions.map((caution) => `  mind: ${caution}`),
  ];
}

const lockedLine = ({ name, angle, strays, slack }: LockedJoint, unit: LengthUnit): string =>
  `${name}: ${printAngle(angle)} off, strays ${printLength(strays, unit)} over its length; ${printLength(slack, unit)} can be taken up`;

function outputOf(title: string, chair: Chair, { frames, locked }: Order): AssembleOutput {
  const mm = (length: number) => Math.round(length * 1000) / 1000;
  const measure = ({ from, to, length }: Check) => ({ from, to, mm: mm(length) });
  return {
    chair: title,
    glueUps: frames.map(({ name, brings, parts, closes, way, direction, diagonals, checks, cautions }) => ({
      name,
      brings,
      parts,
      closes,
      way,
      direction: direction.map((v) => Math.round(v * 1e6) / 1e6 + 0) as [number, number, number],
      diagonals: diagonals.map(({ one, other }) => [measure(one), measure(other)] as [Measure, Measure]),
      checks: checks.map(measure),
      cautions,
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
