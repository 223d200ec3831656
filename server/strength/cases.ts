/**
 * The load cases of the domestic and severer standards on a chair's frame, and what beyond them a chair meets. Figures in `loads.json`.
 */

import { armsOf } from "../chair/arms.ts";
import type { Chair } from "../chair/chair.ts";
import { kept } from "../chair/kept.ts";
import { gravity, placesOf } from "../floor/loaded.ts";
import { weigh } from "../timber/weight.ts";
import { atMiddle, backLoad, pushed, seatLoad, selfWeight } from "./acting.ts";
import { type Stops, supportsOf } from "./feet.ts";
import type { NodeLoad, Support } from "./frame/frame.ts";
import type { LoadCase } from "./load-case.ts";
import data from "./loads.json" with { type: "json" };
import type { ChairFrame } from "./model.ts";
import { ownCases } from "./own-cases.ts";

export type LevelName = keyof typeof data.levels;

/** How hard a chair is to be used, as `loads.json` has it. */
export const levelNames = Object.keys(data.levels) as LevelName[];

/** Every case that concerns this chair, the standards' first, then the file's own; none without three feet. */
export function casesOf(chair: Chair, frame: ChairFrame, level: LevelName): LoadCase[] {
  if (frame.feet.size < 3) return [];
  // Where some timber is not known, the chair has no weight among its values: then what is known of it.
  const mass = chair.values.get("weight")?.number ?? kept(chair, weigh).mass;
  const own = selfWeight(frame, mass);
  return [...standardCases(chair, frame, level), ...ownCases(chair, frame)].map((each) => ({
    ...each,
    loads: [...each.loads, ...own],
  }));
}

/** Those of the level, and what beyond them a chair meets; none without a seat. */
function standardCases(chair: Chair, frame: ChairFrame, level: LevelName): LoadCase[] {
  const loaded = placesOf(chair);
  const figures = data.levels[level];
  if (!loaded) return [];
  const { seat, back } = loaded;
  const xs = seat.map(([x]) => x);
  const ys = seat.map(([, y]) => y);
  const [left, front, rear] = [Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const seatAt: [number, number] = [
    0,
    Math.max(front + 50, (back?.junction ?? rear) - data.places.seatAheadOfBack),
  ];
  const seen = (...names: string[]) => names.every((name) => (figures.seen as string[]).includes(name));
  const onSeat = (force: number, at: [number, number]) => seatLoad(chair, frame, force, at);
  const onBack = (force: number) =>
    back ? backLoad(frame, chair, force, backHeight(loaded.seatHeight, back.top)) : [];
  const stood = (...stops: Stops[]) => supportsOf(frame, stops);
  const cases: LoadCase[] = [];
  const add = (
    name: string,
    title: string,
    loads: NodeLoad[],
    supports: Support[],
    times: number,
    known: boolean,
  ) => {
    if (loads.length > 0) cases.push({ name, title, loads, supports, times, fromMemory: !known });
  };

  add(
    back ? "seat-and-back" : "seat",
    back ? "seat and back together" : "the seat",
    [...onSeat(figures.seat, seatAt), ...onBack(figures.back)],
    back ? stood("back") : stood(),
    10,
    seen("seat", "back"),
  );
  add(
    "front-edge",
    "the seat's front edge",
    onSeat(figures.frontEdge, [0, front + data.places.frontEdgeIn]),
    stood(),
    10,
    seen("frontEdge"),
  );
  add(
    "leg-forward",
    "pushed forwards at the seat",
    [
      ...onSeat(figures.legSeat, [0, (front + rear) / 2]),
      ...pushed(chair, frame, "back", [0, -figures.legForward, 0]),
    ],
    stood("front"),
    10,
    false,
  );
  add(
    "leg-sideways",
    "pushed sideways at the seat",
    [
      ...onSeat(figures.legSeat, [left - data.places.legSeatIn, (front + rear) / 2]),
      ...pushed(chair, frame, "right", [figures.legSideways, 0, 0]),
    ],
    stood("left"),
    10,
    false,
  );
  const arms = armsOf(chair);
  if (arms.length > 0) {
    add(
      "arm-sideways",
      "the arms pushed outward",
      [
        ...onSeat(figures.legSeat, [0, (front + rear) / 2]),
        ...arms.flatMap((arm) =>
          atMiddle(frame, arm.name, [Math.sign(arm.start[0]) * figures.armSideways, 0, 0]),
        ),
      ],
      stood(),
      10,
      seen("armSideways"),
    );
    add(
      "arm-down",
      "down on an arm",
      atMiddle(frame, arms[0]?.name ?? "", [0, 0, -figures.armDown]),
      stood(),
      5,
      false,
    );
  }
  if (back)
    add(
      "repeated-sitting",
      "sitting down again and again",
      [...onSeat(figures.repeatedSeat, seatAt), ...onBack(figures.repeatedBack)],
      stood("back"),
      figures.cycles,
      false,
    );
  const sitter = data.sitter.mass * gravity;
  add("sitter", "a heavy sitter at rest", onSeat(sitter, seatAt), stood(), 1, true);
  if (back) {
    // Rocking on the rear legs: the sitter's weight and the push on the back are in balance over the rear feet.
    const rearFeet = Math.max(...[...frame.feet.values()].map((node) => frame.nodes[node]?.at[1] ?? 0));
    const lever = backHeight(loaded.seatHeight, back.top);
    const push = (sitter * Math.max(0, rearFeet - seatAt[1])) / lever;
    add(
      "rocking",
      "rocking on the rear legs",
      [...onSeat(sitter, seatAt), ...onBack(push)],
      stood("back"),
      1,
      false,
    );
  }
  return cases;
}

const backHeight = (seat: number, top: number): number =>
  Math.min(seat + data.places.backAboveSeat, top - data.places.backBelowTop / 10);
