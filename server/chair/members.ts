import { sentence } from "../../grammar/sentences/sentence.ts";
import { finish, type Steps } from "../../grammar/steps.ts";
import type { Design, PostDesign, SeatDesign } from "../design/design.ts";
import { partName, SEAT } from "../design/identity.ts";
import { printLength } from "../design/units.ts";
import { flipped, planeAt } from "../geometry/plane.ts";
import type { Plane, Vec3 } from "../geometry/solid.ts";
import { add, along, dot, scale, sub } from "../geometry/vec.ts";
import { attempt } from "./attempt.ts";
import { buildBlocks } from "./block.ts";
import { buildBow } from "./bows/bow.ts";
import type { Bow, MemberViews, Post, Rail, SeatSurface, Side } from "./chair.ts";
import type { Fault } from "./fault.ts";
import { hostOf } from "./joints/hosting.ts";
import { madeOnce, type Reuse } from "./made.ts";
import { copyOf } from "./member.ts";
import { crowdedKnees } from "./posts/centre-line.ts";
import { isOnFloor } from "./posts/on-floor.ts";
import { buildPost, type PostEnds } from "./posts/post.ts";
import { buildCarried, isCarried } from "./rails/carried.ts";
import { type Built, type CourseEnd, fullName, stationOn } from "./rails/course.ts";
import { buildRail, railEnds, railMembers } from "./rails/rail.ts";
import type { RailMember } from "./rails/rail-member.ts";
import { shapeOf } from "./rails/rail-outline.ts";
import { fitStrips } from "./rails/rests.ts";
import { buildSlats } from "./rails/slat.ts";
import { endsOfLeg, endsOnSeat, placeInSeat, underFace } from "./seat/solid/leg.ts";
import { buildSolidSeat } from "./seat/solid/solid-seat.ts";
import { outsideSeat } from "./seat/solid/within.ts";
import { buildSticks } from "./sticks/sticks.ts";

/** The members of a chair as drawn, before joints, a seat on rails and trim, in the order of the text. */
export interface Members extends MemberViews {
  faults: Fault[];
  /** How each post's ends were cut, for building it again on its trimmed feet. */
  ends: Map<string, PostEnds>;
  reuse: Reuse;
}

interface PostMember {
  design: PostDesign;
  side: Side;
  name: string;
}

/** A rail that lies over a post's top, and by which of its ends. */
interface Cover {
  rail: RailMember;
  which: 0 | 1;
}

/** Every part but a loose seat of a design that its text gives enough for. Never throws. */
export const buildMembers = (design: Design): Members => finish(memberSteps(design));

/** The same, resting after each; takes over what was built before. */
export function* memberSteps(
  design: Design,
  reuse: Reuse = { before: undefined, now: new Map() },
): Steps<Members> {
  const posts = [...design.posts.values()].flatMap(postMembers);
  const rails = [...design.rails.values()].flatMap(railMembers);
  const work: Work = {
    design,
    reuse,
    faults: [],
    posts: new Map(),
    rails: new Map(),
    ends: new Map(),
    covers: coversOf(design, rails),
    bows: new Map(),
    built: (name) => work.posts.get(name) ?? work.rails.get(name) ?? work.bows.get(name),
  };
  const solid = design.seat?.solid ? design.seat : undefined;
  const seat =
    solid && attempt("seat", solid.at, work.faults, () => seatFrom(reuse, design, solid, work.faults));
  if (seat) work.seat = seat;
  for (const bowDesign of design.bows.values()) {
    const bow = attempt(bowDesign.name, bowDesign.at, work.faults, () =>
      buildBow(bowDesign, work.seat, design.units, work.faults),
    );
    if (bow) work.bows.set(bow.name, bow);
    yield;
  }
  const waitingPosts = new Set(posts);
  const waitingRails = new Set(rails);
  for (let moved = true; moved; ) {
    moved = false;
    for (const post of waitingPosts) {
      if (!tryPost(work, post)) continue;
      moved = waitingPosts.delete(post);
      yield;
    }
    work.middle ??= middleOf(work.posts);
    for (const rail of waitingRails) {
      if (!entersCutPosts(work, rail) || !tryRail(work, rail)) continue;
      moved = waitingRails.delete(rail);
      yield;
    }
    if (moved) continue;
    // Rails that wait for each other's posts to be cut: those that do the cutting go first.
    const stuck = [...waitingRails].sort(
      (a, b) => coveredPosts(work, b).length - coveredPosts(work, a).length,
    );
    const next = stuck.find((rail) => tryRail(work, rail));
    if (next) moved = waitingRails.delete(next);
  }
  tellCircles(work, [...waitingPosts], [...waitingRails]);
  fitStrips(inOrder(rails, work.rails).values(), design.seat);

  const slats: Rail[] = [];
  for (const slat of design.slats.values()) {
    const around = { built: work.built, posts: (rail: Rail) => postsUnder(work, rails, rail) };
    slats.push(...buildSlats(design, slat, around, work.faults, reuse));
    yield;
  }
  const sticks: Rail[] = [];
  for (const stick of design.sticks.values()) {
    sticks.push(...buildSticks(design, stick, work.seat, work.built, work.faults));
    yield;
  }
  const orderedPosts = inOrder(posts, work.posts);
  const orderedRails = inOrder(rails, work.rails);
  const blocks = [...design.blocks.values()].flatMap((block) =>
    buildBlocks(design, block, orderedPosts, orderedRails, work.faults),
  );
  return {
    posts: orderedPosts,
    rails: orderedRails,
    slats: new Map(slats.map((slat) => [slat.name, slat])),
    sticks: new Map(sticks.map((stick) => [stick.name, stick])),
    bows: work.bows,
    blocks: new Map(blocks.map((block) => [block.name, block])),
    ...(seat && { seat }),
    faults: work.faults,
    ends: work.ends,
    reuse,
  };
}

/** The posts built again with their feet cut to the floor (looking up, in drawn places); those that stand on a rail stay. */
export function* cutFeet(members: Members, floor: Plane): Steps<Map<string, Post>> {
  const cut = new Map<string, Post>();
  for (const [name, post] of members.posts) {
    const ends = members.ends.get(name) ?? {};
    const again = !isOnFloor(post.design)
      ? undefined
      : postFrom(members.reuse, post.design, post.side, { ...ends, foot: floor });
    cut.set(name, again ?? post);
    yield;
  }
  return cut;
}

/** The middle of the chair in plan: the mean of the feet that stand on the floor. */
function middleOf(posts: Map<string, Post>): Vec3 {
  const feet = [...posts.values()].filter((post) => isOnFloor(post.design)).map((post) => post.foot);
  return feet.length === 0 ? [0, 0, 0] : scale(feet.reduce(add), 1 / feet.length);
}

interface Work {
  design: Design;
  reuse: Reuse;
  faults: Fault[];
  posts: Map<string, Post>;
  rails: Map<string, Rail>;
  bows: Map<string, Bow>;
  seat?: SeatSurface;
  ends: Map<string, PostEnds>;
  covers: Map<string, Cover>;
  built: Built;
  middle?: Vec3;
}

function postMembers(design: PostDesign): PostMember[] {
  if (!design.pair) return [{ design, side: "middle", name: design.name }];
  return (["left", "right"] as const).map((side) => ({ design, side, name: `${design.name}.${side}` }));
}

function coversOf(design: Design, rails: readonly RailMember[]): Map<string, Cover> {
  const covers = new Map<string, Cover>();
  for (const rail of rails) {
    railEnds(design, rail)?.forEach((end, which) => {
      if (end.overhang !== undefined) covers.set(end.member, { rail, which: which as 0 | 1 });
    });
  }
  return covers;
}

const coveredPosts = (work: Work, rail: RailMember): string[] =>
  [...work.covers].filter(([, cover]) => cover.rail === rail).map(([post]) => post);

/** Builds a post when what it depends on is there; true when it need not be tried again. */
function tryPost(work: Work, member: PostMember): boolean {
  const { design, side, name } = member;
  if ((design.intoSeat ?? design.onSeat) && !work.seat) return true;
  const ends = startingEnds(work, member);
  if (!ends) return false;
  tellOutside(work, member);
  const post = attempt(name, design.at, work.faults, () =>
    postFrom(work.reuse, design, side, ends, work.faults),
  );
  if (!post) return true;
  work.posts.set(post.name, post);
  work.ends.set(post.name, ends);
  if (work.seat && design.intoSeat?.value.above) cutUnder(work, post.name, underFace(work.seat));
  const into = railAbove(work, member);
  if (into) cutUnder(work, post.name, underAt(into, post.top));
  tellCrowded(work, member);
  return true;
}

/** A leg whose place is not in the seat is told; it is built all the same, to be seen. */
function tellOutside({ seat, design: { units }, faults }: Work, { design, side, name }: PostMember): void {
  const at = seat && side !== "right" ? placeInSeat(seat, design, side) : undefined;
  const fault = seat && at && outsideSeat(seat, design, name, at, units);
  if (fault) faults.push(fault);
}

/** The rail that decides a post's top without lying over it by an end: an arm over a strut. */
function railAbove(work: Work, { design, side, name }: PostMember): Rail | undefined {
  if (!design.topInto || design.height || work.covers.has(name)) return undefined;
  return work.rails.get(fullName(work.design, design.topInto.value.rail, side) ?? "");
}

/** The underside of a rail over a point, looking up. */
function underAt(rail: Rail, point: Vec3): Plane {
  const x = Math.min(rail.length, Math.max(0, dot(sub(point, rail.start), rail.along)));
  return flipped(hostOf(rail, x).face([0, 0, -1], point));
}

function tellCrowded(work: Work, { design, side, name }: PostMember): void {
  const found = side === "right" ? undefined : crowdedKnees(design)[0];
  if (!found) return;
  const knee = design.knees.find((given) => given.value.height === found.upper);
  const length = (mm: number) => printLength(mm, work.design.units);
  const message = sentence("fault.curves-meet", {
    lower: length(found.lower),
    upper: length(found.upper),
    needed: length(found.wanted),
    room: length(found.room),
  });
  work.faults.push({ is: "no-room", part: name, at: knee?.at ?? design.at, message });
}

/** How a post's ends are cut as far as is known before the rail over it is built; undefined when the rail it stands on is not. */
function startingEnds(work: Work, { design, side, name }: PostMember): PostEnds | undefined {
  if (design.intoSeat) return work.seat && endsOfLeg(work.seat, design, side);
  const ends: PostEnds = {};
  if (design.onSeat && work.seat) {
    const bow = design.topBow && work.bows.get(design.topBow.value.bow.name);
    Object.assign(ends, endsOnSeat(work.seat, design, side, bow));
  }
  if (design.standsOn) {
    const { rail: ref, station } = design.standsOn.value;
    const rail = work.rails.get(fullName(work.design, ref, side) ?? "");
    if (!rail) return undefined;
    const from = stationOn(rail, station);
    // A pair on a rail that goes across stands the same distance in from each end of it.
    Object.assign(
      ends,
      standingOn(rail, side === "right" && rail.side === "middle" ? rail.length - from : from, side),
    );
  }
  const cover = work.covers.get(name);
  if (!design.height && cover) {
    const { design: rail, index } = cover.rail;
    const up = rail.ups[index]?.value;
    const rise =
      (rail.flat?.value ? rail.section?.value.first : rail.section?.value.second) ?? rail.round?.value;
    if (up !== undefined && rise !== undefined)
      ends.topHeight = up - rise - (cover.which === 1 ? (rail.fall?.value ?? 0) : 0);
  }
  if (!design.height && !cover && design.topInto) {
    const rail = work.rails.get(fullName(work.design, design.topInto.value.rail, side) ?? "");
    if (!rail) return undefined;
    // A first guess, until the post's own line tells where it meets the rail.
    ends.topHeight = Math.max(rail.start[2], rail.end[2]);
  }
  return ends;
}

/** Foot in the top face of a rail, on the middle of its thickness. */
function standingOn(rail: Rail, x: number, side: Side): PostEnds {
  const shape = shapeOf(rail);
  const middle = (shape.outside(x) + shape.inside(x)) / 2;
  const point = along(
    along(along(rail.start, rail.along, x), rail.outward, middle),
    rail.upward,
    shape.top(x),
  );
  const slope = (shape.top(x + 0.01) - shape.top(x - 0.01)) / 0.02;
  return {
    footHeight: point[2],
    foot: planeAt(point, along(rail.upward, rail.along, -slope)),
    place: { out: side === "right" ? -point[0] : point[0], back: point[1] },
  };
}

/** Builds a rail when both members it joins are there; true when it need not be tried again. */
/** Whether no post that a rail enters still waits for the rail over it, which moves its top and so its taper a little. */
function entersCutPosts(work: Work, rail: RailMember): boolean {
  const ends = railEnds(work.design, rail) ?? [];
  return ends.every((end) => {
    const cover = end.overhang === undefined ? work.covers.get(end.member) : undefined;
    return !cover || cover.rail === rail || work.rails.has(cover.rail.name);
  });
}

function tryRail(work: Work, member: RailMember): boolean {
  if (isCarried(member)) {
    const crest = attempt(member.name, member.design.at, work.faults, () =>
      buildCarried(member, work.faults),
    );
    if (crest) work.rails.set(crest.name, crest);
    return true;
  }
  const under = member.design.onOne;
  if (under) {
    const post = work.posts.get(under.value.name);
    if (!post) return false;
    const crest = attempt(member.name, member.design.at, work.faults, () =>
      buildCarried(member, work.faults, post),
    );
    if (crest) work.rails.set(crest.name, crest);
    return true;
  }
  const ends = railEnds(work.design, member);
  if (!ends) return true;
  if (!ends.every((end) => work.built(end.member))) return false;
  const rail = attempt(member.name, member.design.at, work.faults, () => railFrom(work, member, ends));
  if (!rail) return true;
  work.rails.set(rail.name, rail);
  for (const name of coveredPosts(work, member)) {
    cutUnder(work, name, undersideOf(rail));
    tellTwice(work, name, rail, member);
  }
  return true;
}

/** A solid seat of its facts: the part of a chair that takes longest to build. */
function seatFrom(reuse: Reuse, design: Design, seat: SeatDesign, faults: Fault[]): SeatSurface | undefined {
  return madeOnce<SeatSurface | undefined>(
    reuse,
    partName(SEAT),
    { same: [], equal: [seat, design.units] },
    {
      faults,
      make: () => buildSolidSeat(design, seat, faults),
      copy: (surface) => surface && { ...surface, design: seat },
    },
  );
}

/** A post of its facts and how its ends are cut. */
function postFrom(
  reuse: Reuse,
  design: PostDesign,
  side: Side,
  ends: PostEnds,
  faults: Fault[] = [],
): Post | undefined {
  const from = { same: [], equal: [design, side, ends] };
  return madeOnce<Post | undefined>(reuse, partName({ stem: design.name, side }), from, {
    faults,
    make: () => buildPost(design, side, ends, faults),
    copy: (post) => post && { ...post, design },
  });
}

/** A rail between what it joins. One that a seat rests on is built anew: its strips are cut to each other. */
function railFrom(work: Work, member: RailMember, ends: readonly [CourseEnd, CourseEnd]): Rail | undefined {
  const { design, built, middle, faults, reuse } = work;
  const make = () => buildRail(design, member, built, middle!, faults);
  if (member.design.rests.length > 0) return make();
  const from = {
    same: ends.map((end) => built(end.member)?.body),
    equal: [member.design, member.side, member.index, ends, middle],
  };
  return madeOnce<Rail | undefined>(reuse, member.name, from, {
    faults,
    make,
    copy: (rail) => rail && copyOf(rail, member.design),
  });
}

/** Cuts the top of a post to a plane, and lets its line end there. */
function cutUnder(work: Work, name: string, under: Plane): void {
  const post = work.posts.get(name);
  if (!post) return;
  const piece = post.pieces[post.pieces.length - 1]!;
  const gap = under.offset - dot(under.normal, piece.start);
  const topHeight = piece.start[2] + (gap / dot(under.normal, piece.direction)) * piece.direction[2];
  const ends: PostEnds = { ...work.ends.get(name), top: under, topHeight };
  const cut = postFrom(work.reuse, post.design, post.side, ends);
  if (!cut) return;
  work.posts.set(name, cut);
  work.ends.set(name, ends);
}

/** A post's own height and that of the rail over it cannot both hold. */
function tellTwice(work: Work, name: string, rail: Rail, member: RailMember): void {
  const post = work.posts.get(name);
  const given = post?.design.height;
  if (!post || !given || !member.design.ups[member.index] || Math.abs(post.topHeight - given.value) < 0.01)
    return;
  const length = (mm: number) => printLength(mm, work.design.units);
  const message = sentence("fault.two-heights", {
    rail: rail.name,
    height: length(post.topHeight),
    given: length(given.value),
  });
  work.faults.push({ is: "not-buildable", part: name, at: given.at, message });
}

/** The plane of a rail's straight lower edge, looking up. */
function undersideOf(rail: Rail): Plane {
  const shape = shapeOf(rail);
  const slope = (shape.straightBottom(rail.length) - shape.straightBottom(0)) / rail.length;
  const lower = along(rail.start, rail.upward, shape.straightBottom(0));
  return planeAt(lower, along(rail.upward, rail.along, -slope));
}

/** The posts a rail lies over, by its ends. */
function postsUnder(work: Work, members: readonly RailMember[], rail: Rail): Post[] {
  const member = members.find((m) => m.name === rail.name);
  const under: Post[] = [];
  if (!member) return under;
  railEnds(work.design, member)?.forEach((end, which) => {
    const post = work.posts.get(end.member);
    if (end.overhang !== undefined && post) under[which] = post;
  });
  return under;
}

/** Parts that wait for each other in a ring can never be built; each is told once. */
function tellCircles(work: Work, posts: PostMember[], rails: RailMember[]): void {
  const needs = new Map<string, string[]>();
  for (const { design, side, name } of posts) {
    const refs = [design.standsOn?.value.rail, design.height ? undefined : design.topInto?.value.rail];
    needs.set(
      name,
      refs.flatMap((ref) => (ref && fullName(work.design, ref, side)) ?? []),
    );
  }
  for (const rail of rails)
    needs.set(
      rail.name,
      (railEnds(work.design, rail) ?? []).map((end) => end.member),
    );
  for (const { name, design } of [...posts, ...rails]) {
    const seen = new Set<string>();
    const reach = (part: string): boolean =>
      (needs.get(part) ?? []).some(
        (next) => next === name || (!seen.has(next) && seen.add(next) && reach(next)),
      );
    if (!reach(name)) continue;
    const others = [...seen].filter((part) => part !== name && needs.has(part));
    const message = sentence("fault.circle", { other: others[0] ?? "itself" });
    work.faults.push({ is: "not-buildable", part: name, at: design.at, message });
  }
}

function inOrder<T>(members: readonly { name: string }[], built: Map<string, T>): Map<string, T> {
  const ordered = new Map<string, T>();
  for (const { name } of members) {
    const part = built.get(name);
    if (part) ordered.set(name, part);
  }
  return ordered;
}
