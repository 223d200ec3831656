/**
 * A text with other figures in it, read once: the figures take up as many characters whatever they are, so that a new one changes nothing
 * else in the tree.
 */
import { parseSteps } from "../../grammar/parser.ts";
import type { Steps } from "../../grammar/steps.ts";
import type { Tree } from "../../grammar/tree.ts";
import { vocabulary } from "../../grammar/vocabulary/index.ts";
import { type Choice, edited, exactly, rewrite, suffix } from "./choice.ts";

/** A choice and the stretch that it moves in, in its unit. */
export interface Moved {
  choice: Choice;
  low: number;
  high: number;
}

/** A text and, where it has been read, its tree; the tree is good until the next figures are set. */
export interface MovedText {
  text: string;
  tree?: Tree;
}

/** Gives the text with a figure for each choice, in their order. */
export type MovingText = (places: readonly number[]) => MovedText;

/** What figures are tried to. */
const DECIMALS = 9;

/** Reads the text; rests as it goes. Figures that may be less than zero have to be read anew at each place. */
export function* movingTextSteps(text: string, moved: readonly Moved[]): Steps<MovingText> {
  const plainly: MovingText = (places) => ({
    text: edited(
      text,
      moved.map(({ choice }, k) => rewrite(choice, exactly(choice, places[k] ?? choice.now))),
    ),
  });
  if (moved.some(({ low }) => low < 0)) return plainly;
  const widths = moved.map(({ high }) => high.toFixed(DECIMALS).length);
  const written = (places: readonly number[]) =>
    edited(
      text,
      moved.map(({ choice }, k) => rewrite(choice, padded(choice, places[k] ?? choice.now, widths[k] ?? 0))),
    );
  const lows = moved.map(({ low }) => low);
  const tree = yield* parseSteps(written(lows), vocabulary);
  const figures = moved.map((each) => figuresAt(tree, placeIn(each.choice, moved, widths)));
  if (figures.some((found) => found.length === 0)) return plainly;
  return (places) => {
    for (const [k, { choice }] of moved.entries())
      for (const figure of figures[k] ?? [])
        figure.number = Number((places[k] ?? choice.now).toFixed(DECIMALS));
    const now = written(places);
    tree.text = now;
    return { text: now, tree };
  };
}

/** `99.500000000` as wide as `100.500000000`. */
const padded = ({ unit, united }: Choice, place: number, width: number): string =>
  `${place.toFixed(DECIMALS).padEnd(width, "0")}${suffix(unit, united)}`;

/** Where a choice's figure begins in the text that is read. */
function placeIn({ at }: Choice, moved: readonly Moved[], widths: readonly number[]): number {
  const longer = moved.map(({ choice }, k) => {
    const { unit, united, at: other } = choice;
    if (other.start >= at.start) return 0;
    return (widths[k] ?? 0) + suffix(unit, united).length - (other.end - other.start);
  });
  return longer.reduce((sum, by) => sum + by, at.start);
}

interface Figure {
  number: number;
}

/** The figures that begin at a place, wherever the tree has them. */
function figuresAt(tree: Tree, start: number): Figure[] {
  const found: Figure[] = [];
  const seen = new Set<unknown>();
  const waiting: unknown[] = [tree.statements];
  while (waiting.length > 0) {
    const next = waiting.pop();
    if (typeof next !== "object" || next === null || seen.has(next)) continue;
    seen.add(next);
    if (isFigure(next) && next.start === start) found.push(next);
    for (const [key, value] of Object.entries(next)) if (key !== "row") waiting.push(value);
  }
  return found;
}

const isFigure = (node: object): node is Figure & { start: number } =>
  "is" in node && (node.is === "number" || node.is === "quantity") && "number" in node && "start" in node;
