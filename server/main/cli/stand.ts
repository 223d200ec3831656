import { basename } from "node:path";
import type { Chair } from "../../chair/chair.ts";
import { stanceReport } from "../../editor/pages/stance.ts";
import { caution } from "../../floor/editions.ts";
import type { TipCase } from "../../floor/load-cases.ts";
import { type Balance, balanceOf } from "../../floor/tips.ts";
import { type Command, eachFile, studyOf, toldOfErrors } from "./command.ts";
import { formatOption } from "./options.ts";
import { reportText } from "./report-text.ts";
import type { StandOutput } from "./schema.ts";
import { brush } from "./terminal.ts";

export const stand: Command = {
  name: "stand",
  usage: "stand FILE [--format text|json]",
  summary: "say how a chair stands on its feet, what it weighs and how it tips",
  options: { format: formatOption },
  takes: { least: 1, most: 1 },
  run(bench, files, options) {
    const { terminal } = bench;
    return eachFile(bench, files, (input) => {
      const { design, chair, problems } = studyOf(bench, input);
      const title = design.title?.value ?? basename(input.file);
      if (options.format === "json") {
        terminal.out(`${JSON.stringify(standing(title, chair, balanceOf(chair)), null, 2)}\n`);
      } else terminal.out(reportText(stanceReport(title, chair), brush(terminal.colour.out)));
      return toldOfErrors(bench, input.file, problems, "parts may be missing");
    });
  },
};

function standing(title: string, chair: Chair, balance: Balance): StandOutput {
  const { weight, cases, tilt, edition, beyond } = balance;
  const round = (value: number, places = 3) => Number(value.toFixed(places));
  const degrees = (angle: number) => round((angle * 180) / Math.PI, 2);
  const figures = (one: TipCase) => ({
    name: one.name,
    margin: Number.isFinite(one.margin) ? round(one.margin) : null,
    short: Math.ceil(one.short * 10 - 1e-6) / 10,
  });
  return {
    chair: title,
    edition: edition.name,
    fromMemory: edition.fromMemory,
    rocks: [...chair.hanging].map(([foot, gap]) => ({ foot, gap: round(gap) })),
    weight: weight.unknown.length > 0 ? null : round(weight.mass),
    centre: weight.unknown.length > 0 ? null : weight.centre.map((v) => round(v)),
    parts: [...weight.parts.values()].map((part) => ({ name: part.name, weight: round(part.mass) })),
    unknownTimber: weight.unknown,
    tilt: Object.fromEntries(Object.entries(tilt).map(([way, angle]) => [way, degrees(angle)])),
    cases: cases.map((one) => ({ way: one.way, ...figures(one) })),
    beyond: beyond.map((one) => ({
      kind: one.kind,
      ...figures(one),
      ...(one.tilt !== undefined && { tilt: degrees(one.tilt) }),
    })),
    caution,
  };
}
