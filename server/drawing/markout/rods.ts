/**
 * Rods: full-size sticks with every distance along the posts, to be laid against them.
 */
import type { Mortise, Piece } from "../../joinery/pieces/piece.ts";
import { type Figures, mortiseSteps } from "./figures.ts";
import { type Item, line, type Point, SMALL, words } from "./page.ts";
import { spread } from "./spread.ts";
import type { FullSize } from "./tiles.ts";

/** Height of a rod, of its name above and its figures below, mm. */
const ROD = 12;
const NAME = 5;
const BELOW = 27;
const EACH = NAME + ROD + BELOW;

/** All posts' rods under each other, so many to a drawing as fit in that height. */
export function rodsOf(
  pieces: readonly Piece[],
  figures: Figures,
  high: number,
): { names: string[]; drawing: FullSize }[] {
  const posts = pieces.filter(({ is }) => is === "post");
  const most = Math.max(1, Math.floor(high / EACH));
  const drawings: { names: string[]; drawing: FullSize }[] = [];
  for (let k = 0; k < posts.length; k += most) {
    const some = posts.slice(k, k + most);
    const rods = some.map((piece, at) => rodOf(piece, figures, at * EACH + NAME));
    drawings.push({
      names: some.map(({ name }) => name),
      drawing: {
        width: Math.max(...rods.map(({ width }) => width)),
        height: some.length * EACH,
        items: rods.flatMap(({ items }) => items),
        captions: some.map(({ name, parts }, at) => ({
          y: at * EACH + NAME - 1.6,
          text: `Rod for ${name}, ${parts.length} off`,
          width: rods[at]!.width,
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

function rodOf(piece: Piece, figures: Figures, y: number): { items: Item[]; width: number } {
  const start = (datum: string) => piece.datums.find(({ name }) => name === datum)?.along ?? 0;
  const ends = piece.ends.map((end) => start(end.datum) + endOf(piece, end));
  const left = Math.min(0, ends[0]!) - 3;
  const at = (x: number) => x - left;
  const items: Item[] = [box(at(Math.min(0, ends[0]!)), at(ends[1]!), y, y + ROD, "knife")];
  const stops: Stop[] = [];
  piece.datums.forEach(({ name, along, reach }, k) => {
    items.push(
      line(
        [
          [at(along), y - 1.5],
          [at(along), y + ROD],
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
  for (const mortise of piece.mortises)
    items.push(...mortiseOn(mortise, at, start(mortise.datum), y, figures, stops));
  stops.push({ x: at(ends[1]!), text: `top ${figures.print(ends[1]! - start(piece.ends[1]!.datum))}` });
  const xs = spread(
    stops.map(({ x }) => x),
    3,
    1.5,
    1e5,
  );
  stops.forEach(({ x, text }, k) => {
    const foot = y + ROD;
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
      words([xs[k]! + 0.85, foot + 4.2], text, SMALL, { anchor: "end", upright: true }),
    );
  });
  return { items, width: at(ends[1]!) + 3 };
}

/** The farthest that an end is cut, from its datum. */
function endOf(piece: Piece, end: Piece["ends"][number]): number {
  const at = end.cuts.map((cut) => cut.at);
  if (at.length > 0) return end === piece.ends[0] ? Math.min(...at) : Math.max(...at);
  if (end === piece.ends[0]) return 0;
  const stations = piece.turned!.stations;
  return stations[stations.length - 1]!.at - (piece.datums[piece.datums.length - 1]?.along ?? 0);
}

function mortiseOn(
  mortise: Mortise,
  at: (x: number) => number,
  start: number,
  y: number,
  figures: Figures,
  stops: Stop[],
): Item[] {
  const { letter, is, face, from, to } = mortise;
  const steps = mortiseSteps(figures, mortise);
  const x = at(start + Math.min(...from));
  if (is !== "mortise") {
    stops.push({
      x,
      text: `${letter} ${is === "peg" ? "peg" : face || "hole"} ${figures.text(steps.from[0])}`,
    });
    const [low, high] = [y + ROD / 2 - 2, y + ROD / 2 + 2];
    return [
      line(
        [
          [x, y],
          [x, y + ROD],
        ],
        "fine",
      ),
      line(
        [
          [x - 2, (low + high) / 2],
          [x + 2, (low + high) / 2],
        ],
        "fine",
      ),
      words([x + 0.8, y + 3], letter, SMALL + 1, { bold: true }),
    ];
  }
  const end = at(start + Math.max(...to));
  stops.push({ x, text: `${letter} ${face} ${figures.text(Math.min(...steps.from))}` });
  stops.push({ x: end, text: `${letter} ${figures.text(Math.max(...steps.to))}` });
  // Front and back mortises take the upper half of the rod, the others the lower, as two often lie at one height.
  const upper = face === "front" || face === "back";
  const [low, high] = face === "" ? [y, y + ROD] : upper ? [y, y + ROD / 2] : [y + ROD / 2, y + ROD];
  return [
    box(x, end, low, high, "knife", 0.85),
    words([(x + end) / 2, (low + high) / 2 + 1.3], letter, 9, { anchor: "middle", bold: true }),
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

/** A stretch crossed out: nothing is measured there. */
function hatched(left: number, right: number, y: number): Item {
  const points: Point[] = [];
  const count = Math.max(1, Math.round((right - left) / 6));
  for (let k = 0; k <= count; k++) points.push([left + ((right - left) * k) / count, k % 2 ? y : y + ROD]);
  return line(points, "faint");
}
