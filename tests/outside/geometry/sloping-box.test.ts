import { describe, expect, it } from "vitest";
import { buildMembers } from "../../../server/chair/members.ts";
import { planeAt, twoPlanes } from "../../../server/geometry/plane.ts";
import type { Vec3 } from "../../../server/geometry/solid.ts";
import { angleBetween, cross } from "../../../server/geometry/vec.ts";
import { across, DEG, design, fromTo, post, rail } from "../../server/chair/fixtures.ts";

/**
 * Settings for sloping-sided boxes, mitre off square and blade tilt: rows of charts sold with table saws, from memory, no title noted. Both
 * columns follow from tan M = cos(pitch) · tan(180°/n) and sin B = sin(pitch) · sin(180°/n), worked by hand.
 */
const CHART = [
  { sides: 4, pitch: 60, mitre: 26.57, tilt: 37.76 },
  { sides: 4, pitch: 45, mitre: 35.26, tilt: 30.0 },
  { sides: 6, pitch: 45, mitre: 22.21, tilt: 20.7 },
  { sides: 8, pitch: 30, mitre: 19.73, tilt: 11.03 },
];

describe("a sloping box", () => {
  it.each(CHART)(
    "of $sides sides pitched $pitch° is cut $mitre° / $tilt°",
    ({ sides, pitch, mitre, tilt }) => {
      const normal = (k: number): Vec3 => {
        const bearing = (2 * Math.PI * k) / sides;
        return [
          Math.sin(pitch * DEG) * Math.cos(bearing),
          Math.sin(pitch * DEG) * Math.sin(bearing),
          Math.cos(pitch * DEG),
        ];
      };
      const [a, b] = [normal(0), normal(1)];
      const corner = twoPlanes(planeAt(a, a), planeAt(b, b))!.direction;
      const edge = cross([0, 0, 1], a);
      const off = Math.abs(Math.PI / 2 - angleBetween(corner, edge));
      expect(off / DEG).toBeCloseTo(mitre, 2);
      expect(angleBetween(a, b) / 2 / DEG).toBeCloseTo(tilt, 2);
    },
  );

  it.each(CHART.filter((row) => row.sides === 4))(
    "of four rails between splayed posts, pitched $pitch°, has those bevels",
    ({ pitch, mitre, tilt }) => {
      // Each side leans 90° less its pitch, so a corner post leans that much seen from the front and from the side.
      const lean = (90 - pitch) * DEG;
      const corner = (name: string, back: number, rake: number) =>
        post(name, {
          section: [60, 60],
          place: { station: 300, out: 200, back },
          height: 400,
          splay: lean,
          rake,
        });
      const chair = buildMembers(
        design(
          corner("front", 100, lean),
          corner("back", 500, -lean),
          rail("front-side", { course: across("front"), section: [18, 60], up: 330, stand: "with posts" }),
          rail("back-side", { course: across("back"), section: [18, 60], up: 330, stand: "with posts" }),
          rail("side", {
            pair: true,
            course: fromTo("front", "back"),
            section: [18, 60],
            up: 330,
            stand: "with posts",
          }),
        ),
      );
      const rails = [...chair.rails.values()];
      expect(rails).toHaveLength(4);
      // Across the front and back the posts' faces hold the level line, so the shoulder line is the corner line of the box.
      for (const name of ["front-side", "back-side"]) {
        for (const end of chair.rails.get(name)!.ends) {
          expect(Math.abs(90 - end.faceBevel / DEG)).toBeCloseTo(mitre, 2);
        }
      }
      const [front, back] = [chair.rails.get("front-side")!, chair.rails.get("back-side")!];
      for (const side of ["left", "right"]) {
        const beside = chair.rails.get(`side.${side}`)!;
        for (const other of [front, back]) {
          expect(angleBetween(other.outward, beside.outward) / 2 / DEG).toBeCloseTo(tilt, 2);
        }
      }
    },
  );
});
