/**
 * The sockets of a solid seat: on its plan with the sight line of each, and as a table of what to set before each is bored.
 */
import type { Plan, SeatBore, Spot } from "../../joinery/pieces/piece.ts";
import type { Block } from "./faces.ts";
import type { Figures } from "./figures.ts";
import { circle, type Item, line, type Point, SMALL, words } from "./page.ts";
import { told } from "./sheet/printer.ts";
import type { SheetMark, SheetPart } from "./sheet/sheet.ts";
import { LINE, paragraphs, tableBlock } from "./table.ts";
import { marksOf } from "./wording.ts";

/** How far a sight line is drawn to either side of its place, mm in the seat. */
const SIGHT = 70;

/** The contours of the hollow with their depths, and each socket's mouth as a circle, its sight line and its letter; `to` puts a place of the plan on the paper. */
export function boreItems(
  { bores = [], ring, hollow = [] }: Plan,
  figures: Figures,
  to: (spot: Spot) => Point,
): Item[] {
  const xs = ring.map(([x]) => x);
  const middle = (Math.min(...xs) + Math.max(...xs)) / 2;
  const axis = bores.length
    ? [line([to([middle, 0]), to([middle, Math.max(...ring.map(([, y]) => y))])], "datum")]
    : [];
  // What stands on the paper already, for letters to keep clear of.
  const letters: Point[] = [];
  const contours = hollow.flatMap(({ deep, ring: contour }): Item[] => {
    const spots = contour.map(to);
    // Its depth stands beside the middle line where the contour crosses that, behind.
    const [across, up] = spots.reduce((best, spot) => (spot[1] < best[1] ? spot : best));
    letters.push([across + BESIDE + 1, up - 1.7]);
    return [
      line(spots, "faint", { closed: true }),
      words([across + BESIDE, up - 0.5], figures.print(deep), SMALL),
    ];
  });
  return [...contours, ...axis, ...bores.flatMap((bore) => oneBore(bore, middle, to, letters))];
}

/** From the middle line to a figure beside it, mm. */
const BESIDE = 1;

/** Between two letters, mm. */
const APART = 3.4;

/** One socket with its letter, which keeps clear of those that stand there already. */
function oneBore(bore: SeatBore, middle: number, to: (spot: Spot) => Point, letters: Point[]): Item[] {
  // Seen from above with the front below, the sitter's left is on the right.
  const x = middle + (bore.side === "right" ? -bore.out : bore.out);
  const way = bore.towards === "left" ? 1 : -1;
  const run: Spot = [way * Math.sin(bore.sightLine), Math.cos(bore.sightLine)];
  const on = (far: number): Point => to([x + run[0] * far, bore.behind + run[1] * far]);
  const [u, v] = to([x, bore.behind]);
  const radius = Math.abs(to([x + bore.diameter / 2, bore.behind])[0] - u);
  // The letter stands clear of the sight line, to the middle of the seat.
  const far = radius + 2.6;
  const turn = way * Math.sin(bore.sightLine) * Math.sign(x - middle || 1) > 0 ? 1 : -1;
  const [c, s] = [
    to([x + run[0], bore.behind + run[1]])[0] - u,
    to([x + run[0], bore.behind + run[1]])[1] - v,
  ];
  const size = Math.hypot(c, s);
  const beside = (by: number, along: number): Point => [
    u + (-turn * by * s + along * c) / size,
    v + (turn * by * c + along * s) / size,
  ];
  const places = [far, -far, far + APART].flatMap((by) =>
    [0, -APART, APART].map((along) => beside(by, along)),
  );
  const isClear = ([a, b]: Point) => letters.every(([p, q]) => Math.hypot(a - p, b - q) > APART);
  const at = places.find(isClear) ?? places[0]!;
  letters.push(at);
  const sight = bore.lean > 1e-3 ? [line([on(-SIGHT / 2), on(SIGHT)], "knife")] : [];
  return [
    circle([u, v], radius, "hidden"),
    ...sight,
    words([at[0], at[1] + 1.2], bore.letter, SMALL + 1, { bold: true, anchor: "middle" }),
  ];
}

const headings = [
  "",
  "for",
  "from the middle line",
  "behind the front",
  "sight line",
  "lean",
  "rise in 200",
  "bevel",
  "bit",
  "deep",
  "notes",
];

/** The boring schedule, in the order of boring; empty where the seat has no sockets. */
export function boreTable(sheet: SheetPart, wide: number): Block {
  const bores = marksOf(sheet, "bore", "through-bore");
  if (bores.length === 0) return { items: [], height: 0 };
  const rows = bores.map(boreRow);
  // A column that all rows leave empty, as the rise does in inches, is left out.
  const filled = headings.map((heading, k) => heading === "" || rows.some((row) => row[k]));
  const shown = (row: readonly string[]) => row.filter((_, k) => filled[k]);
  const table = tableBlock("Sockets, bored in this order", shown(headings), rows.map(shown), wide);
  const how = paragraphs([HOW], wide);
  return {
    items: [...table.items, ...how.items.map((item) => shifted(item, table.height))],
    height: table.height + how.height + LINE / 2,
  };
}

const HOW =
  "Places are on the face that the bit goes in. A sight line is counted in that face from straight back towards the side named: 0° back, 90° out, 180° forward. Stand the bevel on it, set as told, by its rise in a run of 200 where that is given, which is finer, and bore with the bit along its blade; the drawn line runs the way that the leg or the post leans. Try the angle in waste first.";

const shifted = (item: Item, by: number): Item =>
  item.is === "words"
    ? { ...item, at: [item.at[0], item.at[1] + by] }
    : { ...item, points: item.points.map(([x, y]): Point => [x, y + by]) };

function boreRow(bore: SheetMark): string[] {
  const { figures } = bore;
  const tapers = figures["at its end"];
  const side = told(bore, "side");
  return [
    told(bore, "letter"),
    told(bore, "for"),
    side === "middle" ? "on it" : `${told(bore, "out")} ${side}`,
    told(bore, "behind"),
    `${told(bore, "sight line")} ${told(bore, "towards")}`,
    told(bore, "lean"),
    told(bore, "rise in 200"),
    told(bore, "bevel"),
    `Ø ${tapers ? tapers.text : told(bore, "diameter")}`,
    told(bore, "deep") || "through",
    [
      `from the ${bore.face}`,
      ...(tapers
        ? [`reamed to Ø ${told(bore, "diameter")} at the mouth, a cone of ${told(bore, "cone")}`]
        : []),
    ].join("; "),
  ];
}
