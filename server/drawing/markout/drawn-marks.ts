/**
 * The marks of a laid-open face as lines, at whatever scale and place.
 */
import type { LaidFace, Mark, Spot } from "../../joinery/pieces/piece.ts";
import { hullOf } from "../hull.ts";
import { circle, type Item, line, type Pen, type Point } from "./page.ts";

/** From a face to the page. */
interface Placing {
  to(spot: Spot): Point;
  /** Paper for a millimetre of wood. */
  scale: number;
}

const penOf: Partial<Record<Mark["is"], Pen>> = {
  arris: "outline",
  end: "outline",
  knee: "faint",
  taper: "faint",
  mortise: "knife",
  "haunch-mortise": "fine",
  exit: "hidden",
  tenon: "knife",
  haunch: "fine",
  rest: "knife",
  datum: "datum",
};

/** In the order to draw them: what is filled first, outlines last. */
const ORDER: Mark["is"][] = [
  "tenon",
  "haunch",
  "haunch-mortise",
  "mortise",
  "exit",
  "hole",
  "knee",
  "taper",
  "rest",
  "end",
  "arris",
  "datum",
];

/** Every mark of a face but its words. */
export function drawnMarks(face: LaidFace, placing: Placing): Item[] {
  const ordered = [...face.marks].sort((a, b) => ORDER.indexOf(a.is) - ORDER.indexOf(b.is));
  const behind = ordered.filter(({ is }) => is === "tenon" || is === "haunch");
  const wood = face.rings.map((ring) => line(ring.map(placing.to), "none", { closed: true, fill: 1 }));
  return [
    ...behind.flatMap((mark) => drawn(mark, placing)),
    ...wood,
    ...ordered.filter((mark) => !behind.includes(mark)).flatMap((mark) => drawn(mark, placing)),
  ];
}

function drawn(mark: Mark, { to, scale }: Placing): Item[] {
  const points = mark.spots.map(to);
  const pen = penOf[mark.is] ?? "fine";
  switch (mark.is) {
    case "tenon":
    case "haunch":
      return [line(around(points), pen, { closed: true })];
    case "mortise":
      return [line(points, pen, { closed: true, fill: 0.82 })];
    case "haunch-mortise":
      return [line(points, pen, { closed: true, fill: 0.93 })];
    case "exit":
      return [line(points, pen, { closed: true })];
    case "hole":
      return hole(points[0]!, (mark.diameter! / 2) * scale);
    case "datum":
      return [line(lengthened(points, 1.5), pen)];
    default:
      return [line(points, pen)];
  }
}

function hole([x, y]: Point, radius: number): Item[] {
  const reach = Math.max(radius + 0.7, 1.2);
  return [
    circle([x, y], Math.max(radius, 0.3), "knife", { fill: 0.82 }),
    line(
      [
        [x - reach, y],
        [x + reach, y],
      ],
      "fine",
    ),
    line(
      [
        [x, y - reach],
        [x, y + reach],
      ],
      "fine",
    ),
  ];
}

/** The convex outline of some points. */
function around(points: readonly Point[]): Point[] {
  // Points that should be equal are, to a hundredth of the thinnest line.
  const rounded = (v: number) => Math.round(v * 1e3) / 1e3;
  const xs = Float64Array.from(points, ([x]) => rounded(x));
  const ys = Float64Array.from(points, ([, y]) => rounded(y));
  return hullOf(xs, ys, points.length).map((k): Point => [xs[k]!, ys[k]!]);
}

function lengthened(points: readonly Point[], by: number): Point[] {
  const [a, b] = points as [Point, Point];
  const size = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
  const [ux, uy] = [((b[0] - a[0]) / size) * by, ((b[1] - a[1]) / size) * by];
  return [
    [a[0] - ux, a[1] - uy],
    [b[0] + ux, b[1] + uy],
  ];
}
