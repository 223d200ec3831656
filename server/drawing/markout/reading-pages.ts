/**
 * How to read the sheets: what each line and sign means, and the words that stand on them.
 */
import { linesOf } from "./lettering.ts";
import { circle, type Item, LARGE, line, moved, type Pen, type Point, SMALL, words } from "./page.ts";
import type { Paper } from "./paper.ts";
import { roomOn, type Unnumbered } from "./sheet-page.ts";

/** Between two columns, and for a sample of a line, mm. */
const GAP = 6;
const SAMPLE = 24;
/** Letters, the largest first: their size in points, from one line to the next and between sentences, mm. */
const LETTERS: readonly Letters[] = [
  { size: 11.4, step: 5.2, between: 2.4 },
  { size: LARGE, step: 4.4, between: 2 },
  { size: LARGE, step: 3.9, between: 1.2 },
  { size: 9, step: 3.7, between: 1.2 },
  { size: SMALL, step: 3, between: 1 },
];
/** Of the width for what lines and signs mean. */
const LEGENDS = [0.36, 0.32, 0.28];

interface Letters {
  size: number;
  step: number;
  between: number;
}

const pens: [Pen, string][] = [
  ["outline", "an outline: what is cut, or the edge of a part"],
  ["knife", "a line struck with a knife: a shoulder, a mortise, an edge inside an outline"],
  ["hidden", "behind other wood: a tenon, the far side of a part, where a through mortise comes out"],
  ["datum", "a datum, squared round the stick, or a middle line"],
  ["fine", "a dimension, or a line that leads to a figure"],
  ["faint", "where a stick turns, a curve begins, or a taper"],
];

const sentences = (unit: string, angle: string): string[] => [
  `Figures are in ${unit}. Work to the figures, never to what you measure on the paper: only sheets marked "full size" may be measured.`,
  "Each sheet is one part as it leaves the bench. A part made as a mirror image has the same figures with left and right changed over.",
  "The four faces of a squared part are laid open one under another, as if it were rolled away from you. The heavy letters are mortises and holes; the table under the faces has a row for each.",
  "Distances along a stick run from the datum named, D or D1, D2 where it bends. Squaring a datum round the stick is the first thing to do.",
  "A gauge is set from the face named. Two figures with a dash are the near side and the far side of the mortise from that face.",
  "A shoulder's bevel is between the blade and the arris that the stock of the bevel lies on, inside the stick. 90° is square. The bevel sheet has each setting at its true angle. Across a shoulder narrower than a hand strike the line from the first mark by the bevel, if the arris is straight there; across a wider one through both marks.",
  "A lean is told as an angle, and as a rise in a run: 1:12 is one across in twelve along. From 1:8 on set it by the rise in a run, which is the finer figure.",
  "Figures are rounded so that what fits still fits: a mortise is never set out smaller than its tenon, and a tenon is never longer than its mortise is deep.",
  `The whole chair is drawn in ${angle}-angle projection; its heights are from the floor that it stands on.`,
  "Grain runs along the length of the stock named at the head of a sheet.",
  'Where a table has no room left it says that it is continued, and the next sheet of the part says "continued" in its title.',
  "A sign that these letters lack, of another script than Latin, Greek or Cyrillic, stands by its number in Unicode, as U+6905.",
  "The text field is the first eight signs of the SHA-256 of the chair's file: sheets with the same signs are of the same version. With files that it is made from, theirs follow its own in the order it names them.",
  "A caution, on every sheet: saws, planers and lathes hurt. Work by the maker's instructions of each machine, with its guards on, and leave alone what you have not been shown. The figures are worked out and not tested: build one chair and try it with care before you build more, and have it tested by the standards that hold where it is used. Chairs for children, for sale or for public places come under rules of their own.",
];

/** One page. */
export function readingPage(paper: Paper, unit: string, angle: string): Unnumbered {
  const { wide, high } = roomOn(paper);
  const made = LETTERS.flatMap((letters) => LEGENDS.map((share) => laid(wide, share, letters, unit, angle)));
  const { items } = made.find(({ height }) => height <= high) ?? made[made.length - 1]!;
  return {
    titles: {
      part: "How to read these sheets",
      about: "lines, signs and words",
      scale: "Not to scale.",
      caution: "Read this page before the first cut.",
    },
    items,
    page: { name: "reading" },
  };
}

interface Laid {
  items: Item[];
  height: number;
}

function laid(wide: number, share: number, letters: Letters, unit: string, angle: string): Laid {
  const { size, step, between } = letters;
  const first = (wide - GAP) * share;
  const column = wide - GAP - first;
  const left = legend(first, letters);
  let y = 4;
  const right = sentences(unit, angle).flatMap((sentence) => {
    const lines = linesOf(sentence, size, column).map((text, k) => words([0, y + k * step], text, size));
    y += lines.length * step + between;
    return lines;
  });
  return {
    items: [...left.items, ...right.map((item) => moved(item, first + GAP, 0))],
    height: Math.max(left.height, y - step - between + 1),
  };
}

function legend(wide: number, { size, step }: Letters): Laid {
  const items: Item[] = [];
  let y = 4;
  const add = (sample: Item[], text: string) => {
    const lines = linesOf(text, size, wide - SAMPLE - 4);
    items.push(...sample.map((item) => moved(item, 0, y)));
    items.push(...lines.map((each, k) => words([SAMPLE + 4, y + 1 + k * step], each, size)));
    y += Math.max(lines.length * step + 2.4, 8.4);
  };
  for (const [pen, text] of pens) add([straight([0, 0], [SAMPLE, 0], pen)], text);
  const box: Point[] = [
    [4, -2.4],
    [20, -2.4],
    [20, 2.4],
    [4, 2.4],
  ];
  add(
    [line(box, "knife", { closed: true, fill: 0.82 })],
    "a mortise or a socket, seen on the face that it is cut into",
  );
  add(
    [
      circle([12, 0], 2, "knife", { fill: 0.82 }),
      straight([8, 0], [16, 0], "fine"),
      straight([12, -4], [12, 4], "fine"),
    ],
    "a hole, its middle where the lines cross; a peg's where it is small",
  );
  add(
    [
      straight([2, 0], [22, 0], "fine"),
      circle([2, 0], 0.7, "fine"),
      straight([12, -2], [12, 2], "fine"),
      straight([22, -2], [22, 2], "fine"),
    ],
    "distances that all run from the small circle",
  );
  add(
    [circle([12, 0], 2, "fine"), straight([8, 0], [16, 0], "fine"), straight([12, -3], [12, 3], "fine")],
    "where two full-size pages are joined: lay one cross on the other",
  );
  return { items, height: y };
}

const straight = (a: Point, b: Point, pen: Pen): Item => line([a, b], pen);
