/**
 * A squared piece with its faces laid open one under another, each with its running distances beneath.
 */
import type { LaidFace, Piece, Spot } from "../../joinery/pieces/piece.ts";
import { drawnMarks } from "./drawn-marks.ts";
import { type Figures, mortiseSteps } from "./figures.ts";
import { widthOf } from "./lettering.ts";
import { BODY, type Item, line, type Point, SMALL, words } from "./page.ts";
import { spread } from "./spread.ts";

export interface Block {
  items: Item[];
  height: number;
}

/** Room for the faces' names at the left, mm. */
const NAMES = 23;
/** Between two running distances, and from the face to them. */
const APART = 2.9;
const LEADER = 3.2;
/** Above a face that has letters. */
const LETTERS = 3.6;
/** Between faces that have nothing between them. */
const GAP = 2.5;

/** Nearer to the datum than this an end has no figure of its own, mm. */
const LEAST = 0.5;

/** Scales a piece may be drawn at, one to so many. */
const scales = [1, 2, 3, 4, 5, 6, 8, 10, 12, 15, 20];

/**
 * All faces in a room so wide; the scale is the largest at which they are not higher than `high`, if any. `by` is how much all of it is
 * enlarged afterwards, to that scale.
 */
export function facesBlock(
  piece: Piece,
  figures: Figures,
  wide: number,
  high: number,
  by = 1,
): Block & { scale: number } {
  for (const scale of scales) {
    const block = atScale(piece, figures, wide, scale * by);
    if (block && (block.height <= high || scale === 20)) return { ...block, scale };
  }
  return { items: [], height: 0, scale: 1 };
}

function atScale(piece: Piece, figures: Figures, wide: number, scale: number): Block | undefined {
  const all = piece.faces.flatMap(({ marks }) => marks.flatMap(({ spots }) => spots));
  const xs = all.map(([x]) => x);
  const [low, high] = [Math.min(...xs), Math.max(...xs)];
  if ((high - low) / scale > wide - NAMES - 4) return undefined;
  const left = NAMES + 2 - low / scale;
  const items: Item[] = [];
  let y = 3.5;
  items.push(...datumNames(piece, left, y, scale));
  for (const [k, face] of piece.faces.entries()) {
    const ys = face.marks.flatMap(({ spots }) => spots.map(([, v]) => v));
    const [bottom, top] = [Math.min(...ys), Math.max(...ys)];
    const stops = stopsOf(piece, face, k === piece.faces.length - 1, figures);
    y += face.marks.some(({ letter, is }) => letter && is !== "datum") ? LETTERS : GAP;
    const upper = y;
    const to = ([x, v]: Spot): Point => [left + x / scale, upper + (top - v) / scale];
    items.push(...drawnMarks(face, { to, scale: 1 / scale }));
    items.push(...lettersOf(face, to, wide));
    y += (top - bottom) / scale;
    items.push(...nameOf(face, (upper + y) / 2));
    const band = runningDistances(stops, (x) => left + x / scale, y + 0.8, wide);
    items.push(...band.items);
    y += band.height;
  }
  return { items, height: y };
}

function datumNames(piece: Piece, left: number, y: number, scale: number): Item[] {
  const first = piece.faces[0];
  return (first?.marks ?? [])
    .filter(({ is }) => is === "datum")
    .map(({ spots, letter }) => {
      const x = (spots[0]![0] + spots[1]![0]) / 2;
      return words([left + x / scale, y - 1], letter!, SMALL, { anchor: "middle", bold: true });
    });
}

function nameOf(face: LaidFace, y: number): Item[] {
  const { name, gauge } = face;
  if (!gauge) return [words([0, y + 1], name, BODY, { bold: true })];
  return [words([0, y - 0.4], name, BODY, { bold: true }), words([0, y + 2.6], gauge, SMALL)];
}

/** Letters of mortises and holes above the face, over their middles. */
function lettersOf(face: LaidFace, to: (spot: Spot) => Point, wide: number): Item[] {
  const marked = face.marks.filter(({ letter, is }) => letter && is !== "datum");
  const top = Math.min(...face.marks.flatMap(({ spots }) => spots.map((spot) => to(spot)[1])));
  const middles = marked.map(({ spots }) => spots.reduce((sum, spot) => sum + to(spot)[0], 0) / spots.length);
  const places = spread(middles, 2.6, NAMES, wide);
  return marked.map(({ letter }, k) =>
    words([places[k]!, top - 0.9], letter!, BODY, { anchor: "middle", bold: true }),
  );
}

interface Stop {
  x: number;
  text: string;
}

/** Where distances stop along a face: its mortises and holes, and on the last face the stick's own ends and bends. */
export function stopsOf(piece: Piece, face: LaidFace, last: boolean, figures: Figures): Stop[] {
  const stops: Stop[] = [];
  for (const mortise of piece.mortises) {
    if (mortise.face !== face.name) continue;
    const mark = face.marks.find(({ letter }) => letter === mortise.letter);
    if (!mark) continue;
    const { from, to } = mortiseSteps(figures, mortise);
    const xs = mark.spots.map(([x]) => x);
    if (mortise.is !== "mortise") stops.push({ x: xs[0]!, text: figures.text(from[0]) });
    else {
      stops.push({ x: Math.min(...xs), text: figures.text(Math.min(...from)) });
      stops.push({ x: Math.max(...xs), text: figures.text(Math.max(...to)) });
    }
  }
  if (last) stops.push(...stickStops(piece, face, figures));
  return unique(stops);
}

/** The datums, the bends and where tapers begin, and the ends over all. */
function stickStops(piece: Piece, face: LaidFace, figures: Figures): Stop[] {
  const datums = face.marks.filter(({ is }) => is === "datum");
  const middle = (spots: readonly Spot[]) => (spots[0]![0] + spots[1]![0]) / 2;
  const stops: Stop[] = datums.map(({ spots, letter }) => ({ x: middle(spots), text: `${letter} 0` }));
  for (const end of piece.ends) {
    const cut = end.cuts[0];
    if (!cut) continue;
    const marks = face.marks.filter(({ is }) => is === "end").flatMap(({ spots }) => spots.map(([x]) => x));
    if (marks.length === 0) continue;
    const x = end === piece.ends[0] ? Math.min(...marks) : Math.max(...marks);
    // The two arrises of this face.
    const own = piece.faces.indexOf(face);
    const at = [end.cuts[(own + 3) % 4], end.cuts[own]].flatMap((each) => (each ? [each.at] : []));
    const reach = end === piece.ends[0] ? Math.min(...at) : Math.max(...at);
    if (Math.abs(reach) > LEAST) stops.push({ x, text: figures.print(reach) });
  }
  return stops;
}

function unique(stops: readonly Stop[]): Stop[] {
  const sorted = [...stops].sort((a, b) => a.x - b.x);
  return sorted.filter(
    (stop, k) => k === 0 || stop.text !== sorted[k - 1]!.text || stop.x - sorted[k - 1]!.x > 0.5,
  );
}

/** Figures running up below a line, each led to its place; they keep from `from` to `wide`. */
export function runningDistances(
  stops: readonly Stop[],
  at: (x: number) => number,
  y: number,
  wide: number,
  from = NAMES,
): Block {
  if (stops.length === 0) return { items: [], height: 0.8 };
  const xs = stops.map(({ x }) => at(x));
  const places = spread(xs, APART, from + 1, wide - 1);
  const longest = Math.max(...stops.map(({ text }) => widthOf(text, SMALL)));
  const items: Item[] = [];
  for (const [k, { text }] of stops.entries()) {
    const [x, place] = [xs[k]!, places[k]!];
    items.push(
      line(
        [
          [x, y],
          [x, y + 0.8],
          [place, y + LEADER - 0.6],
          [place, y + LEADER],
        ],
        "fine",
      ),
      words([place + 0.85, y + LEADER + 0.5], text, SMALL, { anchor: "end", upright: true }),
    );
  }
  return { items, height: 0.8 + LEADER + 0.5 + longest + 0.8 };
}
