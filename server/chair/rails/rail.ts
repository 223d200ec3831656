import { sentence } from "../../../grammar/sentences/sentence.ts";
import type { Design, EndDesign, RailDesign, RailStation, RoundStation } from "../../design/design.ts";
import { type PartId, partName } from "../../design/identity.ts";
import type { Vec3 } from "../../geometry/solid.ts";
import type { Bow, Rail, RailEnd, Side } from "../chair.ts";
import type { Fault } from "../fault.ts";
import { stationOnBow } from "../joints/bow-host.ts";
import type { Host } from "../joints/host.ts";
import { hostOf } from "../joints/hosting.ts";
import { type Built, type CourseEnd, courseEnds, stationOn } from "./course.ts";
import { bowSign, curvesOf, type RailCurves } from "./rail-curves.ts";
import { type FrameEnd, type FrameFacts, placeRail, type RailFrame } from "./rail-frame.ts";
import type { RailMember } from "./rail-member.ts";
import { keepShape } from "./rail-outline.ts";
import { sizeAt } from "./rail-shape.ts";
import { setRests } from "./rests.ts";
import type { Shoulder } from "./shoulder.ts";
import { alongStick, makeStick, type Stick } from "./stick.ts";

/** Wind of less than this is none, radians; how much is too much is a rule's to say. */
const WIND = 1e-4;
/** Less than this off a face is nothing, mm. */
const OFF = 0.05;

/** Every rail a design's text names, in its order. */
export function railMembers(design: RailDesign): RailMember[] {
  const count = Math.max(1, design.ups.length);
  const sides: Side[] = design.pair ? ["left", "right"] : ["middle"];
  const members: RailMember[] = [];
  for (let index = 0; index < count; index++) {
    for (const side of sides) {
      const id: PartId = { stem: design.name, ...(count > 1 && { row: index + 1 }), side };
      members.push({ design, side, index, id, name: partName(id) });
    }
  }
  return members;
}

/** The facts of one end that differ: `end front { … }`. */
function endDesign(
  design: { ends: EndDesign[] },
  end: { name: string; member: string },
): EndDesign | undefined {
  return design.ends.find((e) => e.which.value === end.name || e.which.value === end.member);
}

/** Both ends of a rail with what they enter, an overhang of their own included; undefined when the text gives no course. */
export function railEnds(design: Design, member: RailMember): [CourseEnd, CourseEnd] | undefined {
  const ends = courseEnds(design, member.design, member.side);
  return ends?.map((end) => {
    const over = endDesign(member.design, end)?.over?.value;
    return over ? { ...end, overhang: over.overhang } : end;
  }) as [CourseEnd, CourseEnd] | undefined;
}

/**
 * A rail in space. Undefined when the text leaves something out or what it enters is not built; when the text is whole and the
 * rail cannot be, a fault says why.
 */
export function buildRail(
  design: Design,
  member: RailMember,
  built: Built,
  middle: Vec3,
  faults: Fault[],
): Rail | undefined {
  const ends = railEnds(design, member);
  const sizes = railSizes(member.design);
  if (!ends || !sizes) return undefined;
  const frameEnds = ends.map((end) => frameEnd(end, built, member.side)) as [
    FrameEnd | undefined,
    FrameEnd | undefined,
  ];
  if (!frameEnds[0] || !frameEnds[1]) return undefined;
  const facts = factsOf(member, [frameEnds[0], frameEnds[1]], sizes, middle);
  if (!facts) return undefined;
  const at = member.design.at;
  const thin = [0, 0.5, 1].some((share) => !(facts.thick(share) > 0 && facts.wide(share) > 0));
  if (thin) {
    faults.push({ is: "not-buildable", part: member.name, at, message: sentence("fault.no-section") });
    return undefined;
  }
  const frame = placeRail(facts);
  if (!frame) {
    const message = sentence("fault.no-line", { from: ends[0].member, to: ends[1].member });
    faults.push({ is: "not-buildable", part: member.name, at, message });
    return undefined;
  }
  if (frame.wind > WIND) faults.push({ is: "wind", part: member.name, at, difference: frame.wind });

  const curves = curvesOf(member, frame, sizes.wide, faults);
  const past = [frame.start, frame.end].map((at, which) => {
    const end = facts.ends[which]!;
    return end.over ? 0 : end.host.fallBack(facts.thick(which) / 2, at);
  });
  const stick = makeStick(frame, {
    ...sizes,
    ...curves,
    tapers: sizes.tapers,
    past: past as [number, number],
    enters: [facts.ends[0].host.pieces, facts.ends[1].host.pieces],
  });
  return finish(member, ends, facts.ends, frame, stick, { ...sizes, ...curves }, faults);
}

interface Sizes {
  thick: number;
  wide: number;
  round: boolean;
  flat: boolean;
  tapers: { thick: number; wide: number; towards: "end" | "ends" }[];
  stations?: RoundStation[];
}

/** Thickness outward and width up, as the rail stands: those of one that lies flat change places. */
export function railSizes(design: RailDesign): Sizes | undefined {
  const flat = design.flat?.value === true && !design.round;
  const turn = (first: number, second: number) =>
    flat ? { thick: second, wide: first } : { thick: first, wide: second };
  const round = design.round?.value;
  const section = design.section?.value;
  if (round === undefined && !section) return undefined;
  const size = round === undefined ? turn(section!.first, section!.second) : { thick: round, wide: round };
  const tapers = design.tapers.map(({ value }) => ({
    ...(round === undefined
      ? turn(value.section.first, value.section.second)
      : { thick: value.section.first, wide: value.section.first }),
    towards: value.towards,
  }));
  const stations = round === undefined ? [] : design.shape.map(({ value }) => value);
  return { ...size, round: round !== undefined, flat, tapers, ...(stations.length > 0 && { stations }) };
}

/** Thickness or width at a share of the length; of turned stuff with diameters along it that of the nearer end. */
function sizeAtShare(sizes: Sizes, which: "thick" | "wide", share: number): number {
  if (!sizes.stations) return sizeAt(sizes, which, share);
  return (share < 0.5 && sizes.stations.find(({ at }) => at === 0)?.diameter) || sizes.thick;
}

function frameEnd(end: CourseEnd, built: Built, side: Side): FrameEnd | undefined {
  const host = built(end.member);
  if (!host) return undefined;
  if (host.is === "bow") return { host: hostOf(host, stationOnBow(host, along(host, end.station), side)) };
  if (host.is !== "post") return { host: hostOf(host, stationOn(host, end.station)) };
  const frame: FrameEnd = { host: hostOf(host) };
  if (end.overhang === undefined) return frame;
  frame.over = { overhang: end.overhang };
  if (host.design.height) frame.hostTop = host.design.height.value;
  return frame;
}

/** mm along a bow from one of its ends; halfway when no station is given. */
const along = ({ path }: Bow, station: RailStation | undefined): number =>
  station && "mm" in station ? station.mm : path.length * (station?.share ?? 0.5);

function factsOf(
  member: RailMember,
  ends: [FrameEnd, FrameEnd],
  sizes: Sizes,
  middle: Vec3,
): FrameFacts | undefined {
  const { design } = member;
  const facts: FrameFacts = {
    ends,
    thick: (share) => sizeAtShare(sizes, "thick", share),
    wide: (share) => sizeAtShare(sizes, "wide", share),
    round: sizes.round,
    fall: design.fall?.value ?? 0,
    face: design.face.value,
    stand: design.stand.value,
    middle,
  };
  const bow = design.bow?.value;
  if (bow) facts.bow = (outward) => bow.rise * bowSign(bow.towards, member.side, outward);
  if (design.slope && !design.fall) facts.slope = design.slope.value;
  const up = design.ups[member.index]?.value;
  if (up !== undefined) return { ...facts, up };
  if (ends.some((end) => end.over && end.hostTop !== undefined)) return facts;
  const { middleHeight } = ends[0].host;
  return middleHeight === undefined ? undefined : { ...facts, middleHeight };
}

function finish(
  member: RailMember,
  ends: [CourseEnd, CourseEnd],
  hosts: FrameFacts["ends"],
  frame: RailFrame,
  stick: Stick,
  sizes: Sizes & RailCurves,
  faults: Fault[],
): Rail {
  const rail: Rail = {
    is: "rail",
    id: member.id,
    name: member.name,
    side: member.side,
    design: member.design,
    ...(member.design.timber && { timber: member.design.timber.value }),
    ends: [
      endOf(ends[0], hosts[0], stick.shoulders[0], frame, 0),
      endOf(ends[1], hosts[1], stick.shoulders[1], frame, 1),
    ],
    start: frame.start,
    end: frame.end,
    along: frame.along,
    outward: frame.outward,
    upward: frame.upward,
    thick: sizes.thick,
    wide: sizes.wide,
    length: stick.length,
    body: stick.body,
    ...alongStick(frame, stick),
  };
  if (sizes.round) rail.round = sizes.thick;
  if (sizes.flat) rail.flat = true;
  if (stick.shape.bow) rail.roundLength = stick.shape.bow.length;
  if (sizes.arch) rail.arch = sizes.arch;
  if (sizes.bow) rail.bow = sizes.bow;
  for (const which of [0, 1] as const) {
    if (!hosts[which].over) checkEnd(rail, which, ends[which], hosts[which].host, faults);
  }
  keepShape(rail, stick.shape);
  if (!sizes.round) setRests(rail, frame, stick.stations);
  return rail;
}

function endOf(end: CourseEnd, host: FrameEnd, shoulder: Shoulder, frame: RailFrame, which: 0 | 1): RailEnd {
  const base: RailEnd = {
    name: end.name,
    corners: shoulder.corners,
    lines: shoulder.lines,
    faceBevel: shoulder.faceBevel,
    edgeBevel: shoulder.edgeBevel,
  };
  if (host.over) return { ...base, over: host.over };
  return { ...base, entered: host.host.entered, shoulder: frame.cuts[which] };
}

function checkEnd(rail: Rail, which: 0 | 1, course: CourseEnd, host: Host, faults: Fault[]): void {
  const design = rail.design as RailDesign;
  const end = rail.ends[which];
  const at = course.station && design.course ? design.course.at : (design.ups[0]?.at ?? design.at);
  const common = { part: rail.name, end: end.name, towards: host.entered.name };
  const found = host.check(end.corners, end.shoulder!);
  if (found.gap !== undefined) {
    faults.push({ is: "end-reaches-nothing", ...common, at, gap: found.gap });
    return;
  }
  if (found.off > OFF) {
    const cause = design.face.assumed ? at : design.face.at;
    faults.push({ is: "rail-misses-post", ...common, at: cause, by: found.off });
  }
  if (found.curve) faults.push({ is: "shoulder-on-curve", ...common, at, ...found.curve });
  else if (found.knee) faults.push({ is: "shoulder-over-knee", ...common, at, ...found.knee });
}
