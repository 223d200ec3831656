/**
 * The order of gluing up as it is read in a terminal.
 */

import type { BlockDesign, LengthUnit } from "../../design/design.ts";
import { partId, partName, partsNamed, SEAT, stemOf, withoutSides } from "../../design/identity.ts";
import { printAngle, printLength } from "../../design/units.ts";
import type { LockedJoint } from "../../joinery/assembly.ts";
import type { Check, FrameUp, Order, PostsApart } from "../../joinery/frames.ts";
import { type Brush, columns, harmless } from "./terminal.ts";

const WIDTH = 78;

/** Glue-ups in the order to do them, or what forbids one. */
export function assemblyReport(
  title: string,
  { frames, locked }: Order,
  blocks: readonly BlockDesign[],
  unit: LengthUnit,
  paint: Brush,
): string {
  const lines = [paint("bold", harmless(title))];
  if (frames.length === 0 && locked.length === 0) lines.push("  Nothing is joined by a tenon.");
  for (const [k, frame] of frames.entries()) {
    lines.push("", paint("bold", harmless(`${k + 1}. ${capital(frame.name)}`)));
    lines.push(harmless(frameRows(frame, unit)));
  }
  for (const { joints } of locked) {
    lines.push("", paint("bold", "No order closes these"));
    lines.push(harmless(joints.map((joint) => `  ${lockedLine(joint, unit)}`).join("\n")));
  }
  if (frames.length > 0)
    lines.push(
      "",
      "Lengths are between the middles of the posts' ends. Try every frame dry first.",
      ...(frames.some(({ parts }) => parts.includes(partName(SEAT))) ? [] : [harmless(afterwards(blocks))]),
    );
  return `${lines.join("\n")}\n`;
}

/** What is put in when the frame is together. */
function afterwards(blocks: readonly BlockDesign[]): string {
  const told = blocks.map(({ name, fixing }) => (fixing ? `${name} ${fixing.value}` : name));
  return told.length > 0
    ? wrapped(`Then the corner blocks (${told.join(", ")}), and the seat.`, WIDTH).join("\n")
    : "The seat comes after.";
}

function frameRows(frame: FrameUp, unit: LengthUnit): string {
  const rows: [string, string][] = [
    ...frame.first.map(({ part, into }, k): [string, string] => [
      k === 0 ? "first, alone" : "",
      `${part} into ${into.join(" and ")}, along its own tenon`,
    ]),
    [`bring together`, `${frame.way}:`],
    ["", gathered(frame.brings).join(", ")],
    ["close", `${frame.closes.length === 1 ? "1 joint" : `${frame.closes.length} joints`}:`],
    ...closed(frame.closes).map((line): [string, string] => ["", line]),
    ...frame.sprung.map(({ joint, part, by, towards }, k): [string, string] => [
      k === 0 ? "spring" : "",
      `the end of ${part} ${printLength(by, unit)} ${towards}, into ${joint.split(" to ")[1] ?? joint}`,
    ]),
    ...glued(frame.glue),
    ...squares(frame.between, unit).map(([word, said]): [string, string] => [word, said]),
    ...frame.plan.map(({ one, other }): [string, string] => ["feet", planLine(one, other, unit)]),
    ...frame.cautions.map((caution): [string, string] => ["mind", caution]),
  ];
  const spread = rows.flatMap(([word, said]) =>
    wrapped(said, WIDTH - 18).map((line, k) => [k === 0 ? word : "", line]),
  );
  // Words of one column keep their place even where no row of a frame needs it.
  return columns([["bring together", ""], ...spread], "  ")
    .split("\n")
    .slice(1)
    .join("\n");
}

function glued(glue: FrameUp["glue"]): [string, string][] {
  const [only] = glue;
  if (!only) return [];
  if (glue.length === 1) return [["glue", only.kind]];
  return [["glue", glue.map(({ kind, joints }) => `${kind} in ${joints}`).join(", ")]];
}

/** Pairs alike left and right told once. */
function squares(between: readonly PostsApart[], unit: LengthUnit): [string, string][] {
  const rows = new Map<string, [string, string][]>();
  const length = (mm: number) => printLength(mm, unit);
  for (const { a, b, feet, tops, footToTop, topToFoot } of between) {
    const names = `${withoutSides(a)} to ${withoutSides(b)}`;
    const pair = withoutSides(a) === withoutSides(b) ? `${a} to ${b}` : names;
    const even = Math.abs(footToTop - topToFoot) < 0.05;
    const found: [string, string][] = [
      [
        "diagonals",
        even
          ? `${pair}, foot to top: both ${length(footToTop)}`
          : `${pair}: ${length(footToTop)} foot to top, ${length(topToFoot)} top to foot`,
      ],
      [
        "apart",
        Math.abs(feet - tops) < 0.05
          ? `${pair}: ${length(feet)} at the feet and at the tops`
          : `${pair}: ${length(feet)} at the feet, ${length(tops)} at the tops`,
      ],
    ];
    rows.set(found.join(), found);
  }
  return [...rows.values()].flat();
}

/** The two diagonals across the feet. */
function planLine(one: Check, other: Check, unit: LengthUnit): string {
  const ends = ({ from, to }: Check) => `${from} to ${to}`.replaceAll("foot of ", "");
  const [first, second] = [printLength(one.length, unit), printLength(other.length, unit)];
  return first === second
    ? `${ends(one)} and ${ends(other)}: both ${first}`
    : `${ends(one)} ${first}, ${ends(other)} ${second}`;
}

/** Members of a row as one: `back-slat.1 to back-slat.4`. */
function gathered(names: readonly string[]): string[] {
  const told: { stem: string; side: string; first: string; last: string; row: number }[] = [];
  for (const name of names) {
    const { stem, row, side } = partId(name);
    const before = told.at(-1);
    if (row !== undefined && before?.stem === stem && before.side === side && row === before.row + 1) {
      before.last = name;
      before.row = row;
    } else told.push({ stem, side, first: name, last: name, row: row ?? Number.NaN });
  }
  return told.map(({ first, last }) => (first === last ? first : `${first} to ${last}`));
}

/** Joints that are alike as one line, with how many they are. */
function closed(joints: readonly string[]): string[] {
  const byPart = new Map<string, { into: Set<string>; count: number }>();
  for (const joint of joints) {
    const [part = "", into = ""] = partsNamed(joint).map(stemOf);
    const known = byPart.get(part) ?? { into: new Set<string>(), count: 0 };
    known.into.add(into);
    known.count += 1;
    byPart.set(part, known);
  }
  return [...byPart].map(
    ([part, { into, count }]) => `${part} to ${[...into].join(" and ")}${count > 1 ? ` (${count})` : ""}`,
  );
}

const lockedLine = ({ name, angle, strays, slack }: LockedJoint, unit: LengthUnit): string =>
  `${name}: ${printAngle(angle)} off, strays ${printLength(strays, unit)} over its length; ${printLength(slack, unit)} can be taken up`;

function wrapped(text: string, width: number): string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ")) {
    if (line && line.length + word.length + 1 > width) {
      lines.push(line);
      line = word;
    } else line = line ? `${line} ${word}` : word;
  }
  return [...lines, line];
}

/** Names of parts stay as they are written. */
const capital = (text: string): string =>
  /^\S+\./.test(text) ? text : text.charAt(0).toUpperCase() + text.slice(1);
