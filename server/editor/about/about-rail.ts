import type { Rail, RailEnd } from "../../chair/chair.ts";
import type { LengthUnit } from "../../design/design.ts";
import { printAngle, printBevel, printLength } from "../../design/units.ts";
import { cutSizes } from "./about-joint.ts";
import { code } from "./markdown.ts";

/** What is worth knowing of a rail or slat: its size, its lengths, and how each end is cut. */
export function aboutRail(rail: Rail, unit: LengthUnit): string[] {
  const length = (mm: number) => printLength(mm, unit);
  const size = rail.round ? `⌀ ${length(rail.round)}` : `${length(rail.thick)} × ${length(rail.wide)}`;
  const lines = [
    `${size}, ${length(rail.length)} between shoulders${rail.roundLength ? `, ${length(rail.roundLength)} along the curve` : ""}`,
  ];
  if (rail.passes)
    lines.push(
      `Goes through ${code(rail.passes.bow)}, ${length(rail.passes.off)} from the middle of its wood`,
    );
  for (const end of rail.ends) lines.push(`End ${code(end.name)}: ${aboutEnd(rail, end, unit)}`);
  return lines;
}

/** The same in fewer words, for beside a drawing: ends that are cut alike are told together. */
export function aboutRailBriefly(rail: Rail, unit: LengthUnit): string[] {
  const ends = rail.ends.map(({ name, over, entered, faceBevel, edgeBevel, joint }) => {
    if (over)
      return {
        where: `${name} over its post`,
        cut: `${printLength(over.overhang, unit)} past its centre line`,
      };
    if (!entered)
      return { where: isCarried(rail) ? `${name} end stands free` : `${name} reaches nothing`, cut: "" };
    const bevels = rail.round
      ? []
      : [`face bevel ${printBevel(faceBevel)}`, `edge bevel ${printBevel(edgeBevel)}`];
    const cut = [...bevels, ...(joint ? [cutSizes(joint, unit)] : [])].join(", ");
    return { where: `into ${entered.name}`, cut };
  });
  const [one, other] = ends;
  const told =
    one && other && one.cut === other.cut && rail.ends.every(({ entered }) => entered)
      ? [{ where: `${one.where} and ${other.where.replace("into ", "")}`, cut: one.cut }]
      : ends;
  const [size = ""] = aboutRail(rail, unit);
  return [size, ...told.map(({ where, cut }) => capital(cut ? `${where}: ${cut}` : where))];
}

/** A crest that sticks carry enters nothing. */
const isCarried = ({ design }: Rail): boolean =>
  design.is === "rail" && (design.carried ?? design.onOne) !== undefined;

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** The same of a member among several, on one line. */
export function aboutMember(rail: Rail, unit: LengthUnit): string {
  const ends = rail.round
    ? []
    : rail.ends.flatMap(({ name, entered, faceBevel, edgeBevel }) =>
        entered ? [`${code(name)} face ${printAngle(faceBevel)}, edge ${printAngle(edgeBevel)}`] : [],
      );
  return [`${code(rail.name)}: ${printLength(rail.length, unit)} between shoulders`, ...ends].join("; ");
}

function aboutEnd(rail: Rail, end: RailEnd, unit: LengthUnit): string {
  if (end.over)
    return `lies over its post, running ${printLength(end.over.overhang, unit)} past its centre line`;
  if (!end.entered) return isCarried(rail) ? "stands free" : "reaches nothing";
  const bevels = rail.round
    ? ""
    : `, face bevel ${printBevel(end.faceBevel)}, edge bevel ${printBevel(end.edgeBevel)}`;
  const lines = end.corners.length && !rail.round ? `; shoulder lines ${shoulderLines(end, unit)}` : "";
  const joint = end.joint ? `; ${cutSizes(end.joint, unit)}` : "";
  return `enters ${code(end.entered.name)}${bevels}${lines}${joint}`;
}

/** The four shoulder lines' lengths. */
function shoulderLines({ lines }: RailEnd, unit: LengthUnit): string {
  const [top, inside, bottom, outside] = lines.map((mm) => printLength(mm, unit));
  return `top ${top}, inside ${inside}, bottom ${bottom}, outside ${outside}`;
}
