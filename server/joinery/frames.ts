import type { Chair, Joint, Post } from "../chair/chair.ts";
import { kept } from "../chair/kept.ts";
import { railsAndSlats } from "../chair/member.ts";
import { isOnFloor } from "../chair/posts/on-floor.ts";
import { withoutSides } from "../design/identity.ts";
import type { Vec3 } from "../geometry/solid.ts";
import { distance } from "../geometry/vec.ts";
import type { Assembly, GlueUp, Locked } from "./assembly.ts";
import { orderOf } from "./order.ts";
import { pegsOf } from "./pegs.ts";

/** A length to be checked while the glue is wet, mm. */
export interface Check {
  from: string;
  to: string;
  length: number;
}

/** Two lengths corner to corner that show whether a frame is square: each must come to its figure. */
interface Diagonals {
  one: Check;
  other: Check;
}

/** How far two posts stand apart, between the middles of their ends, mm. */
export interface PostsApart {
  a: string;
  b: string;
  feet: number;
  tops: number;
  /** The diagonals: from the foot of the first to the top of the second, and from its top to the other's foot. */
  footToTop: number;
  topToFoot: number;
}

/** One glue-up as a maker would have it told. */
export interface FrameUp {
  /** `back frame`, `left side frame`, `whole chair`. */
  name: string;
  /** The same within a sentence: `the back frame`. */
  called: string;
  /** What is brought together: single parts, and frames made before by their names. */
  brings: string[];
  /** All its parts. */
  parts: string[];
  closes: string[];
  /** What is put in alone before the rest closes, each along its own tenons. */
  first: { part: string; into: string[]; way: string; closes: string[] }[];
  /** Joints whose part must be sprung to enter, mm, and to which side in words. */
  sprung: { joint: string; part: string; by: number; towards: string }[];
  /** As drawn, unit: the line along which it is closed. */
  direction: Vec3;
  /** In plain words. */
  way: string;
  /** Posts that this glue-up brings together, each pair once. */
  between: PostsApart[];
  /** Across the feet, corner to corner. */
  plan: Diagonals[];
  /** The glues of the joints it closes, with how many have each; joints that name none are left out. */
  glue: { kind: string; joints: number }[];
  cautions: string[];
}

export interface Order {
  frames: FrameUp[];
  locked: Locked[];
}

/** The order of a chair's glue-ups with what each needs, or what forbids it. */
export function framesOf(chair: Chair, assembly: Assembly = kept(chair, orderOf)): Order {
  const whole = new Set(assembly.glueUps.flatMap(({ parts }) => parts));
  const names = new Map<GlueUp, string>();
  const taken = new Map<string, number>();
  for (const glueUp of assembly.glueUps) {
    const name = glueUp.parts.length === whole.size ? "whole chair" : nameOf(chair, glueUp.parts);
    const count = (taken.get(name) ?? 0) + 1;
    taken.set(name, count);
    names.set(glueUp, count > 1 ? `${name} (${count})` : name);
  }
  const made = new Map([...names].map(([{ parts }, name]) => [keyOf(parts), name]));
  const frames = assembly.glueUps.map((glueUp) => ({
    name: names.get(glueUp) ?? "",
    called: called(names.get(glueUp) ?? ""),
    brings: glueUp.groups.map((group) =>
      group.length === 1 ? group[0]! : called(made.get(keyOf(group)) ?? nameOf(chair, group)),
    ),
    parts: glueUp.parts,
    closes: glueUp.closes,
    direction: glueUp.direction,
    way: wayOf(glueUp.direction),
    first: glueUp.closing.first.map(({ parts, closes, direction }) => ({
      part: parts.length === 1 ? parts[0]! : called(made.get(keyOf(parts)) ?? nameOf(chair, parts)),
      into: hostsOf(chair, parts, closes),
      way: wayOf(direction),
      closes,
    })),
    sprung: glueUp.closing.sprung.map(({ joint, part, by, towards }) => ({
      joint,
      part,
      by,
      towards: sideOf(towards),
    })),
    ...measuresOf(chair, glueUp),
    glue: glueOf(chair, glueUp),
    cautions: cautionsOf(chair, glueUp),
  }));
  return { frames, locked: assembly.locked };
}

/** Names that begin with a part's stay as they are. */
const called = (name: string): string => (/^\S+\./.test(name) ? name : `the ${name}`);

/** The frames a part or a joint is closed in, the first first. */
export const framesWith = (order: Order, name: string): FrameUp[] =>
  order.frames.filter(({ parts, closes }) => parts.includes(name) || closes.includes(name));

const keyOf = (parts: readonly string[]): string => [...parts].sort().join(" ");

/** What a maker calls some parts together: by their posts, else by their rails; all but a few by those few. */
function nameOf(chair: Chair, parts: readonly string[]): string {
  const standing = (some: Iterable<Post>) => [...some].filter(({ design }) => isOnFloor(design));
  const posts = standing(parts.flatMap((part) => chair.posts.get(part) ?? []));
  const stems = [...new Set(posts.map(({ design }) => design.name))];
  const sides = new Set(posts.map(({ side }) => side));
  if (posts.length > 2 && posts.length === standing(chair.posts.values()).length) {
    const left = railsAndSlats(chair).filter(({ name }) => !parts.includes(name));
    if (chair.seat?.plan && !parts.includes(chair.seat.name)) return "undercarriage";
    return `chair without ${[...new Set(left.map(({ design }) => design.name))].join(" and ")}`;
  }
  if (posts.length >= 2) {
    const [side] = sides;
    if (sides.size === 1 && side !== "middle") return `${side} side frame`;
    const stem =
      stems.length === 1 ? stems[0] : stems.find((each) => stems.every((other) => other.startsWith(each)));
    return `${stem ?? stems.join(" and ")} frame`;
  }
  const rails = parts.filter((part) => chair.rails.has(part));
  if (posts[0])
    return `${posts[0].name} with ${rails.join(" and ") || parts.filter((part) => part !== posts[0]?.name).join(" and ")}`;
  return rails.length === 0 ? parts.join(" and ") : `panel of ${rails.join(" and ")}`;
}

/** What a group is put into: the other members of the joints it closes. */
function hostsOf(chair: Chair, parts: readonly string[], closes: readonly string[]): string[] {
  const others = closes.flatMap((name) => {
    const joint = chair.joints.get(name);
    return joint ? [joint.part, joint.entered.name].filter((part) => !parts.includes(part)) : [];
  });
  return [...new Set(others)];
}

/** To which side, as the sitter has it; a slanting way by both of its larger parts. */
function sideOf([x, y, z]: Vec3): string {
  const [first, second] = [
    { size: Math.abs(x), word: x > 0 ? "to the left" : "to the right" },
    { size: Math.abs(y), word: y > 0 ? "to the back" : "to the front" },
    { size: Math.abs(z), word: z > 0 ? "up" : "down" },
  ].sort((a, b) => b.size - a.size);
  return second!.size > 0.5 * first!.size ? `${first!.word} and ${second!.word}` : first!.word;
}

/** The line of a glue-up in words; which way round makes no difference. */
function wayOf(direction: Vec3): string {
  const [x, y, z] = direction.map(Math.abs) as [number, number, number];
  const most = Math.max(x, y, z);
  const line = most === y ? "front to back" : most === x ? "side to side" : "up and down";
  const off = (Math.acos(Math.min(1, most)) * 180) / Math.PI;
  return off < 0.5 ? `straight ${line}` : `${line}, ${off.toFixed(1)}° off straight`;
}

/** Measured between the middles of the posts' ends: they can be marked before anything is joined. */
function measuresOf(chair: Chair, { parts, groups }: GlueUp): { between: PostsApart[]; plan: Diagonals[] } {
  const posts = parts
    .flatMap((part) => chair.posts.get(part) ?? [])
    .filter(({ design }) => isOnFloor(design));
  const groupOf = new Map(groups.flatMap((group, k) => group.map((part) => [part, k] as const)));
  const together = (a: Post, b: Post) => groupOf.get(a.name) === groupOf.get(b.name);
  const between: PostsApart[] = [];
  posts.forEach((a, i) => {
    for (const b of posts.slice(i + 1)) {
      const neighbours = a.design.name === b.design.name || a.side === b.side;
      if (together(a, b) || !neighbours) continue;
      between.push({
        a: a.name,
        b: b.name,
        feet: distance(a.foot, b.foot),
        tops: distance(a.top, b.top),
        footToTop: distance(a.foot, b.top),
        topToFoot: distance(a.top, b.foot),
      });
    }
  });
  const at = (stem: string, side: string) =>
    posts.find((post) => post.design.name === stem && post.side === side);
  const pairs = [...new Set(posts.map(({ design }) => design.name))].flatMap((stem) => {
    const [left, right] = [at(stem, "left"), at(stem, "right")];
    return left && right ? [{ left, right }] : [];
  });
  const across = (a: Post, b: Post): Check => ({
    from: `foot of ${a.name}`,
    to: `foot of ${b.name}`,
    length: distance(a.foot, b.foot),
  });
  const plan = pairs.flatMap((one, i) =>
    pairs
      .slice(i + 1)
      .filter((other) => !together(one.left, other.right) || !together(one.right, other.left))
      .map((other) => ({ one: across(one.left, other.right), other: across(one.right, other.left) })),
  );
  return { between, plan };
}

/** All the diagonals of a glue-up, upright ones first. */
export const diagonalsOf = ({ between, plan }: FrameUp): Diagonals[] => [
  ...between.map(({ a, b, footToTop, topToFoot }) => ({
    one: { from: `foot of ${a}`, to: `top of ${b}`, length: footToTop },
    other: { from: `top of ${a}`, to: `foot of ${b}`, length: topToFoot },
  })),
  ...plan,
];

/** The lengths to be checked beside the diagonals. */
export const checksOf = ({ between }: FrameUp): Check[] =>
  between.flatMap(({ a, b, feet, tops }) => [
    { from: `foot of ${a}`, to: `foot of ${b}`, length: feet },
    { from: `top of ${a}`, to: `top of ${b}`, length: tops },
  ]);

function glueOf(chair: Chair, { closes }: GlueUp): FrameUp["glue"] {
  const found = new Map<string, number>();
  for (const name of closes) {
    const kind = chair.joints.get(name)?.facts.glue?.value;
    if (kind) found.set(kind, (found.get(kind) ?? 0) + 1);
  }
  return [...found].map(([kind, joints]) => ({ kind, joints }));
}

function cautionsOf(chair: Chair, glueUp: GlueUp): string[] {
  const joints = glueUp.closes.flatMap((name) => chair.joints.get(name) ?? []);
  const some = (does: (joint: Joint) => boolean): string[] => joints.filter(does).map(({ name }) => name);
  const cautions: string[] = [];
  const told = (names: string[], says: string) => {
    if (names.length === 0) return;
    const those = [...new Set(names.map(withoutSides))].join(", ");
    cautions.push(names.length === joints.length ? `${says}.` : `${says}: ${those}.`);
  };
  told(
    some((joint) => pegsOf(joint) !== undefined),
    "Drive the pegs when the shoulders are up",
  );
  told(
    some(({ facts }) => facts.through?.value.wedged === true),
    "Drive the wedges before the glue takes hold",
  );
  const sockets = joints.filter(({ entered }) => entered.kind === "seat");
  if (sockets.length > 1)
    cautions.push("Start every tenon in its socket, then drive them home by turns, each along its own line.");
  told(
    some(({ facts }) => (facts.fit?.value ?? 0) < 0),
    "A tight fit: try it dry first",
  );
  if (glueUp.closing.atOnce > 4)
    cautions.push(
      `${glueUp.closing.atOnce} pieces come together at once: have a second pair of hands, or a slow glue.`,
    );
  return cautions;
}
