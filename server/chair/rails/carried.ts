import type { RailDesign } from "../../design/design.ts";
import { planeAt } from "../../geometry/plane.ts";
import type { Vec3 } from "../../geometry/solid.ts";
import { along, scale } from "../../geometry/vec.ts";
import type { Post, Rail, RailEnd } from "../chair.ts";
import type { Fault } from "../fault.ts";
import { arcOver } from "./arc.ts";
import { railSizes } from "./rail.ts";
import { bowSign, curvesOf } from "./rail-curves.ts";
import type { RailFrame } from "./rail-frame.ts";
import type { RailMember } from "./rail-member.ts";
import { keepShape } from "./rail-outline.ts";
import { alongStick, makeStick } from "./stick.ts";

/** A crest lies across the chair, from left to right. */
const ACROSS: Vec3 = [-1, 0, 0];

/**
 * A crest carried by sticks, or by one post: placed by the middle of its lower edge (the post's top), bent first, then leaned; its ends are
 * square to its curve. Undefined where the text leaves something out.
 */
export function buildCarried(member: RailMember, faults: Fault[], post?: Post): Rail | undefined {
  const { design, index } = member;
  const sizes = railSizes(design);
  const long = design.long?.value;
  const middle = post ? post.top : placeOf(design, index);
  if (!sizes || !middle || long === undefined) return undefined;
  const rake = post ? leanOf(post, design) : (design.rake?.value ?? 0);
  const outward: Vec3 = [0, Math.cos(rake), -Math.sin(rake)];
  const upward: Vec3 = [0, Math.sin(rake), Math.cos(rake)];
  const given = design.bow?.value;
  const bow = given ? given.rise * bowSign(given.towards, "middle", outward) : 0;
  // From the outside top arris at the first end to the middle of the lower edge.
  const toMiddle: readonly [number, number] = sizes.round
    ? [bow, -sizes.wide / 2]
    : [bow - sizes.thick / 2, -sizes.wide];
  const start = along(along(along(middle, ACROSS, -long / 2), outward, -toMiddle[0]), upward, -toMiddle[1]);
  const end = along(start, ACROSS, long);
  const arc = arcOver(long, Math.abs(bow));
  const lean = arc ? Math.sign(bow) * arc.half : 0;
  const square = (sign: 1 | -1): Vec3 => along(scale(ACROSS, sign * Math.cos(lean)), outward, Math.sin(lean));
  const frame: RailFrame = {
    start,
    end,
    along: ACROSS,
    outward,
    upward,
    cuts: [planeAt(start, square(1)), planeAt(end, square(-1))],
    free: [0, long],
    wind: 0,
  };
  const curves = curvesOf(member, frame, sizes.wide, faults);
  const stick = makeStick(frame, { ...sizes, ...curves, past: [0, 0], enters: [[], []] });
  const ends = (["left", "right"] as const).map(
    (name, which): RailEnd => ({ name, ...stick.shoulders[which]! }),
  );
  const rail: Rail = {
    is: "rail",
    id: member.id,
    name: member.name,
    side: member.side,
    design,
    ...(design.timber && { timber: design.timber.value }),
    ends: ends as [RailEnd, RailEnd],
    start,
    end,
    along: ACROSS,
    outward,
    upward,
    thick: sizes.thick,
    wide: sizes.wide,
    length: stick.length,
    body: stick.body,
    ...alongStick(frame, stick),
  };
  if (sizes.round) rail.round = sizes.thick;
  if (stick.shape.bow) rail.roundLength = stick.shape.bow.length;
  if (curves.arch) rail.arch = curves.arch;
  if (curves.bow) rail.bow = curves.bow;
  return keepShape(rail, stick.shape);
}

/** The middle of the lower edge of a crest on sticks. */
function placeOf(design: RailDesign, index: number): Vec3 | undefined {
  const [up, back] = [design.ups[index]?.value, design.back?.value];
  return up === undefined || back === undefined ? undefined : [0, back, up];
}

/** A crest over one post stands plumb, or leans as that does at its top. */
function leanOf({ pieces }: Post, { stand }: RailDesign): number {
  const last = pieces[pieces.length - 1];
  return last && stand.value === "with posts" ? Math.atan2(last.direction[1], last.direction[2]) : 0;
}

/** A rail that sticks carry has no posts. */
export const isCarried = ({ design }: Pick<Rail, "design">): boolean =>
  design.is === "rail" && design.carried !== undefined;
