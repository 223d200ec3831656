/**
 * Pages in the largest letters that there is room for.
 */
import { widthOf } from "./lettering.ts";
import { enlarged, type Item, TYPE } from "./page.ts";

export interface Room {
  wide: number;
  high: number;
}

/**
 * Pages laid out in a room, in the largest type that costs no page more than the smallest does and leaves nothing outside the room. `lay` lays
 * them out with letters of the usual size, mm; it gives undefined where larger letters, `by` so many times, leave too little.
 */
export function inLargestType<P extends { items: Item[] }>(
  { wide, high }: Room,
  lay: (room: Room, by: number) => P[] | undefined,
): P[] {
  const plain = lay({ wide, high }, 1) ?? [];
  for (const by of TYPE.filter((each) => each > 1)) {
    const room = { wide: wide / by, high: high / by };
    const pages = lay(room, by);
    if (!pages || pages.length > plain.length || pages.some(({ items }) => isOver(items, room))) continue;
    return pages.map((page) => ({ ...page, items: page.items.map((item) => enlarged(item, by)) }));
  }
  return plain;
}

/** Whether lines, or words that run level from their place, reach out of a room. */
const isOver = (items: readonly Item[], { wide, high }: Room): boolean =>
  items.some((item) => {
    if (item.is === "line") return item.points.some(([x, y]) => x > wide + 0.01 || y > high);
    const reach = item.upright || item.anchor ? 0 : widthOf(item.text, item.size, item.bold);
    return item.at[0] + reach > wide + 0.01 || item.at[1] > high;
  });
