/**
 * Running dimensions beside a view (ISO 129-1: from one origin, superimposed), and what is said of places in it. On paper, y down.
 */
import { widthOf } from "../markout/lettering.ts";
import { circle, type Item, line, type Point, SMALL, words } from "../markout/page.ts";
import { spread } from "../markout/spread.ts";

/** A label with the ticks that it is led to: along the band, and where on the view each extension line begins. */
export interface Tick {
  ticks: { at: number; from: number }[];
  text: string;
}

/** A label led to a place in the view. */
export interface Told {
  to: Point;
  text: string;
}

/** From the view to the band's line, and from that to the labels, mm. */
export const CLEAR = 3.2;
const LEADER = 3.4;
/** Between two labels. */
const APART = 3;
/** Extension lines stand clear of the view and run past the band's line by so much. */
const OFF = 1;
const PAST = 1;
const ARROW = 0.9;

/** Room that a band with these labels takes beside its view; none when it has none. */
export const bandRoom = (labels: readonly string[]): number =>
  labels.length === 0
    ? 0
    : CLEAR + LEADER + PAST + 1 + Math.max(...labels.map((text) => widthOf(text, SMALL)));

/** How long a band must be for so many labels. */
export const bandLength = (count: number): number => count * APART;

interface Band {
  ticks: readonly Tick[];
  told?: readonly Told[];
  /** The band's line, along the other axis, and which way its labels lie from it. */
  at: number;
  way: 1 | -1;
  /** The origin along the band; absent where nothing is measured from it. */
  origin: number;
  /** Labels keep between these. */
  low: number;
  high: number;
}

/** A band beside a view: figures level, one under another. */
export function uprightBand({ ticks, told = [], at: x, way, origin, low, high }: Band): Item[] {
  const wanted = [...ticks.map(({ ticks: own }) => middle(own)), ...told.map(({ to }) => to[1])];
  const places = spread(wanted, APART, low, high);
  const anchor = way < 0 ? { anchor: "end" as const } : {};
  const foot = x + way * (PAST + LEADER);
  const items: Item[] = measured(ticks, origin, (along, across) => [across, along], x, way);
  ticks.forEach(({ ticks: own, text }, k) => {
    for (const { at: y } of own)
      items.push(
        line(
          [
            [x + way * PAST, y],
            [foot - way * 0.6, places[k]!],
          ],
          "fine",
        ),
      );
    items.push(words([foot, places[k]! + 0.9], text, SMALL, anchor));
  });
  told.forEach(({ to, text }, k) => {
    const y = places[ticks.length + k]!;
    items.push(
      circle(to, 0.35, "fine", { fill: 0 }),
      line([to, [x + way * PAST, y], [foot - way * 0.6, y]], "fine"),
      words([foot, y + 0.9], text, SMALL, anchor),
    );
  });
  return items;
}

/** A band over or under a view: figures upright, read from the right. `way` is -1 over it. */
export function levelBand({ ticks, at: y, way, origin, low, high }: Band): Item[] {
  const places = spread(
    ticks.map(({ ticks: own }) => middle(own)),
    APART,
    low,
    high,
  );
  const foot = y + way * (PAST + LEADER);
  const items: Item[] = measured(ticks, origin, (along, across) => [along, across], y, way);
  ticks.forEach(({ ticks: own, text }, k) => {
    for (const { at: x } of own)
      items.push(
        line(
          [
            [x, y + way * PAST],
            [places[k]!, foot - way * 0.6],
          ],
          "fine",
        ),
      );
    items.push(
      words([places[k]! + 0.9, foot], text, SMALL, {
        upright: true,
        ...(way > 0 && { anchor: "end" as const }),
      }),
    );
  });
  return items;
}

const middle = (ticks: Tick["ticks"]): number => ticks.reduce((sum, { at }) => sum + at, 0) / ticks.length;

/** The band's line from its origin, with extension lines and an arrowhead at every tick. */
function measured(
  ticks: readonly Tick[],
  origin: number,
  place: (along: number, across: number) => Point,
  at: number,
  way: 1 | -1,
): Item[] {
  const own = ticks.flatMap((tick) => tick.ticks);
  if (own.length === 0) return [];
  const ends = [origin, ...own.map((tick) => tick.at)];
  const items: Item[] = [
    line([place(Math.min(...ends), at), place(Math.max(...ends), at)], "fine"),
    circle(place(origin, at), 0.7, "fine"),
  ];
  for (const { at: along, from } of own) {
    items.push(line([place(along, from + way * OFF), place(along, at + way * PAST)], "fine"));
    const back = along === origin ? 0 : Math.sign(origin - along) * ARROW;
    if (back)
      items.push(
        line([place(along + back, at - 0.35), place(along, at), place(along + back, at + 0.35)], "fine"),
      );
  }
  return items;
}
