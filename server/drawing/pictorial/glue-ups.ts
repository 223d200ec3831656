import type { Chair } from "../../chair/chair.ts";
import { printLength } from "../../design/units.ts";
import type { Vec3 } from "../../geometry/solid.ts";
import { diagonalsOf, type FrameUp, framesOf } from "../../joinery/frames.ts";
import { glueUpOffsets } from "./apart.ts";

/** One glue-up to be shown: what comes together, along which way, and what there is to say of it. */
export interface GlueUpTold {
  /** `Back frame`. */
  title: string;
  /** Whole sentences. */
  lines: string[];
  /** All its parts, and how far each is moved, as drawn, mm, while it is open. */
  parts: { name: string; by: Vec3 }[];
}

/** A chair's glue-ups in the order to do them; none while no order closes its joints. */
export function glueUpsTold(chair: Chair): GlueUpTold[] {
  const offsets = glueUpOffsets(chair);
  return framesOf(chair).frames.map((frame, k) => ({
    title: capital(frame.name),
    lines: linesOf(chair, frame),
    parts: frame.parts.map((name) => ({ name, by: offsets[k]?.get(name) ?? [0, 0, 0] })),
  }));
}

function linesOf(chair: Chair, frame: FrameUp): string[] {
  const { brings, way, closes, first, sprung, glue, cautions } = frame;
  const length = (mm: number) => printLength(mm, chair.design.units);
  return [
    ...(first.length > 0
      ? [
          `First, each alone along its own tenons: ${first.map(({ part, into }) => `${part} into ${listed(into)}`).join("; ")}.`,
        ]
      : []),
    `Bring together ${listed(brings)}: ${way}.`,
    `Closes ${closes.length === 1 ? "1 joint" : `${closes.length} joints`}${gluedWith(glue.map(({ kind }) => kind))}.`,
    ...sprung.map(
      ({ joint, part, by, towards }) =>
        `Spring the end of ${part} ${length(by)} ${towards} to enter ${joint.split(" to ")[1] ?? joint}.`,
    ),
    ...diagonalsOf(frame).map(({ one, other }) => {
      const [first, second] = [length(one.length), length(other.length)];
      const figures = first === second ? `both diagonals ${first}` : `diagonals ${first} and ${second}`;
      return `${capital(one.from)} to ${one.to}: ${figures}.`;
    }),
    ...cautions,
  ];
}

function gluedWith(kinds: readonly string[]): string {
  const glues = kinds.filter((kind) => kind !== "none");
  if (glues.length > 0) return `, glued with ${listed(glues)}`;
  return kinds.length > 0 ? ", without glue" : "";
}

const listed = (names: readonly string[]): string =>
  names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;

/** Names of parts stay as they are written. */
const capital = (text: string): string =>
  /^\S+\./.test(text) ? text : text.charAt(0).toUpperCase() + text.slice(1);
