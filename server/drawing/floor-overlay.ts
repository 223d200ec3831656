/**
 * How a chair stands, in plan: its feet, what it goes over, its centre of gravity and the standard loads that decide.
 */
import type { Chair } from "../chair/chair.ts";
import { printMargin, printQuantity } from "../design/units.ts";
import type { TipCase } from "../floor/load-cases.ts";
import type { Load } from "../floor/support.ts";
import { balanceOf } from "../floor/tips.ts";
import { WORDS } from "./label-room.ts";
import { circle } from "./limbs.ts";
import type { Extent } from "./measures.ts";
import type { Overlay, OverlayStroke, OverlayWords, Point } from "./sheet.ts";

/** Half the size of a mark, mm on the sheet. */
const MARK = 9;
/** Length of an arrow for a level force. */
const ARROW = 46;
/** From a line or a mark to its words. */
const CLEAR = 8;

const ways = { front: "forwards", back: "backwards", side: "sideways" };

/** The plan of what a chair stands on, and what is said of it on the sheet; nothing when it stands on nothing. */
export function floorOverlay(chair: Chair, plan: Extent): { overlay: Overlay; note: string } | undefined {
  const { standing, cases, weight, edition } = balanceOf(chair);
  if (standing.outline.length < 3) return undefined;
  const strokes: OverlayStroke[] = [
    { points: [...standing.outline], is: "support" },
    ...[...standing.feet.values()].map((points): OverlayStroke => ({ points: [...points], is: "foot" })),
  ];
  const words: OverlayWords[] = [];
  for (const one of cases) {
    strokes.push({ points: [one.line.from, one.line.to], is: "tipping" });
    words.push(lineWords(one, plan));
  }
  // Two ways of going over may share a load.
  const loads = new Map(cases.flatMap(loadsOf).map((load) => [JSON.stringify(load), load]));
  for (const load of loads.values()) {
    strokes.push(...loadMarks(load));
    words.push(loadWords(load, chair));
  }
  if (weight.unknown.length === 0 && weight.mass > 0) {
    const [x, y] = weight.centre;
    strokes.push(...centreMarks([x, y]));
    const label = printQuantity({ number: weight.mass, dimension: "mass" }, chair.design.units);
    words.push({ text: label, of: "weight", at: [x - MARK * 2 - CLEAR, y - WORDS / 3], anchor: "end" });
  }
  return {
    overlay: { name: "floor", strokes, words },
    note: `Loads: ${edition.title}. A calculation is not a test.`,
  };
}

/** The loads besides the chair's own weight. */
const loadsOf = ({ loads }: TipCase): Load[] => loads.slice(1);

/** Which way it goes over and by what margin, outside the chair beside the line's middle. */
function lineWords({ line, way, margin }: TipCase, plan: Extent): OverlayWords {
  const middle: Point = [(line.from[0] + line.to[0]) / 2, (line.from[1] + line.to[1]) / 2];
  const text = `${ways[way]}: ${Number.isFinite(margin) ? printMargin(margin) : "holds"}`;
  const [x, y] = line.outward;
  if (way === "side") {
    const beside = x > 0 ? plan.right + CLEAR + WORDS * 0.8 : plan.left - CLEAR;
    return { text, of: "line", at: [beside, middle[1]], anchor: "middle", upright: true };
  }
  return {
    text,
    of: "line",
    at: [middle[0], y > 0 ? plan.high + CLEAR : plan.low - CLEAR - WORDS * 0.8],
    anchor: "middle",
  };
}

/** A cross where a load comes down, an arrow for a level one. */
function loadMarks({ at: [x, y], force }: Load): OverlayStroke[] {
  const level = Math.hypot(force[0], force[1]);
  if (level > 0) {
    const [u, v] = [force[0] / level, force[1] / level];
    const tip: Point = [x + u * ARROW, y + v * ARROW];
    const barb = (side: 1 | -1): Point => [
      tip[0] - u * MARK * 1.4 - side * v * MARK * 0.7,
      tip[1] - v * MARK * 1.4 + side * u * MARK * 0.7,
    ];
    return [
      { points: [[x, y], tip], is: "load" },
      { points: [barb(1), tip, barb(-1)], is: "load" },
    ];
  }
  return [
    {
      points: [
        [x - MARK, y - MARK],
        [x + MARK, y + MARK],
      ],
      is: "load",
    },
    {
      points: [
        [x - MARK, y + MARK],
        [x + MARK, y - MARK],
      ],
      is: "load",
    },
  ];
}

/** Beside the mark, towards the middle of the chair; over an arrow to the side. */
function loadWords({ at: [x, y], force }: Load, chair: Chair): OverlayWords {
  const text = printQuantity({ number: Math.hypot(...force), dimension: "force" }, chair.design.units);
  const level = Math.hypot(force[0], force[1]);
  const inward = x > MARK ? -1 : 1;
  const anchor = inward < 0 ? "end" : "start";
  if (level === 0) return { text, of: "load", at: [x + inward * (MARK + CLEAR), y - WORDS / 3], anchor };
  const [u, v] = [force[0] / level, force[1] / level];
  if (Math.abs(u) > Math.abs(v))
    return { text, of: "load", at: [x + u * ARROW * 0.55, y + CLEAR], anchor: "middle" };
  return { text, of: "load", at: [x + inward * CLEAR, y + v * ARROW * 0.7 - WORDS / 3], anchor };
}

/** The mark of a centre of gravity: a quartered circle. */
function centreMarks([x, y]: Point): OverlayStroke[] {
  const ring = circle([x, y], MARK * 1.5);
  const quarter = (from: number): Point[] => [
    [x, y],
    ...ring.slice((ring.length / 4) * from, (ring.length / 4) * (from + 1)),
    ring[((ring.length / 4) * (from + 1)) % ring.length]!,
  ];
  return [
    { points: ring, is: "centre" },
    { points: quarter(0), is: "quarter" },
    { points: quarter(2), is: "quarter" },
  ];
}
