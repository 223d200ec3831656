/**
 * Bows against the geometry that the language gives them, worked out here from the text's figures alone: places on the two curves, lengths
 * by summing many small chords, bends by the circle through three places near each other; solids against manifold-3d.
 */
import { afterAll, describe, expect, it } from "vitest";
import type { Bow } from "../../../server/chair/chair.ts";
import { measureBody } from "../../../server/geometry/body.ts";
import { cross, dot, unit } from "../../../server/geometry/vec.ts";
import { studied } from "../../check.ts";
import { sampleText } from "../samples.ts";
import { hull, type Solid, sweepSolids, together } from "../solids/manifold.ts";

const seat = `seat solid {
  up 430
  fall 12
  thick 44
  deep 400
  wide 410 at 12
  wide 440 at 150
  wide 392 at 290
  wide 300 at 352
  corner 25
}
`;

type Place = readonly [number, number];

/** The half of a bow from its end to its crown, as many places: an arc that is upright at `station`, and a quarter of an ellipse. */
function halfOf(out: number, half: number, station: number, rise: number, count: number): Place[] {
  const places: Place[] = [];
  if (station > 0) {
    if (out === half) for (let k = 0; k < count; k++) places.push([out, (station * k) / count]);
    else {
      // The middle of the circle lies level with the widest place, as far from that as from the end.
      let [low, high] = out > half ? [half, 1e6] : [-1e6, half];
      const gap = (c: number) => Math.hypot(out - c, station) - Math.abs(half - c);
      for (let k = 0; k < 200; k++) {
        const c = (low + high) / 2;
        if (gap(c) > 0 === out > half) low = c;
        else high = c;
      }
      const centre = (low + high) / 2;
      const radius = Math.abs(half - centre);
      const side = Math.sign(half - centre);
      const from = Math.atan2(station, side * (out - centre));
      for (let k = 0; k < count; k++) {
        const angle = from * (1 - k / count);
        places.push([centre + side * radius * Math.cos(angle), station - radius * Math.sin(angle)]);
      }
    }
  }
  for (let k = 0; k <= count; k++) {
    const t = (Math.PI / 2) * (k / count);
    places.push([half * Math.cos(t), station + (rise - station) * Math.sin(t)]);
  }
  return places;
}

const lengthOf = (places: readonly Place[]): number =>
  places.slice(1).reduce((sum, [x, y], k) => sum + Math.hypot(x - places[k]![0], y - places[k]![1]), 0);

function bowOf(lines: string): Bow {
  const { chair, problems } = studied(`${seat}bow hoop {\n${lines}}\n`);
  expect(problems.filter(({ severity }) => severity === "error")).toEqual([]);
  return chair!.bows.get("hoop")!;
}

describe("the line of a bow", () => {
  it.each([
    [150, 230, 180, 470],
    [200, 200, 150, 420],
    [230, 200, 160, 430],
    [120, 260, 120, 500],
  ])("with feet %d out, half as wide as %d at %d, rising %d", (out, half, station, rise) => {
    const bow = bowOf(
      `  hands out ${out}, back 150\n  lie up 650\n  wide ${2 * half} at ${station}\n  rise ${rise}\n  round 22\n`,
    );
    const places = halfOf(out, half, station, rise, 20000);
    expect(bow.path.length).toBeCloseTo(2 * lengthOf(places), 2);
    let gone = 0;
    for (let k = 1; k < places.length; k++) {
      const before = gone;
      gone += Math.hypot(places[k]![0] - places[k - 1]![0], places[k]![1] - places[k - 1]![1]);
      if (Math.floor(gone / 40) === Math.floor(before / 40)) continue;
      const { u, v } = bow.path.at(gone);
      expect(Math.hypot(u - places[k]![0], v - places[k]![1])).toBeLessThan(0.01);
    }
  });

  it("without its widest place is half an ellipse from its feet", () => {
    const bow = bowOf("  feet in seat at out 150, back 330\n  rise 470\n  round 22\n");
    expect(bow.path.length).toBeCloseTo(2 * lengthOf(halfOf(150, 150, 0, 470, 20000)), 2);
  });

  it("bends at its tightest as the circle through three near places does, less half its thickness", () => {
    const text = `${seat}bow hoop {\n  feet in seat at out 150, back 330\n  wide 460 at 180\n  rise 470\n  section 20 x 30\n}\n`;
    const places = halfOf(150, 230, 180, 470, 4000);
    let least = Number.POSITIVE_INFINITY;
    for (let k = 1; k + 1 < places.length; k++) {
      const [a, b, c] = [places[k - 1]!, places[k]!, places[k + 1]!];
      const area = Math.abs((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])) / 2;
      const sides = [lengthOf([a, b]), lengthOf([b, c]), lengthOf([a, c])];
      if (area > 1e-9 && Math.abs(sides[0]! - sides[1]!) < 0.01)
        least = Math.min(least, (sides[0]! * sides[1]! * sides[2]!) / (4 * area));
    }
    const { chair } = studied(text);
    expect(Math.abs(chair!.values.get("hoop.radius")!.number - (least - 10))).toBeLessThan(0.1);
  });
});

describe("a bow's solid", () => {
  afterAll(sweepSolids);

  it.each(["arm-bow", "hoop"])(
    "%s of the armchair is closed, as heavy as its section along its line, and the same on both sides",
    (name) => {
      const { chair } = studied(sampleText("bow-armchair"));
      const bow = chair!.bows.get(name)!;
      const solids = bow.body.pieces.map(({ points }): Solid => hull(points.map((p) => [...p])));
      const sum = solids.reduce((total, solid) => total + solid.volume(), 0);
      expect(together(solids).volume() / sum).toBeCloseTo(1, 4);
      const sectionAt = (s: number) => {
        const { thick, wide } = bow.sizeAt(s);
        return bow.round === undefined ? thick * wide : (Math.PI * thick * thick) / 4;
      };
      // It may grow thinner towards its ends.
      const places = Array.from({ length: 1000 }, (_, k) => ((k + 0.5) / 1000) * bow.path.length);
      const section = places.reduce((total, s) => total + sectionAt(s), 0) / places.length;
      const { volume, centroid } = measureBody(bow.body);
      // Its feet are cut to the seat, a little more on one side than on the other; its line is drawn in chords.
      expect(volume / (section * bow.path.length)).toBeGreaterThan(0.995);
      expect(volume / (section * bow.path.length)).toBeLessThan(1.002);
      // mm: a round section is drawn in facets, which meet the seat a little differently left and right.
      expect(Math.abs(centroid[0])).toBeLessThan(1e-3);
    },
  );

  it("of a stick that goes through an arm bow aslant the least wood is what points of its bore leave to the bow's sides", () => {
    // Where the heads stand wider apart than the bores, and the bow is higher, the outer bores break out.
    const wide = sampleText("bow-armchair").replace("  heads spread 180", "  heads spread 200");
    const walls = [sampleText("bow-armchair"), wide].map((text) => {
      const { chair, problems } = studied(text);
      const bow = chair!.bows.get("arm-bow")!;
      const found = [...chair!.joints.values()].flatMap((joint) => {
        if (joint.kind !== "passing") return [];
        const stick = chair!.sticks.get(joint.part)!;
        const { s } = stick.passes!;
        const [middle, run, up] = [bow.spot(s), bow.way(s), bow.normal];
        const out = cross(run, up);
        const { thick, wide } = bow.sizeAt(s);
        const [u, v] = [
          unit(cross(joint.direction, up)),
          unit(cross(joint.direction, cross(joint.direction, up))),
        ];
        let least = Number.POSITIVE_INFINITY;
        for (let far = -60; far <= 60; far += 0.1)
          for (let k = 0; k < 45; k++) {
            const turn = (2 * Math.PI * k) / 45;
            const p = [0, 1, 2].map(
              (i) =>
                stick.passes!.at[i]! +
                joint.direction[i]! * far +
                (joint.thick / 2) * (u[i]! * Math.cos(turn) + v[i]! * Math.sin(turn)) -
                middle[i]!,
            ) as [number, number, number];
            if (Math.abs(dot(p, up)) <= wide / 2) least = Math.min(least, thick / 2 - Math.abs(dot(p, out)));
          }
        expect(Math.abs(joint.mortiseWall - least), stick.name).toBeLessThan(0.06);
        return [joint.mortiseWall];
      });
      expect(found).toHaveLength(5);
      expect(problems.some(({ code }) => code === "mortise-breaks-out")).toBe(found.some((wall) => wall < 0));
      return Math.min(...found);
    });
    expect(walls[0]).toBeGreaterThan(0);
    expect(walls[1]).toBeLessThan(0);
  });
});
