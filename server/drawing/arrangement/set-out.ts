/**
 * What a maker sets out before anything is cut, measured on the chair as it stands: how high each rail and each post's end lies, how far
 * from the middle and from the front feet, how much each straight of a post leans, how far what lies over it reaches. mm, radians.
 */
import type { Chair, Post, Rail } from "../../chair/chair.ts";
import { withoutSides } from "../../design/identity.ts";
import { printAngle } from "../../design/units.ts";
import { moveDirection, movePoint } from "../../geometry/motion.ts";
import type { Vec3 } from "../../geometry/solid.ts";
import { along, between, dot } from "../../geometry/vec.ts";
import type { Point } from "../sheet.ts";
import type { ViewName } from "./views.ts";

/** One thing to set out along a line beside a view: its places there, and for each how far across its mark stands, as seen. */
export interface Stop {
  at: number[];
  across: number[];
  of: Of[];
}

/** A part, both of a pair as one, and what of it: `foot`, `front end`; nothing where the whole is meant. */
export interface Of {
  part: string;
  what: string;
}

/** What is said of a place in the view, without a measure: a lean, and in few words. */
export interface Said {
  at: Point;
  part: string;
  says: string;
  short: string;
}

export interface ViewSetOut {
  left: Stop[];
  right: Stop[];
  above: Stop[];
  below: Stop[];
  /** Said to the left and to the right of the view. */
  saidLeft: Said[];
  saidRight: Said[];
}

export interface SetOut extends Record<ViewName, ViewSetOut> {
  /** Of a cut along the middle, seen from the sitter's left. */
  middle: ViewSetOut;
  /** Where depths run from, as the side is seen: the middle of the front feet on the floor, or the foremost place. */
  origin: number;
  originIs: string;
}

/** Leans smaller than this are none, radians. */
const PLUMB = 0.05 * (Math.PI / 180);
/** Straights shorter than this are parts of a curve, mm. */
const SHORT = 30;
/** Rails that run this much along an axis run along it, the cosine. */
const ALONG = 0.7;
/** Nearer than this to the middle is on it, and places nearer than this are one, mm. */
const SAME = 0.05;

export function setOutOf(chair: Chair): SetOut {
  const stand = (p: Vec3): Vec3 => movePoint(chair.stance, p);
  const posts = [...chair.posts.values()].filter(({ side }) => side !== "right");
  const rails = [...chair.rails.values()].filter(({ side }) => side !== "right");
  const slats = [...chair.slats.values()].filter((slat) => stand(slat.start)[0] > -SAME);
  const across = rails.filter((rail) => Math.abs(standing(chair, rail.along)[0]) > ALONG);
  const deep = rails.filter((rail) => Math.abs(standing(chair, rail.along)[1]) > ALONG);
  const feet = posts.map((post) => stand(post.foot)).filter(([, , z]) => Math.abs(z) < 30);
  const foremost = feet.length ? Math.min(...feet.map(([, y]) => y)) : 0;
  const seat = seatStops(chair);
  const halfway = middleDepth(chair, posts);
  const inFront = (rail: Rail) => movePoint(chair.stance, middleOf(rail)[0])[1] <= halfway;
  return {
    origin: foremost,
    originIs: feet.length ? "the middle of the front feet" : "the foremost place",
    front: {
      left: merged([...across.map((rail) => heightOf(chair, rail, middleOf)), ...seat.front]),
      right: [],
      above: merged([
        ...posts.flatMap((post) => levelStop(stand(post.top), of(post, "top"))),
        ...slats.flatMap((slat) => levelStop(stand(upperOf(slat)), of(slat))),
      ]),
      below: merged(posts.flatMap((post) => levelStop(stand(post.foot), of(post, "foot")))),
      saidLeft: [],
      saidRight: posts.flatMap((post) => leans(chair, post, 0)),
    },
    side: {
      left: merged([
        ...deep.map((rail) => heightOf(chair, rail, frontOf)),
        ...postTops(chair, posts, (y, middle) => y <= middle),
        ...seat.front,
      ]),
      right: merged([
        ...deep.map((rail) => heightOf(chair, rail, backOf)),
        ...postTops(chair, posts, (y, middle) => y > middle),
        ...seat.back,
      ]),
      above: merged(posts.map((post) => deepStop(stand(post.top), of(post, "top")))),
      below: merged(posts.map((post) => deepStop(stand(post.foot), of(post, "foot")))),
      saidLeft: leansOn(chair, posts, (y, middle) => y <= middle),
      saidRight: [...leansOn(chair, posts, (y, middle) => y > middle), ...seatSlope(chair)],
    },
    middle: {
      left: merged([...across.filter(inFront).map((rail) => middleStop(chair, rail)), ...seat.front]),
      right: merged([
        ...across.filter((rail) => !inFront(rail)).map((rail) => middleStop(chair, rail)),
        ...seat.back,
      ]),
      above: [],
      below: merged(across.map((rail) => facesStop(chair, rail))),
      saidLeft: [],
      saidRight: seatSlope(chair),
    },
    plan: {
      left: [],
      right: merged([
        ...across.map((rail) => faceStop(chair, rail)),
        ...seat.depths,
        ...projections(chair, deep),
      ]),
      above: merged(seat.backWidth),
      below: merged([...seat.frontWidth, ...deep.flatMap((rail) => insideStop(chair, rail))]),
      saidLeft: [],
      saidRight: [],
    },
  };
}

const standing = (chair: Chair, d: Vec3): Vec3 => moveDirection(chair.stance, d);

const of = ({ name }: { name: string }, what = ""): Of => ({ part: withoutSides(name), what });

const middleOf = (rail: Rail): [Vec3, Vec3] => [
  between(rail.start, rail.end, 0.5),
  lower(rail, between(rail.start, rail.end, 0.5)),
];
const frontOf = (rail: Rail): [Vec3, Vec3] => endOf(rail, rail.start[1] <= rail.end[1]);
const backOf = (rail: Rail): [Vec3, Vec3] => endOf(rail, rail.start[1] > rail.end[1]);

function endOf(rail: Rail, first: boolean): [Vec3, Vec3] {
  const p = first ? rail.start : rail.end;
  return [p, lower(rail, p)];
}

/** The lower edge under a place on the upper one; a turned rail's start and end are on its axis, and only that is set out. */
const lower = (rail: Rail, p: Vec3): Vec3 => (rail.round ? p : along(p, rail.upward, -rail.wide));

const upperOf = (slat: Rail): Vec3 => (slat.end[2] > slat.start[2] ? slat.end : slat.start);

/** The heights of a rail's two edges at a place along it, as the view is seen that it is set out in. */
function heightOf(chair: Chair, rail: Rail, where: (rail: Rail) => [Vec3, Vec3]): Stop {
  const [top, bottom] = where(rail).map((p) => movePoint(chair.stance, p)) as [Vec3, Vec3];
  const ends = [rail.start, rail.end].map((p) => movePoint(chair.stance, p)[0]);
  const across = ([, y]: Vec3): number => (where === middleOf ? Math.min(...ends) : y);
  if (rail.round) return { at: [top[2]], across: [across(top)], of: [of(rail, "axis")] };
  return { at: [bottom[2], top[2]], across: [across(bottom), across(top)], of: [of(rail)] };
}

/** The heights of a rail's edges where the middle line cuts it, led to where it lies from front to back. */
function middleStop(chair: Chair, rail: Rail): Stop {
  const ys = middleOf(rail).map((p) => movePoint(chair.stance, p)[1]);
  const stop = heightOf(chair, rail, middleOf);
  return { ...stop, across: stop.at.length > 1 ? [ys[1]!, ys[0]!] : [ys[0]!] };
}

/** How far back a rail's outside and inside faces lie at its lower edge, on the middle line. */
function facesStop(chair: Chair, rail: Rail): Stop {
  const foot = middleOf(rail)[1];
  const half = rail.round ? rail.round / 2 : 0;
  const faces = rail.round ? [half, -half] : [0, -rail.thick];
  const places = faces.map((by) => movePoint(chair.stance, along(foot, rail.outward, by)));
  return {
    at: places.map(([, y]) => y),
    across: places.map(([, , z]) => z),
    of: [of(rail)],
  };
}

/** A distance from the middle line as the front and the plan are seen; none for what stands on it. */
function levelStop([out, , across]: Vec3, what: Of): Stop[] {
  return out > SAME ? [{ at: [out], across: [across], of: [what] }] : [];
}

const deepStop = (p: Vec3, what: Of): Stop => ({ at: [p[1]], across: [p[2]], of: [what] });

function postTops(chair: Chair, posts: readonly Post[], picked: (y: number, middle: number) => boolean) {
  const middle = middleDepth(chair, posts);
  return posts.flatMap((post): Stop[] => {
    const top = movePoint(chair.stance, post.top);
    const foot = movePoint(chair.stance, post.foot);
    return picked(foot[1], middle) ? [{ at: [top[2]], across: [top[1]], of: [of(post, "top")] }] : [];
  });
}

/** Halfway between the foremost and the hindmost foot. */
function middleDepth(chair: Chair, posts: readonly Post[]): number {
  const ys = posts.map((post) => movePoint(chair.stance, post.foot)[1]);
  return ys.length ? (Math.min(...ys) + Math.max(...ys)) / 2 : 0;
}

const leansOn = (chair: Chair, posts: readonly Post[], picked: (y: number, middle: number) => boolean) =>
  posts
    .filter((post) => picked(movePoint(chair.stance, post.foot)[1], middleDepth(chair, posts)))
    .flatMap((post) => leans(chair, post, 1));

/** How much each straight of a post leans from plumb: seen from the front (axis 0) or from the side (axis 1). */
function leans(chair: Chair, post: Post, axis: 0 | 1): Said[] {
  const straights: { start: Vec3; end: Vec3; direction: Vec3 }[] = [];
  for (const { start, end, direction, curved } of post.pieces) {
    const last = straights.at(-1);
    if (last && dot(last.direction, direction) > 1 - 1e-9) last.end = end;
    else if (!curved) straights.push({ start, end, direction });
  }
  const long = straights.filter(({ start, end }) => Math.hypot(...start.map((v, k) => v - end[k]!)) > SHORT);
  const all = long.map(({ start, end, direction }): Said => {
    const run = standing(chair, direction);
    const angle = Math.atan2(run[axis], run[2]);
    const middle = movePoint(chair.stance, between(start, end, 0.5));
    const isPlumb = Math.abs(angle) < PLUMB;
    const lean = printAngle(Math.abs(angle));
    const words = axis === 0 ? ["leans out", "splays"] : ["leans back", "leans forward"];
    const short = axis === 0 ? ["out", "splay"] : ["back", "forward"];
    const way = angle > 0 ? 0 : 1;
    return {
      at: [middle[axis], middle[2]],
      part: withoutSides(post.name),
      says: isPlumb ? "plumb" : `${words[way]} ${lean}`,
      short: isPlumb ? "plumb" : `${lean} ${short[way]}`,
    };
  });
  // A post that bends only the other way is told once.
  return all.filter(({ says }, k) => says !== all[k - 1]?.says);
}

function seatSlope(chair: Chair): Said[] {
  if (!chair.seat) return [];
  const normal = standing(chair, chair.seat.plane.normal);
  const falls = Math.atan2(normal[1], normal[2]);
  const at = movePoint(chair.stance, between(chair.seat.front.middle, chair.seat.back.middle, 0.6));
  const isLevel = Math.abs(falls) < PLUMB;
  const fall = printAngle(Math.abs(falls));
  const way = falls > 0 ? "back" : "front";
  return [
    {
      at: [at[1], at[2]],
      part: "seat",
      says: isLevel ? "level" : `falls ${fall} to the ${way}`,
      short: isLevel ? "level" : `${fall} ${way}`,
    },
  ];
}

const onSeat = (what: string): Of => ({ part: "seat", what });

function seatStops(chair: Chair): Record<"front" | "back" | "depths" | "frontWidth" | "backWidth", Stop[]> {
  const { seat } = chair;
  if (!seat) return { front: [], back: [], depths: [], frontWidth: [], backWidth: [] };
  const [front, back] = [seat.front, seat.back].map(({ middle }) => movePoint(chair.stance, middle)) as [
    Vec3,
    Vec3,
  ];
  const corner = ({ left, right }: { left: Vec3; right: Vec3 }, what: string): Stop[] => {
    const [p, q] = [left, right].map((each) => movePoint(chair.stance, each)) as [Vec3, Vec3];
    const out = p[0] > q[0] ? p : q;
    return levelStop([out[0], 0, out[1]], onSeat(what));
  };
  return {
    front: [{ at: [front[2]], across: [front[1]], of: [onSeat("front")] }],
    back: [{ at: [back[2]], across: [back[1]], of: [onSeat("back")] }],
    depths: [
      { at: [front[1]], across: [front[0]], of: [onSeat("front")] },
      { at: [back[1]], across: [back[0]], of: [onSeat("back")] },
    ],
    frontWidth: corner(seat.front, "front corner"),
    backWidth: corner(seat.back, "back corner"),
  };
}

/** Where the outside face of a rail across lies, from front to back, halfway along. */
function faceStop(chair: Chair, rail: Rail): Stop {
  const p = movePoint(chair.stance, middleOf(rail)[0]);
  return { at: [p[1]], across: [p[0]], of: [of(rail, rail.round ? "axis" : "face")] };
}

/** How far from the middle the outside face of a rail from front to back lies at its front. */
function insideStop(chair: Chair, rail: Rail): Stop[] {
  const p = movePoint(chair.stance, frontOf(rail)[0]);
  return levelStop([p[0], 0, p[1]], of(rail, rail.round ? "front axis" : "front"));
}

/** How far rails that lie over their posts reach. */
function projections(chair: Chair, rails: readonly Rail[]): Stop[] {
  return rails
    .filter(({ ends }) => ends.some(({ over }) => over))
    .flatMap((rail): Stop[] => {
      const places = rail.body.pieces.flatMap(({ points }) => points.map((p) => movePoint(chair.stance, p)));
      const [first, last] = [Math.min(...places.map(([, y]) => y)), Math.max(...places.map(([, y]) => y))];
      const x = movePoint(chair.stance, rail.start)[0];
      return [
        ...(rail.ends.some(({ over }, k) => over && isFront(rail, k))
          ? [{ at: [first], across: [x], of: [of(rail, "front end")] }]
          : []),
        ...(rail.ends.some(({ over }, k) => over && !isFront(rail, k))
          ? [{ at: [last], across: [x], of: [of(rail, "back end")] }]
          : []),
      ];
    });
}

const isFront = (rail: Rail, which: number): boolean => (which === 0) === rail.start[1] <= rail.end[1];

/** Stops at the same places as one, of all that is there. */
function merged(stops: readonly Stop[]): Stop[] {
  const found: Stop[] = [];
  for (const stop of stops) {
    const like = found.find(
      ({ at }) => at.length === stop.at.length && at.every((v, k) => Math.abs(v - stop.at[k]!) < SAME),
    );
    if (!like) found.push({ ...stop });
    else
      like.of = [
        ...like.of,
        ...stop.of.filter(({ part, what }) => !like.of.some((o) => o.part === part && o.what === what)),
      ];
  }
  return found;
}
