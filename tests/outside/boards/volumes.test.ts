/**
 * Volumes of blanks and of plans against solids that manifold-3d 3.5.4 (Apache-2.0) makes of them.
 */
import { afterEach, describe, expect, test } from "vitest";
import { type FinishedPart, finishedParts } from "../../../server/boards/parts.ts";
import { type Plan, stockList, wholePlan } from "../../../server/boards/plan.ts";
import type { Member } from "../../../server/chair/chair.ts";
import type { Convex } from "../../../server/geometry/solid.ts";
import { sampleNames, studiedSample } from "../samples.ts";
import { hull, lessThan, raised, type Solid, shared, sweepSolids, together } from "../solids/manifold.ts";
import type { V } from "../solids/vectors.ts";
import { randomJob } from "./random-jobs.ts";

afterEach(sweepSolids);

type Box = { x: number; y: number; long: number; wide: number };

const ring = ({ x, y, long, wide }: Box): [number, number][] => [
  [x, y],
  [x + long, y],
  [x + long, y + wide],
  [x, y + wide],
];

/** Each board of a plan: what is left of it when its offcuts are taken away, and its pieces as solids. */
const solidsOf = ({ boards }: Plan) =>
  boards.map(({ name, board, pieces, offcuts }) => {
    const whole = raised(ring({ x: 0, y: 0, long: board.long, wide: board.wide }), 0, board.thick);
    const left = offcuts.map((box) => raised(ring(box), 0, board.thick));
    return {
      name,
      sawn: left.length > 0 ? lessThan(whole, together(left)) : whole,
      pieces: pieces.map((piece) => raised(piece.outline ?? ring(piece), piece.z, piece.z + piece.thick)),
    };
  });

const sum = (solids: readonly Solid[]) => solids.reduce((total, solid) => total + solid.volume(), 0);

/** Wood as good as nothing, mm³. */
const NOTHING = 20;

describe("a plan", () => {
  test("uses what is left of its boards without the offcuts; its pieces lie apart in that", () => {
    for (let seed = 401; seed <= 408; seed++) {
      const { stock, matches } = randomJob(seed);
      const plan = wholePlan(stock, matches, 1);
      const boards = solidsOf(plan);
      expect([seed, Math.abs(plan.used - sum(boards.map(({ sawn }) => sawn))) < NOTHING]).toEqual([
        seed,
        true,
      ]);
      for (const { name, sawn, pieces } of boards) {
        if (pieces.length === 0) continue;
        const all = together(pieces);
        expect([seed, name, Math.abs(all.volume() - sum(pieces)) < NOTHING]).toEqual([seed, name, true]);
        expect([seed, name, lessThan(all, sawn).volume() < NOTHING]).toEqual([seed, name, true]);
      }
      sweepSolids();
    }
  });
});

/** What is sawn as one piece: a strip of a rail, or the rail without its strips and before what is cut along it. */
function bodyOf(member: Member, { name, fixedTo }: FinishedPart): readonly Convex[] {
  if (member.is !== "rail") return member.body.pieces;
  if (fixedTo === undefined) return (member.uncut ?? member.body).pieces;
  const which = Number(/^strip (\d+) /.exec(name)?.[1] ?? 1);
  return member.strips![which - 1]!.pieces;
}

describe.each(sampleNames)("the parts of %s", (sample) => {
  test("fit the volume of their finished sizes, and their blanks hold more", () => {
    const { chair } = studiedSample(sample);
    const stock = stockList(chair);
    for (const part of finishedParts(chair)) {
      const member = chair.members.get(part.fixedTo ?? part.name)!;
      const own = [...chair.joints.values()].filter(
        (joint) => joint.part === part.name && !joint.facts.dowels,
      );
      const solid = together(
        [...bodyOf(member, part), ...own.flatMap(({ tenon }) => tenon)].map(({ points }) =>
          hull(points as V[]),
        ),
      );
      const { thick, wide, long } = part.finished;
      const box = thick * wide * long;
      expect([part.name, solid.volume() <= box * (1 + 1e-6)]).toEqual([part.name, true]);
      // Of straight squared stuff most of the box is wood: what is less is tenons, tapers, arches.
      if (part.is === "straight") expect([part.name, solid.volume() > 0.5 * box]).toEqual([part.name, true]);
      if (part.outline) {
        const { low, high } = part.outline;
        const sawn = raised([...low, ...[...high].reverse()], 0, thick);
        expect([part.name, sawn.volume() >= solid.volume() * (1 - 1e-6)]).toEqual([part.name, true]);
        expect(shared(sawn, raised(ring({ x: 0, y: 0, long, wide }), 0, thick)).volume()).toBeCloseTo(
          sawn.volume(),
          0,
        );
      }
      const line = stock.lines.find(({ members }) => members.includes(part.name))!;
      if (line.is !== "seat")
        expect([part.name, line.blank.thick * line.blank.wide * line.blank.long >= box]).toEqual([
          part.name,
          true,
        ]);
      sweepSolids();
    }
  });
});
