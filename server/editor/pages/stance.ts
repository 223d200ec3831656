/**
 * How a chair stands on its feet, what it weighs and how it tips.
 */
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
import type { Report, Section } from "./report.ts";

/** The report of a chair, in the file's units. */
export function stanceReport(title: string, chair: Chair): Report {
  const balance = balanceOf(chair);
  const unit = chair.design.units;
  const sections = [
    onTheFloor(chair, unit),
    weighed(balance, unit),
    {
      heading: "Tilted empty, it goes over at",
      items: [
        Object.entries(balance.tilt).map(([way, angle]) => [
          ways[way as keyof typeof ways],
          printAngle(angle),
        ]),
      ],
    },
    loaded(balance, unit),
    ...(balance.beyond.length > 0 ? [beyondStandards(balance, unit)] : []),
  ];
  return { title, sections, ending: [caution] };
}

const chosen = ["seat.height", "seat.slope", "backrest.rake", "height", "width", "depth"];

function onTheFloor(chair: Chair, unit: LengthUnit): Section {
  const rows = chosen.flatMap((name) => {
    const worked = chair.values.get(name);
    return worked ? [[name, printQuantity(worked, unit)]] : [];
  });
  for (const [name, worked] of chair.values) {
    if (worked.part !== undefined && chair.posts.has(worked.part) && valueRow(name)?.bevel)
      rows.push([name, printWorked(worked, unit)]);
  }
  const hanging = [...chair.hanging].map(
    ([post, gap]) => `The foot of ${post} hangs ${printLength(gap, unit)} clear: the chair rocks.`,
  );
  return {
    heading: "On the floor",
    items: [rows.length > 0 ? rows : "There is nothing to stand yet.", ...hanging],
  };
}

function weighed({ weight }: Balance, unit: LengthUnit): Section {
  const heading = "Weight";
  if (weight.unknown.length > 0)
    return {
      heading,
      items: [`Not known whole: no timber is known for ${weight.unknown.join(", ")}.`],
    };
  const mm = (number: number) => printLength(number, unit);
  const kg = (number: number) => printQuantity({ number, dimension: "mass" }, unit);
  const [x, y, z] = weight.centre;
  const aside = mm(Math.abs(x) < 0.05 ? 0 : x);
  return {
    heading,
    items: [
      [
        ["whole chair", kg(weight.mass)],
        ["centre of gravity", `${mm(z)} up, ${mm(y)} back, ${aside} to the sitter's left`],
        ...[...weight.parts.values()].map((part) => [`  ${part.name}`, kg(part.mass)]),
      ],
    ],
  };
}

function loaded({ cases, edition }: Balance, unit: LengthUnit): Section {
  const heading = `Loaded as in ${inUnitsOf(edition.title, unit)}`;
  if (cases.length === 0)
    return { heading, items: ["Nothing to load: the chair has no seat, or fewer than three feet."] };
  const which = edition.seen
    ? "Some of these loads were not seen in print but are"
    : "None of these loads was seen in print; all are";
  return {
    heading,
    items: [
      cases.map((one) => [ways[one.way], ...outcome(one, unit)]),
      ...(edition.fromMemory.length > 0 ? [`${which} from memory: compare the edition in force.`] : []),
    ],
  };
}

function beyondStandards({ beyond }: Balance, unit: LengthUnit): Section {
  const rocking = beyond.find(({ tilt }) => tilt !== undefined)?.tilt;
  return {
    heading: "Beyond the standards",
    items: [
      beyond.map((one) => outcome(one, unit)),
      ...(rocking === undefined
        ? []
        : [`With a sitter on it, it goes over backwards when tilted by ${printAngle(rocking)}.`]),
      inUnitsOf(beyondAssumed.child, unit),
      inUnitsOf(beyondAssumed.leaning, unit),
    ],
  };
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
