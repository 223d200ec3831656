/**
 * The frame of a chair: every member along its centre line in short beams, every joint a spring where its shoulder is, every foot a
 * support that only pushes. As the chair stands.
 */

import { finish, type Steps } from "../../grammar/steps.ts";
import type { Chair, Joint, Member } from "../chair/chair.ts";
import { isRail } from "../chair/member.ts";
import { isOnFloor } from "../chair/posts/on-floor.ts";
import { moveDirection, movePoint } from "../geometry/motion.ts";
import type { Convex, Vec3 } from "../geometry/solid.ts";
import { add, cross, distance, dot, scale, squareTo, sub, unit } from "../geometry/vec.ts";
import { strengthsOf } from "../timber/strengths.ts";
import { boardSeat } from "./board-seat.ts";
import type { Beam, Frame, FrameNode, Spring } from "./frame/frame.ts";
import { seatArms } from "./seat-arms.ts";
import { type SectionFigures, sectionAt, torsionOf } from "./section.ts";
import data from "./wood.json" with { type: "json" };

/** Which of the three figures a joint's stiffness is taken at. */
export type StiffnessLevel = "low" | "middle" | "high";

/** A stretch of a member as a beam, with what its strength is judged by. */
export interface Piece {
  /** Index of its beam in the frame. */
  beam: number;
  part: string;
  section: SectionFigures;
  species: string;
  /** What mortises leave of the section at its two ends, where there are any. */
  left: { from?: SectionFigures; to?: SectionFigures };
  /** Angle between the grain and the beam, rad. */
  grain: number;
}

export interface ChairFrame extends Frame {
  pieces: Piece[];
  /** Index of the node at each post's foot. */
  feet: Map<string, number>;
  /** Nodes along each part, in order. */
  along: Map<string, number[]>;
  /** The joint of each spring; those that hold a board seat come after them. */
  jointOf: Joint[];
  /** Members whose timber the table of strengths does not know. */
  unknown: string[];
}

/** Beams are at most this long, mm. */
const PIECE = 90;
/** A link through a member's own wood from its centre line to a joint is taken so much stiffer than that wood. */
const LINK = 50;
const JOIN = 0.5;

interface Station {
  at: Vec3;
  /** Along the centre line. */
  s: number;
  /** A mortise is cut here. */
  mortised?: true;
}

/** The chair's frame, its joints at one level of stiffness. A seat that lies loose or is woven carries nothing by itself: its load goes to the rails under it. */
export const frameOf = (chair: Chair, level: StiffnessLevel): ChairFrame => finish(frameSteps(chair, level));

/** The same, resting after each member. */
export function* frameSteps(chair: Chair, level: StiffnessLevel): Steps<ChairFrame> {
  const { stance } = chair;
  const standing = (point: Vec3) => movePoint(stance, point);
  const nodes: FrameNode[] = [];
  const beams: Beam[] = [];
  const springs: Spring[] = [];
  const made: ChairFrame = {
    nodes,
    beams,
    springs,
    pieces: [],
    feet: new Map(),
    along: new Map(),
    jointOf: [],
    unknown: [],
  };
  const members = [...chair.members.values()].filter(
    (member) => member.is === "post" || member.is === "bow" || isRail(member),
  );
  const joints = [...chair.joints.values()].filter(
    ({ part, entered, kind }) =>
      kind !== "none" && chair.members.has(part) && isFramed(chair.members.get(entered.name)),
  );
  const stations = new Map<string, Station[]>(
    members.map((member) => [member.name, stationsOf(member, joints)]),
  );

  const mortises = new Map<string, Convex[]>();
  for (const { entered, tenon, haunch } of joints)
    mortises.set(entered.name, [
      ...(mortises.get(entered.name) ?? []),
      ...tenon,
      ...(haunch ? [haunch] : []),
    ]);

  for (const member of members) {
    yield;
    const species = member.timber?.species ?? "";
    const strengths = strengthsOf(species);
    const stiff = strengths?.stiffness;
    if (!stiff) made.unknown.push(member.name);
    const E = (stiff ?? data.stiffness.unknown) * 1000 * data.stiffness.alongFactor;
    const here = stations.get(member.name) ?? [];
    const first = nodes.length;
    for (const [k, { at }] of here.entries()) nodes.push({ id: `${member.name}#${k}`, at: standing(at) });
    made.along.set(
      member.name,
      here.map((_, k) => first + k),
    );
    if (member.is === "post" && isOnFloor(member.design)) made.feet.set(member.name, first);
    for (let k = 1; k < here.length; k++) {
      const [a, b] = [here[k - 1] as Station, here[k] as Station];
      const run = unit(sub(b.at, a.at));
      const y = acrossOf(member, run);
      const axes = { along: run, y, z: cross(run, y) };
      const section =
        sectionAt(member.body, { at: middleOf(a.at, b.at), ...axes }) ??
        sectionAt(member.body, { at: along(a.at, b.at, 0.3), ...axes }) ??
        sectionAt(member.body, { at: along(a.at, b.at, 0.7), ...axes });
      if (!section) continue;
      const round = isRound(member);
      const left = ({ at, mortised }: Station) =>
        mortised ? sectionAt(member.body, { at, ...axes }, mortises.get(member.name)) : undefined;
      const [from, to] = [left(a), left(b)];
      made.pieces.push({
        beam: beams.length,
        part: member.name,
        section,
        left: { ...(from && { from }), ...(to && { to }) },
        species,
        // A bow is bent, so that its grain follows it.
        grain: member.is === "bow" ? 0 : Math.acos(Math.min(1, Math.abs(dot(run, member.grain)))),
      });
      beams.push({
        id: `${member.name}:${k}`,
        part: member.name,
        from: first + k - 1,
        to: first + k,
        yAxis: moveDirection(stance, y),
        E,
        G: E * data.stiffness.shearRatio,
        A: section.A,
        Ay: section.A * data.stiffness.shearArea,
        Az: section.A * data.stiffness.shearArea,
        Iy: section.Iy,
        Iz: section.Iz,
        J: torsionOf(section, round),
      });
    }
  }

  yield;
  if (chair.seat?.plan) {
    const { name } = chair.seat;
    const roots = joints.filter(({ entered }) => entered.name === name).map(({ root }) => root);
    const middle = scale(roots.reduce<Vec3>(add, [0, 0, 0]), 1 / Math.max(1, roots.length));
    const arms = seatArms(chair.seat, roots.map(standing), nodes.length);
    made.along.set(
      name,
      arms.nodes.map((_, k) => nodes.length + k),
    );
    stations.set(
      name,
      [middle, ...roots].map((at, s) => ({ s, at })),
    );
    nodes.push(...arms.nodes);
    beams.push(...arms.beams);
  }
  for (const joint of joints) addJoint(made, joint, chair, stations, level);
  const board = chair.seat && boardSeat(chair.seat, made, stance);
  if (board) {
    nodes.push(...board.nodes);
    beams.push(...board.beams);
    springs.push(...board.springs);
  }
  return made;
}

const isFramed = (member: Member | undefined): boolean =>
  member !== undefined &&
  (member.is === "post" ||
    member.is === "bow" ||
    isRail(member) ||
    (member.is === "seat" && member.plan !== undefined));

const isRound = (member: Member): boolean => "round" in member.design && member.design.round !== undefined;

const along = (a: Vec3, b: Vec3, t: number): Vec3 => add(scale(a, 1 - t), scale(b, t));
const middleOf = (a: Vec3, b: Vec3): Vec3 => along(a, b, 0.5);

/** A member's own y: square to its run, along a face of it. */
function acrossOf(member: Member, run: Vec3): Vec3 {
  const across = member.faces[0]?.plane.normal ?? [1, 0, 0];
  for (const way of [across, [1, 0, 0], [0, 1, 0]] as Vec3[]) {
    const square = squareTo(way, run);
    if (Math.hypot(...square) > 0.3) return unit(square);
  }
  return unit(squareTo([0, 0, 1], run));
}

/** Where a member's line has nodes: its own corners, its ends, wherever a joint meets it, and in between so that no beam is long. */
function stationsOf(member: Member, joints: readonly Joint[]): Station[] {
  const line = member.is === "post" ? trimmed(member.centreLine, member.foot, member.top) : member.centreLine;
  const lengths = [0];
  for (let k = 1; k < line.length; k++)
    lengths.push((lengths[k - 1] as number) + distance(line[k - 1] as Vec3, line[k] as Vec3));
  const whole = lengths.at(-1) ?? 0;
  const cut = joints
    .filter(({ entered }) => entered.name === member.name)
    .map(({ root }) => nearestOn(line, lengths, root));
  const wanted = new Set<number>([...lengths, ...cut]);
  const sorted = [...wanted]
    .sort((a, b) => a - b)
    .filter((s, k, all) => k === 0 || s - (all[k - 1] as number) > JOIN);
  const places: number[] = [];
  for (const [k, s] of sorted.entries()) {
    const before = sorted[k - 1];
    if (before !== undefined) {
      const parts = Math.ceil((s - before) / PIECE);
      for (let p = 1; p < parts; p++) places.push(before + ((s - before) * p) / parts);
    }
    places.push(s);
  }
  return places.map((s) => ({
    s,
    at: pointOn(line, lengths, Math.min(s, whole)),
    ...(cut.some((each) => Math.abs(each - s) <= JOIN) && { mortised: true as const }),
  }));
}

/** A post's line from its trimmed foot to its top. */
function trimmed(line: readonly Vec3[], foot: Vec3, top: Vec3): Vec3[] {
  const low = Math.min(foot[2], top[2]) + JOIN;
  const high = Math.max(foot[2], top[2]) - JOIN;
  return [foot, ...line.filter(([, , z]) => z > low && z < high), top];
}

function nearestOn(line: readonly Vec3[], lengths: readonly number[], point: Vec3): number {
  let best = { far: Number.POSITIVE_INFINITY, s: 0 };
  for (let k = 1; k < line.length; k++) {
    const [a, b] = [line[k - 1] as Vec3, line[k] as Vec3];
    const run = sub(b, a);
    const size = dot(run, run) || 1;
    const t = Math.min(1, Math.max(0, dot(sub(point, a), run) / size));
    const far = distance(point, along(a, b, t));
    if (far < best.far) best = { far, s: (lengths[k - 1] as number) + t * Math.sqrt(size) };
  }
  return best.s;
}

function pointOn(line: readonly Vec3[], lengths: readonly number[], s: number): Vec3 {
  const k = Math.max(
    1,
    lengths.findIndex((each) => each >= s - 1e-9),
  );
  const [a, b] = [line[k - 1] as Vec3, (line[k] ?? line[k - 1]) as Vec3];
  const size = (lengths[k] ?? 0) - (lengths[k - 1] as number) || 1;
  return along(a, b, (s - (lengths[k - 1] as number)) / size);
}

/** A stiff link from the host's line to the member's end, and between the two a spring. */
function addJoint(
  made: ChairFrame,
  joint: Joint,
  chair: Chair,
  stations: ReadonlyMap<string, readonly Station[]>,
  level: StiffnessLevel,
): void {
  const { stance } = chair;
  const nodes = made.nodes as FrameNode[];
  const beams = made.beams as Beam[];
  const springs = made.springs as Spring[];
  const own = stations.get(joint.part) ?? [];
  const ownNodes = made.along.get(joint.part) ?? [];
  const host = stations.get(joint.entered.name) ?? [];
  const hostNodes = made.along.get(joint.entered.name) ?? [];
  const last = own.length - 1;
  if (last < 1 || host.length < 2) return;
  const end =
    distance((own[0] as Station).at, joint.root) <= distance((own[last] as Station).at, joint.root)
      ? 0
      : last;
  const near = host.reduce(
    (best, { at }, k) =>
      distance(at, joint.root) < distance((host[best] as Station).at, joint.root) ? k : best,
    0,
  );
  const place = nodes[ownNodes[end] as number] as FrameNode;
  const hostNode = hostNodes[near] as number;
  let from = hostNode;
  const hostAt = nodes[hostNode] as FrameNode;
  // A spring stands at one place, else what it passes on would turn the chair.
  if (distance(hostAt.at, place.at) <= JOIN) nodes[ownNodes[end] as number] = { ...place, at: hostAt.at };
  else {
    from = nodes.length;
    nodes.push({ id: `${joint.name}#shoulder`, at: place.at });
    const run = unit(sub(place.at, hostAt.at));
    const across = Math.abs(run[2]) < 0.8 ? ([0, 0, 1] as Vec3) : ([1, 0, 0] as Vec3);
    const beam = beams.find(({ part }) => part === joint.entered.name);
    const E = (beam?.E ?? 10_000) * LINK;
    const side = Math.max(30, joint.wide);
    beams.push({
      id: `${joint.name}:link`,
      part: joint.entered.name,
      from: hostNode,
      to: from,
      yAxis: unit(squareTo(across, run)),
      E,
      G: E * data.stiffness.shearRatio,
      A: side ** 2,
      Ay: side ** 2 * data.stiffness.shearArea,
      Az: side ** 2 * data.stiffness.shearArea,
      Iy: side ** 4 / 12,
      Iz: side ** 4 / 12,
      J: 0.141 * side ** 4,
    });
  }
  const axes = [joint.direction, joint.acrossThick, cross(joint.direction, joint.acrossThick)].map((axis) =>
    moveDirection(stance, axis),
  ) as [Vec3, Vec3, Vec3];
  springs.push({
    id: joint.name,
    joint: joint.name,
    from,
    to: ownNodes[end] as number,
    axes,
    k: stiffnessAt(joint, level),
  });
  made.jointOf.push(joint);
}

/** The same frame with its joints at another level of stiffness. */
export const atStiffness = (frame: ChairFrame, level: StiffnessLevel): ChairFrame => ({
  ...frame,
  springs: frame.springs.map((spring, k) => {
    const joint = frame.jointOf[k];
    return joint ? { ...spring, k: stiffnessAt(joint, level) } : spring;
  }),
});

/** N/mm along a joint's axes, N·mm/rad about them. */
function stiffnessAt({ wide, thick, long }: Joint, level: StiffnessLevel): number[] {
  const { tight, stiffness, stiffnessOf } = data.joints;
  const size = Math.max(wide, thick);
  const turns = stiffness[level] * (size / stiffnessOf.wide) ** 2 * (long / stiffnessOf.long);
  const slim = turns * Math.max(0.1, Math.min(wide, thick) / size);
  // About its thickness a tenon bends across its width: the stiffer way.
  return [tight, tight, tight, turns, turns, slim];
}
