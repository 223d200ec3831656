/**
 * Story sticks: at full size, every distance along the posts, to be laid against them.
 */
import type { Mortise, Piece } from "../../joinery/pieces/piece.ts";
import { type Figures, mortiseSteps } from "./figures.ts";
import { widthOf } from "./lettering.ts";
import { circle, type Item, LARGE, line, moved, POINT, type Point, words } from "./page.ts";
import { spread } from "./spread.ts";
import type { FullSize } from "./tiles.ts";

/** Height of one of a stick's four lanes and of its name above, from it to its figures, and white under those, mm. */
const LANE = 4.5;
const STICK = 4 * LANE;
const NAME = 6.5;
const LEADER = 4.2;
const UNDER = 1.5;

/** All posts' sticks under each other, so many to a drawing as fit in that height, in large letters. */
export function stickDrawings(
  pieces: readonly Piece[],
  figures: Figures,
  high: number,
): { names: string[]; drawing: FullSize }[] {
  const posts = pieces.filter(({ is }) => is === "post");
  const all = posts.map((piece) => stickOf(piece, figures, NAME));
  const each = NAME + STICK + Math.max(0, ...all.map(({ below }) => below));
  const most = Math.max(1, Math.floor(high / each));
  const drawings: { names: string[]; drawing: FullSize }[] = [];
  for (let k = 0; k < posts.length; k += most) {
    const some = posts.slice(k, k + most);
    const sticks = all.slice(k, k + most);
    drawings.push({
      names: some.map(({ name }) => name),
      drawing: {
        width: Math.max(...sticks.map(({ width }) => width)),
        height: some.length * each,
        items: sticks.flatMap(({ items }, at) => items.map((item) => moved(item, 0, at * each))),
        captions: some.map(({ name, parts }, at) => ({
          y: at * each + NAME - 2.6,
          text: `Story stick for ${name}, ${parts.length} off`,
          width: sticks[at]!.width,
        })),
      },
    });
  }
  return drawings;
}

interface Stop {
  x: number;
  text: string;
}

interface Stick {
  items: Item[];
  width: number;
  /** What its figures take under it. */
  below: number;
}

/** How far under its middle a line of letters has its foot, and from one line to the next, mm. */
const DROP = 0.36 * LARGE * POINT;
const APART = 4.2;
/** Between the letters of two holes beside each other. */
const BESIDE = 3.4;

function stickOf(piece: Piece, figures: Figures, y: number): Stick {
  const start = (datum: string) => piece.datums.find(({ name }) => name === datum)?.along ?? 0;
  const ends = piece.ends.map((end) => start(end.datum) + endOf(piece, end));
  const lanes = lanesOf(piece);
  const left = Math.min(0, ends[0]!) - Math.max(...lanes.map((name) => widthOf(name, LARGE))) - 3;
  const at = (x: number) => x - left;
  const items: Item[] = [box(at(Math.min(0, ends[0]!)), at(ends[1]!), y, y + STICK, "knife")];
  lanes.forEach((name, k) => {
    items.push(words([0, y + k * LANE + LANE / 2 + DROP], name, LARGE));
    if (k > 0) items.push(between(at(0), at(ends[1]!), y + k * LANE));
  });
  const stops: Stop[] = [];
  piece.datums.forEach(({ name, along, reach }, k) => {
    items.push(
      line(
        [
          [at(along), y - 1.5],
          [at(along), y + STICK],
        ],
        "outline",
      ),
    );
    stops.push({ x: at(along), text: `${name} 0` });
    const next = piece.datums[k + 1];
    if (!next) return;
    // The stick bends from the end of one straight to the beginning of the next.
    items.push(hatched(at(along + reach[1]), at(next.along), y));
    if (next.along - along - reach[1] > 0.5)
      stops.push({ x: at(along + reach[1]), text: `curve from ${figures.print(reach[1])}` });
  });
  const on: On = { piece, at, y, figures, stops, letters: [] };
  for (const mortise of piece.mortises) items.push(...mortiseOn(mortise, start(mortise.datum), on));
  stops.push({ x: at(ends[1]!), text: `top ${figures.print(ends[1]! - start(piece.ends[1]!.datum))}` });
  const xs = spread(
    stops.map(({ x }) => x),
    APART,
    1.5,
    1e5,
  );
  stops.forEach(({ x, text }, k) => {
    const foot = y + STICK;
    items.push(
      line(
        [
          [x, foot],
          [x, foot + 1],
          [xs[k]!, foot + 3],
          [xs[k]!, foot + 3.6],
        ],
        "fine",
      ),
      words([xs[k]! + DROP, foot + LEADER], text, LARGE, { anchor: "end", upright: true }),
    );
  });
  const longest = Math.max(...stops.map(({ text }) => widthOf(text, LARGE)));
  return { items, width: at(ends[1]!) + 3, below: LEADER + longest + UNDER };
}

/** The farthest that an end is cut, from its datum. */
function endOf(piece: Piece, end: Piece["ends"][number]): number {
  const at = end.cuts.map((cut) => cut.at);
  if (at.length > 0) return end === piece.ends[0] ? Math.min(...at) : Math.max(...at);
  if (end === piece.ends[0]) return 0;
  const stations = piece.turned!.stations;
  return stations[stations.length - 1]!.at - (piece.datums[piece.datums.length - 1]?.along ?? 0);
}

/** The lanes of a stick: a squared post's faces, or which quarter round from the front a hole in a turned one goes in. */
const lanesOf = (piece: Piece): string[] =>
  piece.turned ? ["front", "90°", "180°", "270°"] : piece.faces.map(({ name }) => name);

function laneOf(piece: Piece, { face, round = 0 }: Mortise): number {
  if (!piece.turned) return lanesOf(piece).indexOf(face);
  return (Math.round(round / (Math.PI / 2)) + 4) % 4;
}

interface On {
  piece: Piece;
  at: (x: number) => number;
  y: number;
  figures: Figures;
  stops: Stop[];
  /** Where letters of holes stand already, by lane. */
  letters: { lane: number; x: number }[];
}

function mortiseOn(mortise: Mortise, start: number, { piece, at, y, figures, stops, letters }: On): Item[] {
  const { letter, is, face, from, to } = mortise;
  const steps = mortiseSteps(figures, mortise);
  const x = at(start + Math.min(...from));
  const lane = laneOf(piece, mortise);
  const top = y + lane * LANE;
  const base = top + LANE / 2 + DROP;
  if (is !== "mortise") {
    const what = is === "peg" ? "peg" : face || "hole";
    stops.push({ x, text: `${letter} ${what} ${figures.text(steps.from[0])}` });
    // Two holes beside each other have their letters one after the other.
    let letterAt = x + 1.8;
    while (letters.some((other) => other.lane === lane && Math.abs(other.x - letterAt) < BESIDE))
      letterAt += BESIDE;
    letters.push({ lane, x: letterAt });
    const through: Point[] = [
      [x, top],
      [x, top + LANE],
    ];
    return [
      line(through, "knife"),
      circle([x, top + LANE / 2], 1.2, "fine"),
      words([letterAt, base], letter, LARGE, { bold: true }),
    ];
  }
  const end = at(start + Math.max(...to));
  stops.push({ x, text: `${letter} ${face} ${figures.text(Math.min(...steps.from))}`.replace("  ", " ") });
  stops.push({ x: end, text: `${letter} ${figures.text(Math.max(...steps.to))}` });
  return [
    box(x, end, top, top + LANE, "knife", 0.85),
    words([(x + end) / 2, base], letter, LARGE, { anchor: "middle", bold: true }),
  ];
}

function box(left: number, right: number, top: number, bottom: number, pen: "knife", fill?: number): Item {
  const corners: Point[] = [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ];
  return line(corners, pen, { closed: true, ...(fill === undefined ? {} : { fill }) });
}

const between = (left: number, right: number, y: number): Item =>
  line(
    [
      [left, y],
      [right, y],
    ],
    "faint",
  );

/** A stretch crossed out: nothing is measured there. */
function hatched(left: number, right: number, y: number): Item {
  const points: Point[] = [];
  const count = Math.max(1, Math.round((right - left) / 6));
  for (let k = 0; k <= count; k++) points.push([left + ((right - left) * k) / count, k % 2 ? y : y + STICK]);
  return line(points, "faint");
}
