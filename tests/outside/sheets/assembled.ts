/**
 * A chair put together from the pieces that its sheets make, and how far it strays from the chair as it was drawn.
 */
import type { Chair, Joint } from "../../../server/chair/chair.ts";
import type { SheetPart, Sheets } from "../../../server/drawing/markout/sheet/sheet.ts";
import { direction, inner, minus, plus, size, times, type V } from "../solids/vectors.ts";
import { type Carried, carried } from "./carried.ts";
import { type Lap, type Mates, type Mouth, matesOf, type Tenon } from "./mates.ts";
import { gapOf, type Meeting, movedTo, putTogether } from "./put-together.ts";

export interface Assembled {
  /** How far each part's places lie from where they are in the chair, mm; how many times a joint's error grows up to the farthest of them. */
  strays: { part: string; by: number; lever: number }[];
  /** How far each tenon stays from its mortise, or its shoulder from the face, mm. */
  gaps: { joint: string; by: number }[];
  /** Joints whose two halves are not on the sheets, or name others. */
  unmet: string[];
}

/** A part as its sheet makes it, standing in the chair. */
interface Standing extends Mates {
  name: string;
  index: number;
}

export function assembled(chair: Chair, sheets: Sheets): Assembled {
  const standing = standingParts(chair, sheets);
  const unmet: string[] = [];
  const meetings: Meeting[] = [];
  for (const joint of chair.joints.values()) {
    const [one, other] = [standing.get(joint.part), standing.get(joint.entered.name)];
    if (!one || !other || joint.tenon.length === 0) continue;
    const found = joint.kind === "passing" ? passings(joint, one, other) : meetingsOf(joint, one, other);
    if (found.length === 0) unmet.push(joint.name);
    meetings.push(...found);
  }
  const places = [...standing.values()].map(({ tenons, mouths, laps, ends }) => [
    ...[...tenons, ...mouths, ...laps].map(({ at }) => at),
    ...ends,
  ]);
  const moved = putTogether(places, meetings);
  return {
    strays: [...standing.values()].map(({ name, index }) => ({
      part: name,
      by: Math.max(0, ...places[index]!.map((p) => size(minus(movedTo(moved[index]!, p), p)))),
      lever: leverOf(places[index]!, meetings, index),
    })),
    gaps: meetings.map((each) => ({ joint: each.joint, by: gapOf(each, moved) })),
    unmet,
  };
}

/** A post that is held near its foot alone shows at its top the error of its joints, so many times as far off. */
function leverOf(places: readonly V[], meetings: readonly Meeting[], index: number): number {
  const held = meetings.flatMap(({ one, other, at }) => [
    ...(one === index ? [at[0]] : []),
    ...(other === index ? [at[1]] : []),
  ]);
  const spread = Math.max(0, ...held.flatMap((p) => held.map((q) => size(minus(p, q)))));
  const reach = Math.max(0, ...places.flatMap((p) => held.map((q) => size(minus(p, q)))));
  return spread > 0 ? reach / spread : 1;
}

function standingParts(chair: Chair, sheets: Sheets): Map<string, Standing> {
  const found = new Map<string, Standing>();
  for (const part of sheets.parts) {
    const mirrored = part.marks[0]?.kind === "mirror";
    const drawn = mirrored ? drawnAs(sheets, String(part.marks[0]!.figures.of!.value)) : part;
    const mates = matesOf(drawn, sheets.unit);
    const [first = ""] = drawn.name.split(", ");
    for (const name of part.name.split(", ")) {
      const put = carried(chair, first, name, mirrored);
      if (put) found.set(name, { name, index: found.size, ...stood(mates, put) });
    }
  }
  return found;
}

const drawnAs = (sheets: Sheets, name: string): SheetPart =>
  sheets.parts.find((part) => part.name.split(", ")[0] === name)!;

function stood({ tenons, mouths, laps, ends }: Mates, { place, way }: Carried): Mates {
  const mate = <T extends Tenon | Mouth>(each: T): T => ({
    ...each,
    at: place(each.at),
    into: way(each.into),
    ...(each.thick ? { thick: way(each.thick) } : {}),
    ...(each.face ? { face: way(each.face) } : {}),
  });
  const lap = (each: Lap): Lap => ({
    ...each,
    at: place(each.at),
    out: way(each.out),
    through: way(each.through),
    axis: way(each.axis),
  });
  return { tenons: tenons.map(mate), mouths: mouths.map(mate), laps: laps.map(lap), ends: ends.map(place) };
}

/** What enters is not taken for what lies farther off than this, mm. */
const NEAR = 3;
/** Levers, mm: half of how deep a tenon goes, of how thick it is and how wide its shoulder is, as a rule. */
const [DEEP, CHEEK, SHOULDER] = [12, 10, 15];

function meetingsOf(joint: Joint, one: Standing, other: Standing): Meeting[] {
  if (!named(one, other)) return [];
  return joint.kind === "halving" ? laps(joint, one, other) : entries(joint, one, other);
}

/** A stick goes straight through, its line along that of the bore. */
function passings(joint: Joint, one: Standing, other: Standing): Meeting[] {
  const [from, to] = one.ends as [V, V];
  const line = direction(minus(to, from));
  return other.mouths
    .filter(({ mark, into }) => alike(mark.word("for"), one.name) && Math.abs(inner(line, into)) > 0.9)
    .map(({ at, into }) => ({ at, into, on: plus(from, line, inner(minus(at, from), line)) }))
    .filter(({ at, on }) => size(minus(at, on)) < NEAR)
    .map(({ at, into, on }) =>
      meeting(joint, one, other, [on, at], [{ of: sameWay(into, line), lever: DEEP }]),
    );
}

/** The tenons of the end that enters, each with the mortise it goes into. */
function entries(joint: Joint, one: Standing, other: Standing): Meeting[] {
  const root = [...joint.root] as V;
  const [nearest] = [...one.tenons].sort((a, b) => size(minus(a.at, root)) - size(minus(b.at, root)));
  const own = one.tenons.filter(({ end }) => end === nearest?.end);
  const meetings = own.flatMap((tenon): Meeting[] => {
    const mouth = other.mouths.find(
      ({ at, into }) => size(minus(at, tenon.at)) < NEAR && inner(into, tenon.into) > 0.9,
    );
    if (!mouth) return [];
    const ways: Meeting["ways"] = [{ of: [tenon.into, mouth.into], lever: DEEP }];
    if (tenon.thick && mouth.thick) ways.push({ of: sameWay(tenon.thick, mouth.thick), lever: CHEEK });
    if (tenon.face && mouth.face) ways.push({ of: [tenon.face, mouth.face], lever: SHOULDER });
    return [meeting(joint, one, other, [tenon.at, mouth.at], ways)];
  });
  return meetings.length === own.length ? meetings : [];
}

/** Two rails that cross lie in each other's notches, floor on floor. */
function laps(joint: Joint, one: Standing, other: Standing): Meeting[] {
  return one.laps.flatMap((lap) =>
    other.laps
      .filter(({ at }) => size(minus(at, lap.at)) < NEAR)
      .map((each) =>
        meeting(
          joint,
          one,
          other,
          [lap.at, each.at],
          [
            { of: [lap.out, times(each.out, -1)], lever: SHOULDER },
            { of: sameWay(lap.through, each.axis), lever: CHEEK },
            { of: sameWay(lap.axis, each.through), lever: CHEEK },
          ],
        ),
      ),
  );
}

const meeting = (
  joint: Joint,
  one: Standing,
  other: Standing,
  at: Meeting["at"],
  ways: Meeting["ways"],
): Meeting => ({ joint: joint.name, one: one.index, other: other.index, at, ways });

const sameWay = (a: V, b: V): [V, V] => [a, inner(a, b) < 0 ? times(b, -1) : b];

/** Whether each one's sheet names the other; a part with like ends may stand either way round. */
const named = (one: Standing, other: Standing): boolean =>
  [...one.tenons.map(({ end }) => end.word("enters")), ...one.laps.map(({ mark }) => mark.word("for"))].some(
    (name) => alike(name, other.name),
  ) && [...other.mouths, ...other.laps].some(({ mark }) => alike(mark.word("for"), one.name));

/** One sheet serves the left and the right, and all of a row. */
const alike = (a: string, b: string): boolean => bare(a) === bare(b);
const bare = (name: string): string => name.replace(/\.(left|right|\d+)\b/g, "");
