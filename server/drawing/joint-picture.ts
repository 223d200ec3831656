/**
 * A joint in section as a small picture: cut along its thickness at the left, along its width at the right. It brings its own paper, so
 * that it reads the same in every theme.
 */
import type { Chair, Joint } from "../chair/chair.ts";
import { type JointSection, sectionsOfJoint } from "./joint-section.ts";
import type { Point } from "./sheet.ts";

/** Picture dots to a millimetre at the most, the widest picture, the room between the two cuts and round them. */
const LARGEST = 2.4;
const WIDEST = 380;
const TALLEST = 190;
const ROOM = 14;
const PAPER = "#fbfaf6";
const INK = "#23262b";
const WOOD = { entered: "#e3d6bd", others: "#b9b4a8", part: "#c99d63" };

/** SVG text of at most some 380 × 190 dots; nothing where there is no tenon to be seen. */
export function jointPicture(chair: Chair, joint: Joint): string | undefined {
  const sections = sectionsOfJoint(chair, joint);
  if (!sections) return undefined;
  const both = [sections.thick, sections.wide];
  const sizes = both.map(({ shown: { low, high } }) => [high[0] - low[0], high[1] - low[1]] as const);
  const wide = sizes.reduce((sum, [x]) => sum + x, 0);
  const tall = Math.max(...sizes.map(([, y]) => y));
  if (!(wide > 0 && tall > 0 && Number.isFinite(wide + tall))) return undefined;
  const scale = Math.min(LARGEST, (WIDEST - 3 * ROOM) / wide, (TALLEST - 2 * ROOM) / tall);
  const width = wide * scale + 3 * ROOM;
  const height = tall * scale + 2 * ROOM;
  let x = ROOM;
  const views = both.map((section, k) => {
    const [across, down] = sizes[k]!;
    const view = viewOf(section, [x, ROOM + ((tall - down) * scale) / 2], scale);
    x += across * scale + ROOM;
    return view;
  });
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${number(width)}" height="${number(height)}" viewBox="0 0 ${number(width)} ${number(height)}"><rect width="100%" height="100%" rx="4" fill="${PAPER}"/>${views.join("")}</svg>`;
}

/** One cut, clipped to what is shown. */
function viewOf({ entered, others, part, pegs, shown }: JointSection, at: Point, scale: number): string {
  const { low, high } = shown;
  const size = [(high[0] - low[0]) * scale, (high[1] - low[1]) * scale].map(number);
  const place = ([x, y]: Point): string => `${number((x - low[0]) * scale)} ${number((y - low[1]) * scale)}`;
  const shapes = (rings: readonly Point[][], fill: string): string => {
    if (rings.length === 0) return "";
    const d = rings.map((ring) => `M${ring.map(place).join("L")}Z`).join("");
    // Outlined first, then filled: the seams between a part's own pieces vanish.
    return `<path d="${d}" fill="none" stroke="${INK}" stroke-width="2.2" stroke-linejoin="round"/><path d="${d}" fill="${fill}"/>`;
  };
  const holes = pegs.map(({ at: [x, y], diameter }) => {
    const [cx, cy] = place([x, y]).split(" ");
    return `<circle cx="${cx}" cy="${cy}" r="${number((diameter / 2) * scale)}" fill="${PAPER}" stroke="${INK}"/>`;
  });
  return `<svg x="${number(at[0])}" y="${number(at[1])}" width="${size[0]}" height="${size[1]}" overflow="hidden">${shapes(entered, WOOD.entered)}${shapes(others, WOOD.others)}${shapes(part, WOOD.part)}${holes.join("")}</svg>`;
}

const number = (value: number): string => String(Math.round(value * 10) / 10 + 0);
