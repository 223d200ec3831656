import { basename } from "node:path";
import { valueRow } from "../../../grammar/vocabulary/values.ts";
import type { Chair } from "../../chair/chair.ts";
import { printWorked } from "../../chair/values/print.ts";
import type { LengthUnit } from "../../design/design.ts";
import { inUnitsOf } from "../../design/prose-units.ts";
import { printAngle, printLength, printLengthUp, printMargin, printQuantity } from "../../design/units.ts";
import { beyondAssumed } from "../../floor/beyond.ts";
import { caution } from "../../floor/editions.ts";
import type { TipCase } from "../../floor/load-cases.ts";
import { type Balance, balanceOf } from "../../floor/tips.ts";
import { towards } from "../../rules/stability/tipping.ts";
import { type Command, eachFile, studyOf, toldOfErrors } from "./command.ts";
import { formatOption } from "./options.ts";
import type { StandOutput } from "./schema.ts";
import { type Brush, brush, columns, harmless, wrapped } from "./terminal.ts";

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
      const balance = balanceOf(chair);
      if (options.format === "json") {
        terminal.out(`${JSON.stringify(standing(title, chair, balance), null, 2)}\n`);
      } else terminal.out(report(title, chair, balance, design.units, brush(terminal.colour.out)));
      return toldOfErrors(bench, input.file, problems, "parts may be missing");
    });
  },
};

function report(title: string, chair: Chair, balance: Balance, unit: LengthUnit, paint: Brush): string {
  const mm = (number: number) => printLength(number, unit);
  const kg = (number: number) => printQuantity({ number, dimension: "mass" }, unit);
  const { weight, cases, tilt, edition, beyond } = balance;
  const lines = [paint("bold", harmless(title)), "", paint("bold", "On the floor")];
  const chosen = ["seat.height", "seat.slope", "backrest.rake", "height", "width", "depth"];
  const rows = chosen.flatMap((name) => {
    const worked = chair.values.get(name);
    return worked ? [[name, printQuantity(worked, unit)]] : [];
  });
  for (const [name, worked] of chair.values) {
    if (worked.part !== undefined && chair.posts.has(worked.part) && valueRow(name)?.bevel)
      rows.push([name, printWorked(worked, unit)]);
  }
  lines.push(rows.length > 0 ? columns(rows, "  ") : "  There is nothing to stand yet.");
  for (const [post, gap] of chair.hanging)
    lines.push(`  The foot of ${post} hangs ${mm(gap)} clear: the chair rocks.`);
  lines.push("", paint("bold", "Weight"));
  if (weight.unknown.length > 0) {
    lines.push(`  Not known whole: no timber is known for ${weight.unknown.join(", ")}.`);
  } else {
    const [x, y, z] = weight.centre;
    lines.push(
      columns(
        [
          ["whole chair", kg(weight.mass)],
          [
            "centre of gravity",
            `${mm(z)} up, ${mm(y)} back, ${mm(Math.abs(x) < 0.05 ? 0 : x)} to the sitter's left`,
          ],
          ...[...weight.parts.values()].map((part) => [`  ${part.name}`, kg(part.mass)]),
        ],
        "  ",
      ),
    );
  }
  lines.push("", paint("bold", "Tilted empty, it goes over at"));
  lines.push(
    columns(
      Object.entries(tilt).map(([way, angle]) => [ways[way as keyof typeof ways], printAngle(angle)]),
      "  ",
    ),
  );
  lines.push("", paint("bold", `Loaded as in ${inUnitsOf(edition.title, unit)}`));
  if (cases.length === 0) lines.push("  Nothing to load: the chair has no seat, or fewer than three feet.");
  else {
    lines.push(
      columns(
        cases.map((one) => [ways[one.way], ...outcome(one, unit)]),
        "  ",
      ),
    );
    if (edition.fromMemory.length > 0) {
      lines.push(
        wrapped(
          `${edition.seen ? "Some of these loads were not seen in print but are" : "None of these loads was seen in print; all are"} from memory: compare the edition in force.`,
          "  ",
        ),
      );
    }
  }
  if (beyond.length > 0) {
    lines.push("", paint("bold", "Beyond the standards"));
    lines.push(
      columns(
        beyond.map((one) => outcome(one, unit)),
        "  ",
      ),
    );
    const rocking = beyond.find(({ tilt: far }) => far !== undefined);
    if (rocking?.tilt !== undefined)
      lines.push(`  With a sitter on it, it goes over backwards when tilted by ${printAngle(rocking.tilt)}.`);
    lines.push(
      wrapped(inUnitsOf(beyondAssumed.child, unit), "  "),
      wrapped(inUnitsOf(beyondAssumed.leaning, unit), "  "),
    );
  }
  lines.push("", wrapped(caution), "");
  return lines.join("\n");
}

/** A case in columns: what it is, its margin, and what would bring it right. */
function outcome(one: TipCase, unit: LengthUnit): string[] {
  return [
    one.name,
    Number.isFinite(one.margin) ? `margin ${printMargin(one.margin)}` : "nothing lifts it",
    one.short > 0
      ? `goes over: the feet would have to stand ${printLengthUp(one.short, unit)} further ${towards[one.way]}`
      : "holds",
  ];
}

const ways = { front: "forwards", back: "backwards", side: "sideways" };

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
