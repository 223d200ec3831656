import type { Vec3 } from "../../geometry/solid.ts";
import { between, distance, dot, sub } from "../../geometry/vec.ts";
import type { Bow, Rail } from "../chair.ts";
import { stationOnBow } from "../joints/bow-host.ts";
import type { Host } from "../joints/host.ts";
import { hostOf } from "../joints/hosting.ts";
import { shapeOf, spotOn } from "../rails/rail-outline.ts";

/** The line on which the heads of sticks lie, from its left end to its right. */
export interface HeadLine {
  name: string;
  length: number;
  at(s: number): Vec3;
  host(s: number): Host;
}

/** A crest's lower edge, in the middle of its thickness, or a bow's centre line. */
export const headLine = (holder: Rail | Bow): HeadLine =>
  holder.is === "bow" ? ofBow(holder) : ofCrest(holder);

function ofBow(bow: Bow): HeadLine {
  return {
    name: bow.name,
    length: bow.path.length,
    at: bow.spot,
    host: (s) => hostOf(bow, stationOnBow(bow, s, "left")),
  };
}

/** Parts into which a crest's edge is divided to be measured. */
const PARTS = 256;

function ofCrest(rail: Rail): HeadLine {
  const shape = shapeOf(rail);
  const spot = (x: number): Vec3 => spotOn(rail, x, shape.inward(x, shape.thick(x) / 2), shape.bottom(x));
  const [from, to] = rail.ends.map(({ corners }) =>
    dot(sub(between(corners[2]!, corners[3]!, 0.5), rail.start), rail.along),
  ) as [number, number];
  const xs = Array.from({ length: PARTS + 1 }, (_, k) => from + ((to - from) * k) / PARTS);
  const measured = [0];
  for (let k = 0; k < PARTS; k++) measured.push(measured[k]! + distance(spot(xs[k]!), spot(xs[k + 1]!)));
  const xAt = (s: number): number => {
    const next = Math.min(
      PARTS,
      Math.max(
        1,
        measured.findIndex((length) => length >= s),
      ),
    );
    const k = s >= measured[PARTS]! ? PARTS : next;
    const share = (s - measured[k - 1]!) / (measured[k]! - measured[k - 1]!);
    return xs[k - 1]! + (xs[k]! - xs[k - 1]!) * share;
  };
  return {
    name: rail.name,
    length: measured[PARTS]!,
    at: (s) => spot(xAt(s)),
    host: (s) => hostOf(rail, xAt(s)),
  };
}

/** The place on the left half, nearest the middle, that lies so far out from the middle of the chair; undefined when none is so far out. */
export function placeOut(line: HeadLine, out: number): number | undefined {
  const half = line.length / 2;
  const STEPS = 400;
  for (let k = 0; k < STEPS; k++) {
    const [near, far] = [half * (1 - k / STEPS), half * (1 - (k + 1) / STEPS)];
    if (line.at(far)[0] < out) continue;
    let [low, high] = [far, near];
    for (let round = 0; round < 60; round++) {
      const middle = (low + high) / 2;
      if (line.at(middle)[0] < out) high = middle;
      else low = middle;
    }
    return low;
  }
  return undefined;
}

/** How far out the line ever lies. */
export const widestOut = (line: HeadLine): number =>
  Math.max(...Array.from({ length: 201 }, (_, k) => line.at((line.length * k) / 400)[0]));
