import type { Sight } from "../sight.ts";

/** Where a chair is looked at from, radians: round from the front towards the sitter's left, and up from level. */
export interface Eye {
  round: number;
  above: number;
}

const DEGREE = Math.PI / 180;
/** How far above level a corner is looked at from unless it is said otherwise. */
const CORNER = 25 * DEGREE;

/** The sides and corners by name; left and right are the sitter's. */
export const eyes: Record<string, Eye> = {
  front: { round: 0, above: 0 },
  "front-left": { round: 45 * DEGREE, above: CORNER },
  left: { round: 90 * DEGREE, above: 0 },
  "back-left": { round: 135 * DEGREE, above: CORNER },
  back: { round: 180 * DEGREE, above: 0 },
  "back-right": { round: 225 * DEGREE, above: CORNER },
  right: { round: 270 * DEGREE, above: 0 },
  "front-right": { round: 315 * DEGREE, above: CORNER },
  above: { round: 0, above: 90 * DEGREE },
  below: { round: 0, above: -90 * DEGREE },
};

/** The directions of a view from there: orthographic axonometry (ISO 5456-3), plumb lines upright. */
export function sightFrom({ round, above }: Eye): Sight {
  const [s, c] = [exact(Math.sin(round)), exact(Math.cos(round))];
  const [rise, level] = [exact(Math.sin(above)), exact(Math.cos(above))];
  return {
    right: [c, s, 0],
    up: [exact(-rise * s), rise * c, level],
    towards: [level * s, exact(-level * c), rise],
  };
}

/** A sine or cosine of a right angle as it is, so that the sides are seen exactly square. */
const exact = (value: number): number => (Math.abs(value) < 1e-12 ? 0 : value);

/** In words: "from the front left, 25° above level". */
export function spokenEye({ round, above }: Eye): string {
  const up = Math.round(above / DEGREE);
  if (up === 90) return "from above";
  if (up === -90) return "from below";
  const turn = (((Math.round(round / DEGREE) % 360) + 360) % 360) as number;
  const names = ["front", "front left", "left", "back left", "back", "back right", "right", "front right"];
  const near = Math.round(turn / 45) % 8;
  const off = turn - Math.round(turn / 45) * 45;
  const side = off === 0 ? "" : `${Math.abs(off)}° ${off > 0 ? "on" : "back"} from `;
  const level = up === 0 ? "" : `, ${Math.abs(up)}° ${up > 0 ? "above" : "below"} level`;
  return `from ${side}the ${names[near]}${level}`;
}
