import type { Chair, PostPiece, Rail } from "../../chair/chair.ts";
import { height } from "../../geometry/plane.ts";
import type { Vec3 } from "../../geometry/solid.ts";
import { dot, sub } from "../../geometry/vec.ts";
import type { CutEnd } from "./piece.ts";

/** Less than this is cut square to a line, mm. */
const LEAST = 0.05;

/** How far the wood of a rail or slat runs on past its shoulder line into the hollow that fits it to turned work, and what it fits over. */
export function hollowed(chair: Chair, rail: Rail, which: 0 | 1): Pick<CutEnd, "hollowed"> {
  const { shoulder, entered, corners } = rail.ends[which];
  const host =
    entered &&
    (chair.posts.get(entered.name) ?? chair.rails.get(entered.name) ?? chair.bows.get(entered.name));
  if (!shoulder || !host) return {};
  const near = corners[0]!;
  const over = host.is === "post" ? diameterNear(host.pieces, near) : host.round;
  const past = Math.max(...rail.body.pieces.flatMap(({ points }) => points.map((p) => -height(shoulder, p))));
  return over !== undefined && past > LEAST ? { hollowed: { past, over } } : {};
}

function diameterNear(pieces: readonly PostPiece[], at: Vec3): number | undefined {
  const piece = pieces.find(
    ({ start, end, direction }) => dot(sub(at, start), direction) >= 0 && dot(sub(at, end), direction) <= 0,
  );
  const radii = (piece ?? pieces[0])?.radii;
  return radii && radii[0] + radii[1];
}
