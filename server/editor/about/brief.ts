/**
 * A part in three short lines, for beside it on the drawing: its name, its section, and where it stands or how it leans.
 */
import type { Chair, Post, Rail } from "../../chair/chair.ts";
import type { LengthUnit } from "../../design/design.ts";
import { printAngle, printBareLength, printLength } from "../../design/units.ts";
import { moveDirection, movePoint } from "../../geometry/motion.ts";
import type { Body } from "../../geometry/solid.ts";
import { pieceOf } from "../../joinery/pieces/pieces.ts";
import { leanOf } from "./lean.ts";

/** Angles smaller than this are none, rad: they print as 0.0°. */
const LEAST = 9e-4;

/** A post: its section at its thickest, and how its longest straight leans as it stands. */
export function briefPost(chair: Chair, post: Post, unit: LengthUnit): string[] {
  const size = pieceOf(chair, post)?.size;
  const straight = post.pieces
    .filter(({ curved }) => !curved)
    .sort((a, b) => b.to - b.from - (a.to - a.from))[0];
  const lean = straight && leanOf(moveDirection(chair.stance, straight.direction), post.side);
  const leans = lean
    ? [
        Math.abs(lean.rake) > LEAST
          ? `rake ${printAngle(Math.abs(lean.rake))}${lean.rake > 0 ? " back" : " forward"}`
          : "",
        Math.abs(lean.splay) > LEAST
          ? `splay ${printAngle(Math.abs(lean.splay))}${lean.splay > 0 ? " out" : " in"}`
          : "",
      ].filter(Boolean)
    : [];
  return [post.id.stem, ...(size ? [section(size, unit)] : []), ...(leans.length ? [leans.join(", ")] : [])];
}

/** A rail or slat: its section, how high its upper edge is as it stands, and its bevels where they are not square. */
export function briefRail(chair: Chair, rail: Rail, unit: LengthUnit): string[] {
  const bevels = rail.round
    ? []
    : [
        ...new Set(
          rail.ends.flatMap(({ entered, faceBevel, edgeBevel }) => (entered ? [faceBevel, edgeBevel] : [])),
        ),
      ]
        .filter((bevel) => Math.abs(bevel - Math.PI / 2) > LEAST)
        .map(printAngle);
  return [
    rail.id.stem,
    section(rail, unit),
    `top ${printLength(highest(chair, rail.body), unit)} up`,
    ...(bevels.length ? [`bevel ${[...new Set(bevels)].slice(0, 2).join(", ")}`] : []),
  ];
}

function section(
  { thick, wide, round }: { thick: number; wide: number; round?: number | undefined },
  unit: LengthUnit,
): string {
  return round
    ? `⌀ ${printLength(round, unit)}`
    : `${printBareLength(thick, unit)} × ${printLength(wide, unit)}`;
}

function highest({ stance }: Chair, { pieces }: Body): number {
  return Math.max(...pieces.flatMap(({ points }) => points.map((point) => movePoint(stance, point)[2])));
}
