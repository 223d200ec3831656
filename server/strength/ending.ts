/**
 * Why a load case could not be solved, in a sentence with figures: the chair is lifted, goes over, slides, or has a loose part.
 */
import { editorSentence } from "../../grammar/sentences/editor-sentence.ts";
import { capital } from "../../grammar/wording.ts";
import type { LengthUnit } from "../design/design.ts";
import { printLength, printQuantity } from "../design/units.ts";
import { insideBy, type Spot, supportOutline, tippingLines } from "../floor/support.ts";
import type { CaseResult } from "./case-result.ts";

/** N; less than this is nothing but rounding. */
const LEAST = 1e-6;

/** The sentence; nothing where the case was solved. */
export function endingOf(
  one: Pick<CaseResult, "solution" | "frame" | "load">,
  unit: LengthUnit,
): string | undefined {
  const { solution, frame } = one;
  if (solution.is === "solved") return undefined;
  if (solution.is === "loose") {
    const part = [...frame.along].find(([, nodes]) => nodes.includes(solution.node))?.[0];
    return part === undefined
      ? editorSentence("strength.loose")
      : editorSentence("strength.part-loose", { Part: capital(part) });
  }
  const force = (number: number) => printQuantity({ number, dimension: "force" }, unit);
  const { level, down } = sumsOf(one);
  if (down <= LEAST) return editorSentence("strength.lifted", { more: force(-down) });
  if (solution.is === "slides") {
    const most = Math.max(...one.load.supports.map(({ friction = 0 }) => friction));
    return editorSentence("strength.slides", { level: force(level), rubs: force(most * down) });
  }
  const beyond = beyondFeet(one);
  return beyond && beyond.far > 0
    ? editorSentence(`strength.over-${beyond.way}`, { far: printLength(beyond.far, unit) })
    : editorSentence("strength.over");
}

type Loaded = Pick<CaseResult, "frame" | "load">;

/** What all loads come to, N: level, and down with the chair's own weight. */
function sumsOf({ load }: Loaded): { level: number; down: number } {
  const sum = (way: number) => load.loads.reduce((all, { v }) => all + (v[way] ?? 0), 0);
  return { level: Math.hypot(sum(0), sum(1)), down: -sum(2) };
}

/** How far beyond the line between two feet all that presses down acts, mm, and on which side. */
function beyondFeet({ frame, load }: Loaded) {
  const at = (node: number) => frame.nodes[node]?.at ?? [0, 0, 0];
  const { down } = sumsOf({ frame, load });
  const middle = (way: 0 | 1) =>
    load.loads.reduce((all, { node, v }) => all - (v[2] ?? 0) * at(node)[way], 0) / down;
  const spot: Spot = [middle(0), middle(1)];
  const feet = [...frame.feet.values()].map((node): Spot => [at(node)[0], at(node)[1]]);
  return tippingLines(supportOutline(feet))
    .map((line) => ({ way: line.way, far: -insideBy(line, spot) }))
    .sort((a, b) => b.far - a.far)[0];
}
