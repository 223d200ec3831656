import { workedValue } from "../chair/values/values.ts";
import { printQuantity } from "../design/units.ts";
import type { View } from "./view.ts";

/** A file in a few words, in its own units: a chair's main figures, else what it holds for others. */
interface Summary {
  title?: string;
  seatHeight?: string;
  backLean?: string;
  weight?: string;
  /** Of a file without a chair: `3 joints, 2 boards`. */
  holds?: string;
}

/** The most telling figures of a file, for a status line. */
export function summary({ study: { chair, design } }: View): Summary {
  const printed = (name: string) => {
    const worked = workedValue(chair, name);
    return worked && printQuantity(worked, design.units);
  };
  const found = {
    title: design.title?.value,
    seatHeight: printed("seat.height"),
    backLean: printed("backrest.rake"),
    weight: printed("weight"),
    holds: chair.posts.size === 0 ? heldBy(design.names) : undefined,
  };
  return Object.fromEntries(Object.entries(found).filter(([, value]) => value !== undefined));
}

/** How many of each kind of thing a file declares. */
function heldBy(names: ReadonlyMap<string, { is: string }>): string | undefined {
  const counts = new Map<string, number>();
  for (const { is } of names.values()) counts.set(is, (counts.get(is) ?? 0) + 1);
  const most = [...counts].sort(([, a], [, b]) => b - a);
  const words = most.map(([is, count]) => `${count} ${is === "let" ? "value" : is}${count === 1 ? "" : "s"}`);
  return words.length > 0 ? words.join(", ") : undefined;
}
