/**
 * Pieces to mark out: the laid-open faces folded back against the solids, and figures of a plain frame calculated by hand.
 */
import { describe, expect, it } from "vitest";
import type { Chair, Post, Rail } from "../../../server/chair/chair.ts";
import { workedValue } from "../../../server/chair/values/values.ts";
import { measureBody } from "../../../server/geometry/body.ts";
import type { Vec3 } from "../../../server/geometry/solid.ts";
import { distance } from "../../../server/geometry/vec.ts";
import type { LaidFace, Mark, Piece } from "../../../server/joinery/pieces/piece.ts";
import { piecesOf } from "../../../server/joinery/pieces/pieces.ts";
import { folded } from "../../../server/joinery/pieces/strip.ts";
import { studied } from "../../check.ts";
import { frame } from "../../plain-frame.ts";
import { sampleChair, sampleNames } from "../drawing/chairs.ts";

const partOf = (chair: Chair, name: string): Post | Rail =>
  (chair.posts.get(name) ?? chair.rails.get(name) ?? chair.slats.get(name))!;

const outlines: Mark["is"][] = ["arris", "end", "knee", "taper"];

/** A point in whole micrometres, to be looked up. */
const keys = ([x, y, z]: Vec3): string[] => {
  const near = (v: number) => [Math.floor(v * 1e3), Math.ceil(v * 1e3)];
  return near(x).flatMap((a) => near(y).flatMap((b) => near(z).map((c) => `${a},${b},${c}`)));
};

describe.each(sampleNames)("the pieces of %s", (name) => {
  const chair = sampleChair(name);
  const pieces = piecesOf(chair);

  it("are made each once, with every part of the chair", () => {
    const wooden = chair.seat && chair.seat.design.kind !== "woven" ? ["seat"] : [];
    const sticks = [...chair.posts.keys(), ...chair.rails.keys(), ...chair.slats.keys()];
    const all = [...sticks, ...chair.blocks.keys(), ...wooden];
    expect(pieces.flatMap(({ parts }) => parts.map((part) => part.name)).sort()).toEqual(all.sort());
  });

  it("have laid-open faces that fold back onto the solid, to a millionth of a millimetre", () => {
    for (const piece of pieces.filter(({ plan }) => !plan)) {
      const part = partOf(chair, piece.parts[0]!.name);
      // Faces are laid out before notches for crossing rails are cut.
      const { pieces: whole } = ("uncut" in part && part.uncut) || part.body;
      const corners = whole.flatMap((solid) => solid.points);
      const known = new Map<string, Vec3[]>();
      for (const p of corners) for (const key of keys(p)) known.set(key, [...(known.get(key) ?? []), p]);
      const atCorner = (p: Vec3) =>
        keys(p).some((key) => known.get(key)?.some((q) => distance(p, q) < 1e-6) ?? false);
      const turnedHosts =
        "ends" in part &&
        part.ends.some(({ entered }) => chair.posts.get(entered?.name ?? "")?.pieces[0]?.radii);
      for (const face of piece.faces) {
        for (const mark of face.marks.filter(({ is }) => outlines.includes(is))) {
          const points = folded(face, mark)!;
          // Where it runs on into turned stuff, a shoulder is cut at the tangent plane, not at a corner of the body.
          if (!turnedHosts)
            for (const p of points)
              expect(atCorner(p), `${piece.name} ${face.name} ${mark.is} ${p}`).toBe(true);
          const [a, b] = mark.spots as [Vec3, Vec3] | [[number, number], [number, number]];
          const onPage = Math.hypot(a![0] - b![0], a![1] - b![1]);
          expect(Math.abs(onPage - distance(points[0]!, points[1]!))).toBeLessThan(1e-6);
        }
      }
      if (piece.faces.length && !turnedHosts) {
        const found = new Set(
          piece.faces.flatMap((face) =>
            face.marks
              .filter(({ is }) => outlines.includes(is))
              .flatMap((mark) => folded(face, mark)!.flatMap(keys)),
          ),
        );
        for (const p of corners)
          expect(
            keys(p).some((key) => found.has(key)),
            `${piece.name}: ${p}`,
          ).toBe(true);
      }
    }
  });

  it("have arrises that two faces share, drawn on both at the same length", () => {
    for (const piece of pieces) {
      const arrises = piece.faces.map((face) => sum(face.marks.filter(({ is }) => is === "arris")));
      // Four arrises, each on two faces.
      if (arrises.length)
        expect(arrises.reduce((a, b) => a + b, 0) / 2).toBeGreaterThan(3.5 * piece.size.long * 0.7);
      for (const [k, face] of piece.faces.entries()) {
        const next = piece.faces[(k + 1) % 4]!;
        expect(Math.abs(sharedLength(face, next) - sharedLength(next, face))).toBeLessThan(1e-6);
      }
    }
  });

  it("have mortises as wide as their tenons, drawn on the face that they are chopped in", () => {
    for (const piece of pieces) {
      for (const mortise of piece.mortises) {
        if (mortise.is !== "mortise" || mortise.round !== undefined) continue;
        const face = piece.faces.find((each) => each.name === mortise.face)!;
        const mouth = face.marks.find(({ is, letter }) => is === "mortise" && letter === mortise.letter)!;
        expect(mouth.spots).toHaveLength(4);
        const side = (k: number) =>
          Math.hypot(...[0, 1].map((axis) => mouth.spots[k]![axis]! - mouth.spots[k + 1]![axis]!));
        const sides = [side(0), side(1)];
        const { thick, wide } = mortise.tenon;
        for (const [found, tenon] of [
          [Math.min(...sides), Math.min(thick, wide)],
          [Math.max(...sides), Math.max(thick, wide)],
        ] as const) {
          // The face of a stretch that turns and tapers lies some thousandths of a mm off the plane its joints are worked out on.
          expect(found, `${piece.name} ${mortise.letter}`).toBeGreaterThan(tenon - 1e-5);
          expect(found).toBeLessThan(tenon * 1.05);
        }
      }
    }
  });

  it("have plans that, as thick as they are, make up the solid", () => {
    for (const { plan, is, size, parts } of pieces) {
      if (!plan || (is === "seat" && chair.seat!.design.kind !== "board")) continue;
      const { ring } = plan;
      const area = ring.reduce((sum, [x, y], k) => {
        const [u, v] = ring[(k + 1) % ring.length]!;
        return sum + (x * v - u * y) / 2;
      }, 0);
      const body = is === "seat" ? chair.seat!.body : chair.blocks.get(parts[0]!.name)!.body;
      const solid = measureBody(body).volume / size.thick;
      // A seat is notched round posts that lean: by a little more below than above.
      expect(Math.abs(area / solid - 1)).toBeLessThan(is === "seat" ? 0.002 : 1e-9);
    }
  });

  it("have the bevels that hovers and worked-out values give", () => {
    let compared = 0;
    for (const piece of pieces) {
      for (const end of piece.ends) {
        const side = piece.faces.findIndex(({ gauge }) => gauge === "face side");
        if (side < 0) continue;
        for (const [face, value] of [
          ["outside", "face-bevel"],
          [piece.faces[0]!.name, "edge-bevel"],
        ] as const) {
          const worked = workedValue(chair, `${piece.parts[0]!.name}.${end.name}.${value}`);
          const bevel = end.bevels.find((each) => each.face === face);
          // Values measure from the straight; a sheet from the face that the tool stands on, which bows or tapers there.
          if (!worked || !bevel || piece.outline) continue;
          expect(bevel.angle, `${piece.name} ${end.name} ${value}`).toBeCloseTo(worked.number, 9);
          compared++;
        }
      }
      const foot = workedValue(chair, `${piece.parts[0]!.name}.foot-bevel`);
      if (foot && piece.faces.length) {
        // The foot's lean from square is the resultant of what its two bevels lean.
        const tangents = piece.ends[0]!.bevels.slice(0, 2).map(({ angle }) => Math.tan(Math.PI / 2 - angle));
        const lean = Math.atan(Math.hypot(...tangents));
        if (!piece.faces.some(({ shaped }) => shaped)) {
          expect(lean).toBeCloseTo(Math.PI / 2 - foot.number, 6);
          compared++;
        }
      }
    }
    if (name !== "ladder-back") expect(compared).toBeGreaterThan(6);
  });
});

const sum = (marks: readonly Mark[]): number =>
  marks.reduce((all, { spots: [a, b] }) => all + Math.hypot(a![0] - b![0], a![1] - b![1]), 0);

/** Length of the arrises of one face that the other has too. */
function sharedLength(one: LaidFace, other: LaidFace): number {
  const theirs = new Set(arrisesOf(other));
  return sum(
    one.marks
      .filter(({ is }) => is === "arris")
      .filter((mark) => ends(one, mark).some((key) => theirs.has(key))),
  );
}

const ends = (face: LaidFace, mark: Mark): string[] => {
  const [a, b] = folded(face, mark)!.map(keys) as [string[], string[]];
  return a.flatMap((p) => b.map((q) => [p, q].sort().join("|")));
};

const arrisesOf = (face: LaidFace): string[] =>
  face.marks.filter(({ is }) => is === "arris").flatMap((mark) => ends(face, mark));

const piecesFrom = (text: string): Map<string, Piece> =>
  new Map(piecesOf(studied(text).chair).map((piece) => [piece.name, piece]));

describe("a plain frame", () => {
  const rails = (...lines: string[]) =>
    ["seat-front", "seat-side pair", "seat-back"]
      .map((header, k) => {
        const course = ["across front", "from front to back", "across back"][k];
        return `rail ${header} {\n  ${course}\n  section 22 x 60\n  up 420\n  ${lines.join("\n  ")}\n  joined plain\n}\n`;
      })
      .join("");
  const pieces = piecesFrom(frame({ rails: rails("face inset 4") }));

  it("has its mortise where a rule and a gauge find it", () => {
    const front = pieces.get("front")!;
    // Rail 60 wide from 420 down, shoulders 10 and 6; 22 thick set 4 in, its tenon 8 in the middle.
    const mortise = front.mortises.find((each) => each.for === "seat-front")!;
    expect([mortise.from, mortise.to].flat().map(round)).toEqual([366, 366, 410, 410]);
    expect([mortise.near, mortise.far].flat().map(round)).toEqual([11, 11, 19, 19]);
    expect([mortise.face, mortise.gaugedFrom, mortise.datum]).toEqual(["inside", "front", "D1"]);
    expect(round(mortise.deep!)).toBe(26);
  });

  it("has posts in left and right, and rails without hand", () => {
    expect(pieces.get("front")!.parts).toEqual([
      { name: "front.left", mirrored: false },
      { name: "front.right", mirrored: true },
    ]);
    // Square all round, with their tenons out of the middle of their width: the same rail either way up does not exist, either way round does.
    expect(pieces.get("seat-side")!.parts).toEqual([
      { name: "seat-side.left", mirrored: false },
      { name: "seat-side.right", mirrored: false },
    ]);
  });

  it("has rails with square shoulders as long as the posts stand apart", () => {
    const front = pieces.get("seat-front")!;
    expect(front.between).toBeCloseTo(360, 9);
    expect(front.size.long).toBeCloseTo(412, 9);
    expect(
      front.ends.flatMap(({ bevels }) => bevels.map(({ angle }) => round((angle * 180) / Math.PI))),
    ).toEqual(Array(8).fill(90));
    expect(front.ends.map(({ cuts }) => cuts.map(({ at }) => round(at)))).toEqual([
      [0, 0, 0, 0],
      [360, 360, 360, 360],
    ]);
  });

  it("tells a side rail's hand when its shoulders are cut on the skew", () => {
    const tapered = piecesFrom(
      frame({
        back: "section 40 x 40\nfoot out 160, back 420\nheight 430",
        rails: rails("face inset 4"),
      }),
    );
    expect(tapered.get("seat-side")!.parts).toEqual([
      { name: "seat-side.left", mirrored: false },
      { name: "seat-side.right", mirrored: true },
    ]);
    // The outside faces run in 40 over 360 between the posts: the edge bevel is that slope.
    const [front] = tapered.get("seat-side")!.ends;
    const edge = front!.bevels.find(({ face }) => face === "top")!;
    expect(Math.abs(Math.PI / 2 - edge.angle)).toBeCloseTo(Math.atan(40 / 360), 9);
  });
});

describe("a leaning post", () => {
  // Splay 1 in 10 seen from the front alone.
  const pieces = piecesFrom(
    frame({
      front: "section 40 x 40\ntop out 160, back 20\nheight 430\nsplay 1:10",
      back: "section 40 x 40\ntop out 160, back 420\nheight 430\nsplay 1:10",
    }),
  );
  const front = pieces.get("front")!;

  it("has a foot cut of 1 in 10 on its front and back, square on its sides", () => {
    const [foot] = front.ends;
    const lean = foot!.bevels.map(({ angle }) => Math.abs(Math.tan(Math.PI / 2 - angle)));
    expect(lean.map((each) => Math.round(each * 1e9) / 1e9)).toEqual([0.1, 0, 0.1, 0]);
    // Half of 40 at 1 in 10 above and below the middle.
    expect(foot!.cuts.map(({ at }) => round(Math.abs(at)))).toEqual([2, 2, 2, 2]);
  });

  it("has its heights along the stick, longer than plumb by the lean", () => {
    const mortise = front.mortises.find((each) => each.for === "seat-front")!;
    const longer = Math.hypot(1, 0.1);
    // Between plumb cheeks on a leaning face: 44 plumb is 44 × 1.005 along it.
    expect(round(mortise.to[0] - mortise.from[0])).toBe(round(44 * longer));
  });
});

const round = (mm: number): number => Math.round(mm * 1e4) / 1e4 + 0;

describe("a turned rail's outline", () => {
  const stationsOf = (lines: string) => {
    const text = frame().replace(
      /rail seat-front \{/,
      `rail rung {\n  across front\n  round 20\n  up 150\n${lines}\n}\n$&`,
    );
    const { chair } = studied(text);
    const rung = chair.rails.get("rung")!;
    const piece = piecesOf(chair).find(({ parts }) => parts.some((part) => part.name === "rung"))!;
    return { long: rung.length, stations: piece.turned!.stations };
  };

  it("has every station that the text gives", () => {
    const { long, stations } = stationsOf(
      "  shape at 30 round 20\n  shape at 110 round 28\n  shape at 190 round 28\n  shape at 260 round 20",
    );
    expect(stations).toEqual([
      { at: 0, diameter: 20 },
      { at: 30, diameter: 20 },
      { at: 110, diameter: 28 },
      { at: 190, diameter: 28 },
      { at: 260, diameter: 20 },
      { at: long, diameter: 20 },
    ]);
  });

  it("has its stoutest place where it tapers to its ends, and no more than its ends where it is plain", () => {
    const tapered = stationsOf("  taper 14 to ends");
    expect(tapered.stations).toEqual([
      { at: 0, diameter: 14 },
      { at: tapered.long / 2, diameter: 20 },
      { at: tapered.long, diameter: 14 },
    ]);
    expect(stationsOf("").stations.map(({ diameter }) => diameter)).toEqual([20, 20]);
  });
});
