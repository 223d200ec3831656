import type { Chair, Post, PostPiece } from "../../chair/chair.ts";
import { workedValue } from "../../chair/values/values.ts";
import type { LengthUnit } from "../../design/design.ts";
import { printAngle, printBevel, printLength, printSlope } from "../../design/units.ts";
import type { Motion, Vec3 } from "../../geometry/solid.ts";
import { pieceOf } from "../../joinery/pieces/pieces.ts";
import { jointsAt } from "../names/chair-parts.ts";
import { type Lean, leanOf } from "./lean.ts";
import { code, type Naming } from "./markdown.ts";

/** What a post is longer by than its line is a tenon from here on, mm. */
const LEAST_TENON = 0.05;

/** Leans smaller than this, rad, print as none. */
const LEAST_LEAN = 5e-4;

/** What is worth knowing of a post: its lines and lean, as drawn and as it stands, its length and its foot's cut. */
export function aboutPost(chair: Chair, post: Post, unit: LengthUnit, named: Naming = code): string[] {
  const length = (mm: number) => printLength(mm, unit);
  const joints = jointsAt(chair, post.name);
  const own = joints.some((joint) => joint.part === post.name);
  const cut = own ? pieceOf(chair, post)?.size.long : undefined;
  const withTenon =
    cut !== undefined && cut - post.length > LEAST_TENON ? `; ${length(cut)} cut, with its own tenon` : "";
  const lines = [`Length ${length(post.length)} along its line, foot to top${withTenon}`];
  const [foot, top] = [post.foot, post.top];
  lines.push(`Foot ${place(foot, length)}; top ${place(top, length)}, ${length(top[2])} up`);
  const stretches = straights(post.pieces);
  for (const stretch of stretches) {
    const where =
      stretches.length > 1 ? `From ${length(stretch.from)} to ${length(stretch.to)}: ` : "As drawn: ";
    const drawn = leanOf(stretch.direction, post.side);
    const standing = leanOf(turned(chair.stance, stretch.direction), post.side);
    lines.push(
      `${where}${leans(drawn)}${differ(standing, drawn) ? `; as it stands ${leans(standing)}` : ""}`,
    );
  }
  const bevel = workedValue(chair, `${post.name}.foot-bevel`);
  if (bevel) lines.push(`Foot cut ${printBevel(bevel.number)}`);
  const hanging = chair.hanging.get(post.name);
  if (hanging) lines.push(`Hangs ${length(Math.abs(hanging))} ${hanging > 0 ? "above" : "below"} the floor`);
  const entering = [
    ...new Set(joints.map((joint) => (joint.part === post.name ? joint.entered.name : joint.part))),
  ];
  if (entering.length) lines.push(`Joined to ${entering.map(named).join(", ")}`);
  return lines;
}

/** How a stretch leans, in one phrase. */
function leans({ rake, splay, resultant, sightline }: Lean): string {
  const parts: string[] = [];
  if (Math.abs(rake) > LEAST_LEAN)
    parts.push(`rake ${signed(rake)} ${rake > 0 ? "back" : "forward"} from plumb (${printSlope(rake)})`);
  if (Math.abs(splay) > LEAST_LEAN)
    parts.push(
      `splay ${signed(splay)} ${splay > 0 ? "out" : "in"} at the foot from plumb (${printSlope(splay)})`,
    );
  if (parts.length === 2)
    parts.push(
      `resultant ${printAngle(resultant)} on a sightline ${printAngle(sightline)} from fore-and-aft`,
    );
  return parts.length ? parts.join(", ") : "plumb";
}

const signed = (angle: number) => printAngle(Math.abs(angle));

interface Stretch {
  from: number;
  to: number;
  direction: Vec3;
}

/** The straight stretches of a post, neighbours in one line joined; curves between them left out. */
function straights(pieces: readonly PostPiece[]): Stretch[] {
  const stretches: Stretch[] = [];
  for (const { curved, from, to, direction } of pieces) {
    if (curved) continue;
    const last = stretches.at(-1);
    if (last && last.to === from && inLine(last.direction, direction)) last.to = to;
    else stretches.push({ from, to, direction });
  }
  return stretches;
}

function inLine(a: Vec3, b: Vec3): boolean {
  return Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]) < 1e-9;
}

function differ(a: Lean, b: Lean): boolean {
  return Math.abs(a.rake - b.rake) > LEAST_LEAN || Math.abs(a.splay - b.splay) > LEAST_LEAN;
}

function turned({ rotation }: Motion, d: Vec3): Vec3 {
  const [a, b, c] = rotation.map((row) => row[0] * d[0] + row[1] * d[1] + row[2] * d[2]);
  return [a as number, b as number, c as number];
}

function place([x, y]: Vec3, length: (mm: number) => string): string {
  return `${length(Math.abs(x))} out, ${length(y)} back`;
}
