/**
 * Leans that a post lacks, as lines to try: feet alone go further out by them.
 */
import type { Insert } from "../../../grammar/problem.ts";
import type { LengthUnit, PostDesign } from "../../design/design.ts";
import { printBareLength } from "../../design/units.ts";

type Lean = "kick" | "splay" | "rake foot forward" | "rake foot back";

/** How high above the floor a kick that is tried begins, mm. */
const KNEE = 150;

/** The line to try, where the post stands in this file and says nothing of that lean yet. */
export function leanInsert(post: PostDesign, lean: Lean, unit: LengthUnit): Insert[] {
  const inner = post.statement.block?.statements ?? [];
  const last = inner.at(-1);
  if (post.file !== undefined || last === undefined || says(post, lean)) return [];
  const [word = "", ...rest] = lean.split(" ");
  const after =
    lean === "kick"
      ? `deg below ${printBareLength(KNEE, unit, 4)}`
      : `deg ${lean === "splay" ? "foot out" : rest.join(" ")}`;
  const [label, perTangent] = reach(post, lean);
  const fact = inner
    .flatMap(({ word: first, match }) => (first?.text === "foot" ? (match?.facts ?? []) : []))
    .find((each) => each.label === label);
  const figure = fact?.value;
  // Placed by its foot, a post keeps its foot where it is: that moves along, and the top stays.
  if (post.place?.value.station === "foot" && figure?.is !== "number") return [];
  return [
    {
      at: last.end,
      before: `\n  ${word} `,
      after,
      to: post.name,
      what: word,
      ...(figure?.is === "number" && {
        along: { start: figure.start, end: figure.end, number: figure.number, perTangent },
      }),
    },
  ];
}

/** Which figure of the foot's place the lean takes along, and by how much for each tangent of it, mm. */
function reach({ height }: PostDesign, lean: Lean): ["out" | "back", number] {
  const high = height?.value ?? 0;
  if (lean === "kick") return ["back", KNEE];
  if (lean === "splay") return ["out", high];
  return ["back", lean === "rake foot back" ? high : -high];
}

function says({ knees, splay, rake }: PostDesign, lean: Lean): boolean {
  if (lean === "splay") return splay !== undefined || knees.some(({ value }) => value.seen === "front");
  return rake !== undefined || knees.some(({ value }) => value.seen === "side" && value.stretch === "below");
}
