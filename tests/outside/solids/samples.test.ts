/**
 * Every shoulder line and tenon volume of every sample against solids made here with manifold-3d 3.5.4 (Apache-2.0), an independent
 * library of exact set operations on solids. Posts are built from the text's facts by the language's own definitions, rails as bars that
 * the posts are taken from, tenons as bars cut by the face they enter and by that face moved in. Only where a rail lies is taken from the
 * chair, and that is held to the definitions first: heights, faces, centre lines, lean.
 */
import { readdirSync, readFileSync } from "node:fs";
import { afterEach, describe, expect, test } from "vitest";
import { parse } from "../../../grammar/parser.ts";
import { vocabulary } from "../../../grammar/vocabulary/index.ts";
import type { Chair, Joint, Rail } from "../../../server/chair/chair.ts";
import type { JointFacts, RailDesign, Size } from "../../../server/design/design.ts";
import { settle } from "../../../server/settle.ts";
import {
  bar,
  beyond,
  corners,
  hull,
  lessThan,
  parts,
  roundBar,
  SHARE_OF_CIRCLE,
  type Solid,
  shared,
  sweepSolids,
  together,
} from "./manifold.ts";
import { ownHollow } from "./own-hollow.ts";
import { factsAt } from "./own-joint.ts";
import { faceTowards, type OwnPost, type OwnStretch, ownPost, sideTowards } from "./own-post.ts";
import {
  bowedEnd,
  facesOf,
  frameOf,
  middleOfBow,
  type OwnFrame,
  type OwnSection,
  reachOf,
  sectionOf,
  spot,
  stuffOf,
} from "./own-rail.ts";
import { ownSocket } from "./own-socket.ts";
import {
  above,
  across,
  angle,
  direction,
  type Face,
  inner,
  minus,
  outer,
  plus,
  size,
  times,
  type V,
} from "./vectors.ts";

const folder = new URL("../../../samples/", import.meta.url);
const read = (name: string): string | undefined => {
  try {
    return readFileSync(new URL(name, folder), "utf8");
  } catch {
    return undefined;
  }
};
const names = readdirSync(folder).filter((name) => name.endsWith(".chair"));
/** Relative, as the checks ask for; lengths of less than 1 mm are measured against 1 mm. */
const CLOSE = 1e-6;
const near = (found: number, wanted: number, what: string) =>
  expect(
    Math.abs(found - wanted) / Math.max(1, Math.abs(wanted)),
    `${what}: ${found} for ${wanted}`,
  ).toBeLessThan(CLOSE);

afterEach(sweepSolids);

function chairFrom(name: string): Chair {
  const tree = parse(read(name)!, vocabulary);
  return settle({ tree, address: name, files: { resolve: (_from, path) => path, read } }).chair;
}

/** What an end enters: its face there, and wood enough of it to be taken from the rail. */
interface OwnHost {
  face: Face;
  wood: Solid | undefined;
  stretch?: OwnStretch;
  post?: OwnPost;
}

function hostOf(chair: Chair, rail: Rail, which: 0 | 1): OwnHost | undefined {
  const end = rail.ends[which];
  const entered = end.entered?.name;
  if (!entered || end.over) return undefined;
  const frame = frameOf(rail);
  const look = which === 0 ? frame.along : times(frame.along, -1);
  const { out, up } = reachOf(sectionOf(rail.design), which);
  const middle = spot(frame, which * frame.length, (out[0]! + out[1]!) / 2, (up[0]! + up[1]!) / 2);
  const post = chair.posts.get(entered);
  if (post) {
    const solid = chair.design.seat?.solid;
    const slope = solid?.slope?.value ?? Math.asin((solid?.fall?.value ?? 0) / (solid?.deep?.value ?? 1));
    const own = ownPost(post.design, post.side, { foot: post.footHeight, top: post.topHeight }, slope);
    const stretch = own.stretch(middle[2]);
    const wood = stretch.corners && hull([...stretch.corners[0], ...stretch.corners[1]]);
    return { face: faceTowards(stretch, look), wood, stretch, post: own };
  }
  if (chair.seat && entered === "seat") {
    const { front, plane } = chair.seat;
    return { face: { at: [...front.middle] as V, out: [...plane.normal] as V }, wood: undefined };
  }
  // Bows have tests of their own.
  const host = chair.rails.get(entered);
  if (!host) return undefined;
  const hostFrame = frameOf(host);
  // Along a tapering stretcher the size is taken where the text puts the rail, which need not come square to it.
  const course = rail.design.is === "rail" ? rail.design.course?.value : undefined;
  const station = course?.is === "across" ? course.station : undefined;
  const x = station
    ? "mm" in station
      ? station.mm
      : station.share * hostFrame.length
    : inner(minus(middle, hostFrame.start), hostFrame.along);
  if (host.round !== undefined) {
    // The plane that touches a turned rail on the side that the end comes from.
    const against = times(look, -1);
    const square = direction(minus(against, times(hostFrame.along, inner(against, hostFrame.along))));
    const { out: reach } = reachOf(sectionOf(host.design), x / hostFrame.length);
    const axis = spot(hostFrame, x, 0, 0);
    const sign = Math.sign(inner(minus(middle, axis), square)) || 1;
    return { face: { at: plus(axis, square, sign * reach[1]!), out: times(square, sign) }, wood: undefined };
  }
  const faces = facesOf(hostFrame, sectionOf(host.design), x);
  const face = faces.reduce((a, b) => (inner(a.out, look) > inner(b.out, look) ? a : b));
  const curved = Math.abs(inner(face.out, hostFrame.outward)) > 0.7 && host.bow;
  if (curved) throw new Error(`${rail.name} enters the curved face of ${host.name}`);
  return { face, wood: undefined };
}

/** One end of the rail's stuff less what it enters. */
function cutEnd(rail: Rail, which: 0 | 1, host: OwnHost): Solid {
  const frame = frameOf(rail);
  const section = sectionOf(rail.design);
  if (rail.bow) return beyond(bowedEnd(frame, section, rail.bow, which), host.face.at, host.face.out);
  const stuff = stuffOf(frame, section, 15);
  const look = which === 0 ? frame.along : times(frame.along, -1);
  if (!host.wood) return beyond(stuff, host.face.at, host.face.out);
  // What stands out beyond the far side of a post is not the rail.
  const far = (piece: Solid) => Math.max(...corners(piece).map((p) => inner(minus(p, host.face.at), look)));
  return parts(lessThan(stuff, host.wood)).reduce((a, b) => (far(a) > far(b) ? a : b));
}

/** The corners where the rail's four arrises meet a face: top outside, top inside, bottom inside, bottom outside. */
function shoulderCorners(solid: Solid, face: Face, frame: OwnFrame, section: OwnSection): V[] {
  const on = corners(solid).filter((p) => Math.abs(above(face, p)) < 1e-6);
  if (on.length < 4) throw new Error(`${on.length} corners where four were looked for`);
  const farthest = (o: number, u: number) => {
    const far = (p: V) =>
      (o * inner(p, frame.outward)) / section.out[0] + (u * inner(p, frame.upward)) / section.up[0];
    return on.reduce((a, b) => (far(a) > far(b) ? a : b));
  };
  return [farthest(1, 1), farthest(-1, 1), farthest(-1, -1), farthest(1, -1)];
}

/** What the language says of where a rail lies, each said again here. */
function placeHolds(chair: Chair, rail: Rail): void {
  const design = rail.design as RailDesign;
  const frame = frameOf(rail);
  const end = spot(frame, frame.length, 0, 0);
  near(inner(frame.along, frame.outward), 0, `${rail.name}: outward square to along`);
  near(inner(frame.along, frame.upward), 0, `${rail.name}: upward square to along`);
  near(size(minus([...rail.end] as V, end)), 0, `${rail.name}: its end`);
  const hosts = ([0, 1] as const).map((which) => hostOf(chair, rail, which));
  const index = design.ups.length > 1 ? Number(/\.(\d+)/.exec(rail.name)![1]) - 1 : 0;
  const up = design.ups[index]?.value;
  // A round rail's heights are those of its axis on the posts' centre lines; an end over a post is held by that post's top.
  const atShoulders = !design.round && !rail.ends.some((each) => each.over);
  if (up !== undefined && atShoulders) near(frame.start[2], up, `${rail.name}: up`);
  const run = Math.hypot(end[0] - frame.start[0], end[1] - frame.start[1]);
  const fall = design.fall?.value ?? (design.slope ? run * Math.tan(design.slope.value) : 0);
  if (up !== undefined && atShoulders) near(frame.start[2] - end[2], fall, `${rail.name}: fall`);
  const leans: number[] = [];
  let curved = false;
  for (const which of [0, 1] as const) {
    const host = hosts[which];
    if (!host?.post || !host.stretch) continue;
    const arris = which === 0 ? frame.start : end;
    near(above(host.face, arris), 0, `${rail.name}: on the face entered`);
    const section = sectionOf(design);
    const { out, up: rise } = reachOf(section, which);
    if (section.round) {
      const z = up! - which * (design.fall?.value ?? 0);
      const off = across(minus(host.post.centre(z), arris), frame.along);
      near(size(off), 0, `${rail.name}: its axis through the centre line at its height`);
    } else if (design.face.value.is === "centred") {
      const y = (out[0]! + out[1]!) / 2;
      const z = (rise[0]! + rise[1]!) / 2;
      const middle = plus(plus(arris, frame.outward, y), frame.upward, z);
      // Midway between the post's faces as it is there: where it tapers that is not quite its centre line.
      const centre = host.post.centre(middle[2]);
      const stretch = host.stretch;
      const reach = (look: V) => {
        const side = sideTowards(stretch, look, host.face);
        return -above(side, centre) / inner(side.out, look);
      };
      const inward = minus([0, 0, 0], frame.outward);
      const aside = stretch.faces ? (reach(frame.outward) - reach(inward)) / 2 : 0;
      const off = minus(plus(centre, frame.outward, aside), middle);
      // The middle of a tapered rail runs askew of its outside arris.
      const skew = (section.out[0] - section.out[1]) / 2 / frame.length;
      const sideways = inner(off, frame.outward) - skew * inner(off, frame.along);
      near(sideways, 0, `${rail.name}: midway in its post`);
    } else {
      const inset = design.face.value.is === "inset" ? design.face.value.inset : 0;
      const side = sideTowards(host.stretch, frame.outward, host.face);
      near(above(side, arris), -inset, `${rail.name}: inset`);
    }
    const top = host.post.centre(arris[2] + rise[1]! * frame.upward[2]);
    const bottom = host.post.centre(arris[2] + rise[0]! * frame.upward[2]);
    const level = direction(across(frame.outward, [0, 0, 1]));
    const chord = minus(top, bottom);
    const plumb = direction(across([0, 0, 1], frame.along));
    leans.push(Math.atan2(inner(chord, level), inner(chord, plumb)));
    curved ||= curveWithin(chair, rail.ends[which].entered!.name, bottom[2], top[2]);
  }
  if (design.stand.value === "plumb") near(frame.outward[2], 0, `${rail.name}: plumb`);
  else if (leans.length === 2) {
    const lean = Math.asin(-frame.outward[2]);
    const wanted = (leans[0]! + leans[1]!) / 2;
    // A fair curve takes the chord off the sharp knee by its own small rise: a tenth of a degree or less here.
    if (curved) expect(Math.abs(lean - wanted), `${rail.name}: leans with its posts`).toBeLessThan(0.002);
    else near(lean, wanted, `${rail.name}: leans with its posts`);
  }
}

/** Whether a fair curve of a post lies between two heights. */
function curveWithin(chair: Chair, post: string, low: number, high: number): boolean {
  return chair.posts
    .get(post)!
    .design.knees.some(
      ({ value: knee }) => knee.height + knee.over / 2 > low && knee.height - knee.over / 2 < high,
    );
}

function sizeIn(given: Size, own: number, entered: () => number, kind: Rail["is"]): number {
  if ("mm" in given) return given.mm;
  return given.share * (given.of === kind ? own : entered());
}

interface Tenon {
  solid: Solid;
  haunch: number;
  /** Its middle at the shoulder, and the way it goes. */
  root: V;
  run: V;
}

/** A tenon, and its haunch's volume, by the language's words: from the face entered in, ended by that face moved in. */
function ownTenon(rail: Rail, which: 0 | 1, facts: JointFacts, host: OwnHost): Tenon {
  const frame = frameOf(rail);
  const section = sectionOf(rail.design);
  const { out, up } = reachOf(section, which);
  const flat = rail.design.is === "rail" && rail.design.flat?.value === true;
  // A member that lies flat has its thickness plumb, and its outside edge for its top.
  const [thickAxis, wideAxis] = flat ? [frame.upward, frame.outward] : [frame.outward, frame.upward];
  const [thickSpan, wideSpan] = flat ? [up, out] : [out, up];
  const stuff = { thick: thickSpan[1]! - thickSpan[0]!, wide: wideSpan[1]! - wideSpan[0]! };
  const into = which === 0 ? times(frame.along, -1) : frame.along;
  const base = spot(frame, which * frame.length, 0, 0);
  const noShare = () => {
    throw new Error(`${rail.name}: a share of what it enters is not built here`);
  };
  const cut = (solid: Solid, from: number, to: number) =>
    beyond(
      beyond(solid, plus(host.face.at, host.face.out, -from), times(host.face.out, -1)),
      plus(host.face.at, host.face.out, -to),
      host.face.out,
    );
  const place = (t: number, w: number): V => plus(plus(base, thickAxis, t), wideAxis, w);
  if (facts.round) {
    const long = sizeIn(facts.round.value.long!, stuff.thick, noShare, rail.is);
    const middle = place((thickSpan[0]! + thickSpan[1]!) / 2, (wideSpan[0]! + wideSpan[1]!) / 2);
    const solid = roundBar(middle, into, 60, thickAxis, wideAxis, facts.round.value.diameter / 2);
    return { solid: cut(solid, 0, long), haunch: 0, root: middle, run: into };
  }
  if (facts.dowels) {
    const { count, diameter, long } = facts.dowels.value;
    const [high, low] = [facts.shoulderTop?.value ?? 0, facts.shoulderBottom?.value ?? 0];
    const step = (stuff.wide - high - low) / count;
    const solids = Array.from({ length: count }, (_, k) => {
      const middle = place((thickSpan[0]! + thickSpan[1]!) / 2, wideSpan[0]! + low + (k + 0.5) * step);
      return cut(roundBar(middle, into, 60, thickAxis, wideAxis, diameter / 2), 0, long / 2);
    });
    return { solid: together(solids), haunch: 0, root: base, run: into };
  }
  // A separate tongue lies square to the face, half of it on either side.
  const loose = facts.looseTenon?.value;
  const given = (loose?.thick ?? facts.tenonThick!).value;
  const thick = given === "full" ? stuff.thick : sizeIn(given, stuff.thick, noShare, rail.is);
  const [top, bottom] = [facts.shoulderTop?.value ?? 0, facts.shoulderBottom?.value ?? 0];
  const asked = loose ? loose.wide : facts.tenonWide;
  const wide = asked ? sizeIn(asked.value, stuff.wide, noShare, rail.is) : stuff.wide - top - bottom;
  const set = facts.set?.value;
  const outside = set?.from === "outside" ? set.distance : (stuff.thick - thick) / 2;
  const long = loose ? loose.long.value / 2 : sizeIn(facts.tenonLong!.value, stuff.thick, noShare, rail.is);
  const high = asked && !facts.shoulderTop ? (stuff.wide - wide) / 2 : top;
  // A bowed rail's end cuts its curve aslant, and there it is a little thicker than its stuff.
  const inwards = rail.bow && !set ? middleOfBow(rail) : thickSpan[1]! - outside - thick / 2;
  const middle = place(inwards, wideSpan[1]! - high - wide / 2);
  const square = loose !== undefined || facts.line?.value === "square";
  // Square to the face, the cheeks keep to the outside face's shoulder line; the gauge lines are scribed along the rail.
  // With the bow: along the tangent of the arc at its end, whose half angle has the tangent 2 rise / chord.
  const turn = facts.withBow && rail.bow ? 2 * Math.atan((2 * rail.bow) / rail.length) : 0;
  const bent = plus(times(into, Math.cos(turn)), thickAxis, -Math.sin(turn));
  const run = square ? times(host.face.out, -1) : bent;
  const u = square ? direction(outer(host.face.out, thickAxis)) : wideAxis;
  const t = square
    ? direction(outer(host.face.out, u))
    : plus(times(thickAxis, Math.cos(turn)), into, Math.sin(turn));
  const rate = inner(host.face.out, into);
  const root = plus(middle, into, -above(host.face, middle) / rate);
  const whole = cut(bar(root, run, 90, t, thick / 2, u, wide / 2), 0, long);
  const gap = facts.twin?.value.gap;
  const solid = gap === undefined ? whole : lessThan(whole, bar(root, run, 90, t, thick, u, gap / 2));
  const haunch = facts.haunch?.value;
  if (!haunch || high <= 0) return { solid, haunch: 0, root, run };
  const upward = inner(u, wideAxis) > 0 ? u : times(u, -1);
  const tall = Math.min(haunch.wide ?? high, high);
  const at = plus(root, upward, wide / 2 + tall / 2);
  const tongue = cut(bar(at, run, 90, t, thick / 2, u, tall / 2), 0, haunch.long);
  // A sloped haunch runs out at the rail's edge: half of it.
  return { solid, haunch: tongue.volume() * (haunch.sloped ? 0.5 : 1), root, run };
}

interface Made {
  joint: Joint;
  own: Tenon;
}

/** Tenons of one member that are mitred and run into each other end at the plane that halves the angle between them. */
function mitred(all: readonly Made[]): Made[] {
  return all.map((one) => {
    if (!one.joint.facts.mitre) return one;
    let solid = one.own.solid;
    for (const other of all) {
      if (other === one || other.joint.entered.name !== one.joint.entered.name) continue;
      if (!other.joint.facts.mitre || shared(one.own.solid, other.own.solid).volume() < 1e-3) continue;
      const gap = Math.max(one.joint.facts.mitre.value.gap, other.joint.facts.mitre.value.gap);
      const out = direction(minus(one.own.run, other.own.run));
      solid = beyond(solid, plus(crossingOf(one.own, other.own), out, -gap / 2), times(out, -1));
    }
    return { joint: one.joint, own: { ...one.own, solid } };
  });
}

/** Midway between two lines where they come nearest: the common perpendicular's feet, by Cramer's rule. */
function crossingOf(a: Tenon, b: Tenon): V {
  const square = outer(a.run, b.run);
  // Tenons that come at each other from opposite sides meet halfway.
  if (size(square) < 1e-3) return times(plus(a.root, b.root, 1), 0.5);
  const between = minus(b.root, a.root);
  const t = inner(outer(between, b.run), square) / inner(square, square);
  const s = inner(outer(between, a.run), square) / inner(square, square);
  return times(plus(plus(a.root, a.run, t), plus(b.root, b.run, s), 1), 0.5);
}

function tenonHolds({ joint, own }: Made): void {
  const volume = own.solid.volume();
  const whole = joint.shape === "round" ? volume / SHARE_OF_CIRCLE : volume;
  near(joint.volume, whole + own.haunch, `${joint.name}: volume`);
  sameSolid(joint, own.solid, volume);
}

/** The tenon as built fills the one made here: wherever it is wrong, some of it sticks out. */
function sameSolid(joint: Joint, solid: Solid, volume: number): void {
  expect(joint.tenon.length).toBe(joint.facts.dowels?.value.count ?? (joint.facts.twin ? 2 : 1));
  const theirs = together(joint.tenon.map(({ points }) => hull(points.map((p) => [...p] as V))));
  // A round one is built of few flats with the circle's area: its corners stand out of the circle a little.
  const whole = joint.shape === "round" ? 0.01 : CLOSE;
  expect(Math.abs(shared(theirs, solid).volume() / volume - 1), `${joint.name}: place`).toBeLessThan(whole);
}

/** A post's tenon in the rail over it: thick across the rail, wide along it. */
function topHolds(chair: Chair, joint: Joint): void {
  const post = chair.posts.get(joint.part)!;
  const rail = chair.rails.get(joint.entered.name)!;
  const into = post.design.topInto!.value;
  const facts = chair.design.joints.get(into.joint!)!;
  const frame = frameOf(rail);
  const section = sectionOf(rail.design);
  const under = facesOf(frame, section, 0)
    .filter((face) => Math.abs(face.out[2]) > 0.7 && face.out[2] < 0)
    .at(0)!;
  const axis = direction(minus([...post.pieces.at(-1)!.end] as V, [...post.pieces.at(-1)!.start] as V));
  const along = direction(across(frame.along, axis));
  const thickAxis = outer(axis, along);
  const thick = (facts.tenonThick!.value as { mm: number }).mm;
  const wide = (facts.tenonWide!.value as { mm: number }).mm;
  const long = (facts.tenonLong!.value as { mm: number }).mm;
  const top = [...post.top] as V;
  near(above(under, top), 0, `${joint.name}: the post ends at the rail's underside`);
  const solid = beyond(
    beyond(bar(top, axis, 90, thickAxis, thick / 2, along, wide / 2), under.at, times(under.out, -1)),
    plus(under.at, under.out, -long),
    under.out,
  );
  near(joint.volume, solid.volume(), `${joint.name}: volume`);
  sameSolid(joint, solid, solid.volume());
}

/** A tenon in a solid seat: a cone or a cylinder about the post's own line, between the seat's faces or as deep as it is long. */
function socketHolds(chair: Chair, joint: Joint): void {
  const post = chair.posts.get(joint.part)!;
  const { round } = chair.design.joints.get(post.design.joined!.value)!;
  const { diameter, tip, long } = round!.value;
  const [top, foot] = [[...post.top] as V, [...post.foot] as V];
  const standing = post.design.onSeat !== undefined;
  const up = [...chair.seat!.plane.normal] as V;
  const solid = ownSocket({
    at: standing ? foot : top,
    run: standing ? direction(minus(foot, top)) : direction(minus(top, foot)),
    into: standing ? times(up, -1) : up,
    thick:
      long && "mm" in long
        ? long.mm
        : chair.seat!.design.thick!.value - ownHollow(chair, [post.top, direction(minus(top, foot))]),
    first: diameter,
    last: tip ?? diameter,
  });
  // A hollow is built in six straight steps, which stray from its curve by a sixtieth of its depth.
  const { solid: hollowed, thick } = chair.seat!.design;
  const strays = (hollowed!.hollow?.value.deep ?? 0) / 60 / thick!.value;
  expect(Math.abs(solid.volume() / SHARE_OF_CIRCLE / joint.volume - 1), joint.name).toBeLessThan(
    1e-3 + strays,
  );
  sameSolid(joint, solid, solid.volume());
}

for (const name of names) {
  const chair = chairFrom(name);
  const rails = [...chair.rails.values(), ...chair.slats.values()];
  if (rails.length === 0) continue;
  describe(name, () => {
    test("rails lie where their text puts them", () => {
      for (const rail of chair.rails.values())
        if (rail.design.is !== "rail" || !rail.design.carried) placeHolds(chair, rail);
    });

    test("shoulder lines and bevels", () => {
      for (const rail of rails) {
        const section = sectionOf(rail.design);
        const frame = frameOf(rail);
        for (const which of [0, 1] as const) {
          const host = hostOf(chair, rail, which);
          if (!host) continue;
          const end = rail.ends[which];
          const found = shoulderCorners(cutEnd(rail, which, host), host.face, frame, section);
          const [a, b, c, d] = found as [V, V, V, V];
          const label = `${rail.name}, ${end.name}`;
          const lines = [size(minus(a, b)), size(minus(b, c)), size(minus(c, d)), size(minus(d, a))];
          for (const [k, line] of lines.entries()) near(end.lines[k]!, line, `${label}, line ${k}`);
          const inward = which === 0 ? frame.along : times(frame.along, -1);
          near(end.faceBevel, angle(inward, minus(d, a)), `${label}, face bevel`);
          near(end.edgeBevel, angle(inward, minus(b, a)), `${label}, edge bevel`);
        }
        sweepSolids();
      }
    });

    test("tenon volumes", () => {
      const made: Made[] = [];
      for (const rail of rails) {
        for (const which of [0, 1] as const) {
          const end = rail.ends[which];
          const host = hostOf(chair, rail, which);
          if (!host || !end.joint) continue;
          made.push({
            joint: end.joint,
            own: ownTenon(rail, which, factsAt(chair.design, rail.design, end), host),
          });
        }
      }
      for (const one of mitred(made)) tenonHolds(one);
      const ofPosts = [...chair.joints.values()].filter(
        ({ part, entered }) => chair.posts.has(part) && entered.kind !== "bow",
      );
      const sockets = ofPosts.filter(({ entered }) => entered.kind === "seat");
      const tops = ofPosts.filter((joint) => !sockets.includes(joint));
      for (const joint of tops) topHolds(chair, joint);
      for (const joint of sockets) socketHolds(chair, joint);
      expect(made.length + ofPosts.length).toBe(
        [...chair.joints.values()].filter(
          ({ kind, part, entered }) =>
            kind !== "halving" && entered.kind !== "bow" && !chair.sticks.has(part) && !chair.bows.has(part),
        ).length,
      );
      expect(chair.joints.size).toBeGreaterThan(0);
    });
  });
}
