/**
 * The frame of a chair at work, case by case: its members as lines, heavier the harder they work, its joints as rings, and how it bends,
 * enlarged. Seen from the front, from the left and a little above. Nothing is told by colour alone.
 */
import type { LengthUnit } from "../design/design.ts";
import { printMargin } from "../design/units.ts";
import type { Vec3 } from "../geometry/solid.ts";
import type { CaseResult } from "../strength/case-result.ts";
import { endingOf } from "../strength/ending.ts";
import type { Strength } from "../strength/strength.ts";
import type { Point } from "./sheet.ts";

export interface StrengthShown {
  width: number;
  height: number;
  cases: CaseShown[];
  /** What the weakest bears over what is asked of it, in words; and the caution. */
  says: string;
}

export interface CaseShown {
  name: string;
  title: string;
  /** How it ended and by how much the bent shape is enlarged. */
  says: string;
  parts: {
    part: string;
    points: Point[];
    /** As it bends; absent where the case could not be solved. */
    bent: Point[];
    /** Width of its line, mm. */
    weight: number;
    label?: string;
    labelAt: Point;
  }[];
  joints: { name: string; at: Point; radius: number; label?: string }[];
}

/** Turned about the plumb line, and looked down on; rad. */
const [TURN, DOWN] = [(-32 * Math.PI) / 180, (16 * Math.PI) / 180];
/** The largest movement is shown as this share of the picture's height. */
const BENT = 0.07;
/** Line widths and rings, mm: of what does not work, and what demand 1 adds. */
const LINE = { least: 3, more: 22 };
const RING = { least: 6, more: 15 };
const ROOM = 40;
/** Most parts and joints that carry a figure, and from which demand. */
const LABELLED = { parts: 6, joints: 6, least: 0.15 };

function seen([x, y, z]: Vec3): Point {
  const across = x * Math.cos(TURN) + y * Math.sin(TURN);
  const away = y * Math.cos(TURN) - x * Math.sin(TURN);
  return [across, -(z * Math.cos(DOWN) + away * Math.sin(DOWN))];
}

/** Every case at the middle stiffness; nothing where nothing could be loaded. */
export function strengthShown({ cases, margin }: Strength, unit: LengthUnit): StrengthShown | undefined {
  const middle = cases.filter(({ stiffness }) => stiffness === "middle");
  const [first] = middle;
  if (!first) return undefined;
  const places = first.frame.nodes.map(({ at }) => seen(at));
  const [left, top] = [0, 1].map((k) => Math.min(...places.map((place) => place[k as 0 | 1]))) as [
    number,
    number,
  ];
  const [right, low] = [0, 1].map((k) => Math.max(...places.map((place) => place[k as 0 | 1]))) as [
    number,
    number,
  ];
  const onto = ([x, y]: Point): Point => [x - left + ROOM, y - top + ROOM];
  const height = low - top + 2 * ROOM;
  return {
    width: right - left + 2 * ROOM,
    height,
    cases: middle.map((one) => caseShown(one, { height, unit }, (at) => onto(seen(at)))),
    says: `${margin === undefined ? "Nothing could be judged." : `The weakest bears ${printMargin(margin)} times what is asked of it.`} A calculation is not a test.`,
  };
}

function caseShown(
  one: CaseResult,
  { height, unit }: { height: number; unit: LengthUnit },
  place: (at: Vec3) => Point,
): CaseShown {
  const { frame, solution, load } = one;
  const moved = solution.is === "solved" ? solution.displacements : undefined;
  const most = Math.max(0, ...(moved ?? []).map(([x = 0, y = 0, z = 0]) => Math.hypot(x, y, z)));
  const times = most > 0 ? niceTimes((BENT * height) / most) : 0;
  const bentAt = (node: number): Vec3 => {
    const at = frame.nodes[node]?.at ?? [0, 0, 0];
    const u = moved?.[node] ?? [];
    return [at[0] + times * (u[0] ?? 0), at[1] + times * (u[1] ?? 0), at[2] + times * (u[2] ?? 0)];
  };
  const told = labelled(one.members, LABELLED.parts);
  const toldJoints = labelled(one.joints, LABELLED.joints);
  const parts = [...frame.along].map(([part, nodes]) => {
    const points = nodes.map((node) => place(frame.nodes[node]?.at ?? [0, 0, 0]));
    const demand = one.members.get(part);
    return {
      part,
      points,
      bent: moved ? nodes.map((node) => place(bentAt(node))) : [],
      weight: LINE.least + LINE.more * Math.min(1.5, demand ?? 0),
      ...(told.has(part) && { label: figure(demand) }),
      labelAt: points[Math.floor(points.length / 2)] ?? ([0, 0] as const),
    };
  });
  const joints = frame.springs.slice(0, frame.jointOf.length).map(({ joint, to }) => {
    const at = place(frame.nodes[to]?.at ?? [0, 0, 0]);
    const demand = one.joints.get(joint);
    return {
      name: joint,
      at,
      radius: RING.least + RING.more * Math.min(1.5, demand ?? 0),
      ...(toldJoints.has(joint) && { label: figure(demand) }),
    };
  });
  return { name: load.name, title: load.title, says: outcome(one, times, unit), parts, joints };
}

const figure = (demand: number | undefined): string =>
  `${printMargin(demand ?? 0)}${(demand ?? 0) > 1 ? " too much" : ""}`;

/** The names that carry a figure: those that work hardest. */
const labelled = (demands: ReadonlyMap<string, number>, count: number): ReadonlySet<string> =>
  new Set(
    [...demands]
      .filter(([, demand]) => demand >= LABELLED.least)
      .sort((a, b) => b[1] - a[1])
      .slice(0, count)
      .map(([name]) => name),
  );

/** One, two or five times a power of ten, no more than this. */
function niceTimes(times: number): number {
  const power = 10 ** Math.floor(Math.log10(times));
  return Math.max(1, ([5, 2, 1].find((each) => each * power <= times) ?? 1) * power);
}

function outcome(one: CaseResult, times: number, unit: LengthUnit): string {
  const { joints, members, share } = one;
  const ending = endingOf(one, unit);
  if (ending !== undefined) return ending;
  const [name, demand] = [...joints, ...members].reduce((a, b) => (b[1] > a[1] ? b : a), ["", 0]);
  const worst = name === "" ? "" : `${name} works hardest, at ${printMargin(demand)}. `;
  const pushed = share < 1 ? `At ${Math.round(share * 100)}% of the push: more would tip it over. ` : "";
  return `${worst}${pushed}Dashed: how it bends, ${times} times enlarged.`;
}
