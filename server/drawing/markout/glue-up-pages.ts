/**
 * The order of gluing up: a picture of each glue-up drawn apart, with what there is to say of it.
 */
import { finish } from "../../../grammar/steps.ts";
import type { Chair } from "../../chair/chair.ts";
import { eyes } from "../pictorial/eye.ts";
import { framed } from "../pictorial/framed.ts";
import { lookAt } from "../pictorial/look.ts";
import { turnableSteps } from "../pictorial/turnable.ts";
import { inLargestType, type Room } from "./larger-type.ts";
import { BODY, type Item, line, moved, type Point, words } from "./page.ts";
import type { Paper } from "./paper.ts";
import { roomOn } from "./sheet-page.ts";
import { paragraphs } from "./table.ts";

/** Side by side on a page; and between them, mm. */
const COLUMNS = 2;
const GAP = 8;
/** Of the page's height for the picture at the most. */
const PICTURE = 0.62;
/** Larger letters leave it this much at the least. */
const LEAST = 0.4;

export interface GlueUpPage {
  items: Item[];
  /** Their numbers, from 1. */
  steps: number[];
  of: number;
}

/** Empty while nothing is joined, or no order closes its joints. */
export function glueUpPages(chair: Chair, paper: Paper): GlueUpPage[] {
  const turnable = finish(turnableSteps(chair, true));
  const shown = turnable.glueUps.map(({ title, lines }, glueUp) => ({
    title,
    lines,
    picture: framed(lookAt(turnable, { eye: eyes["front-left"]!, glueUp, apart: 1 }), ""),
  }));
  return inLargestType(roomOn(paper), (room, by) => laid(shown, room, by > 1 ? LEAST : 0));
}

interface Shown {
  title: string;
  lines: readonly string[];
  picture: ReturnType<typeof framed>;
}

/** Undefined where the words would leave a picture less than that share of the height, if there is one. */
function laid(shown: readonly Shown[], { wide, high }: Room, least: number): GlueUpPage[] | undefined {
  const column = (wide - (COLUMNS - 1) * GAP) / COLUMNS;
  const texts = shown.map(({ lines }) => paragraphs(lines, column));
  const rooms = texts.map(({ height }) => Math.min(high * PICTURE, high - 8 - height));
  if (least > 0 && rooms.some((room) => room < high * least)) return undefined;
  const blocks = shown.map(({ title, picture }, glueUp) => {
    const text = texts[glueUp]!;
    const room = rooms[glueUp]!;
    return [
      words([0, 3.6], `${glueUp + 1}. ${title}`, BODY + 1, { bold: true }),
      ...drawn(picture, column, room).map((item) => moved(item, 0, 6)),
      ...text.items.map((item) => moved(item, 0, 8 + room)),
    ];
  });
  return Array.from({ length: Math.ceil(blocks.length / COLUMNS) }, (_, page): GlueUpPage => {
    const some = blocks.slice(page * COLUMNS, (page + 1) * COLUMNS);
    return {
      items: some.flatMap((items, k) => items.map((item) => moved(item, k * (column + GAP), 0))),
      steps: some.map((_, k) => page * COLUMNS + k + 1),
      of: blocks.length,
    };
  });
}

/** The picture in the middle of a room, no larger than it. */
function drawn({ width, height, strokes }: ReturnType<typeof framed>, wide: number, high: number): Item[] {
  if (!(width > 0 && height > 0) || high <= 0) return [];
  const scale = Math.min(wide / width, high / height);
  const left = (wide - width * scale) / 2;
  const to = ([x, y]: Point): Point => [left + x * scale, y * scale];
  return strokes.map(({ points, is }) => line(points.map(to), is === "outline" ? "knife" : "fine"));
}
