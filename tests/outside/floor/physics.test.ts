/**
 * The mess chair let go at a tilt in a physics engine, cannon-es 0.20.0 (MIT): up to some angle it falls back on its feet, past it, it
 * goes over. Halved down to, that angle is the one that is worked out.
 */
import { Body, ContactMaterial, ConvexPolyhedron, Material, Plane, Quaternion, Vec3, World } from "cannon-es";
import { describe, expect, it } from "vitest";
import type { Chair } from "../../../server/chair/chair.ts";
import { movePoint } from "../../../server/geometry/motion.ts";
import { weigh } from "../../../server/timber/weight.ts";
import { studiedSample } from "../samples.ts";

const METRES = 1e-3;
const STEP = 1 / 480;

/** The posts' convex pieces about the centre of gravity, m; the engine keeps a body's mass at its origin. */
function bodyOf(chair: Chair): { body: Body; corners: Vec3[] } {
  const { mass, centre } = weigh(chair);
  const body = new Body({ mass });
  const corners: Vec3[] = [];
  for (const post of chair.posts.values()) {
    // The lowest and the highest stretch of each post are all that can meet the floor.
    for (const piece of [post.body.pieces[0]!, post.body.pieces.at(-1)!]) {
      const vertices = piece.points.map((point) => {
        const at = movePoint(chair.stance, point);
        return new Vec3(...at.map((each, axis) => (each - centre[axis]!) * METRES));
      });
      corners.push(...vertices);
      const middle = vertices
        .reduce((sum, vertex) => sum.vadd(vertex), new Vec3())
        .scale(1 / vertices.length);
      const shape = new ConvexPolyhedron({
        vertices: vertices.map((vertex) => vertex.vsub(middle)),
        faces: piece.faces.map((face) => [...face]),
      });
      body.addShape(shape, middle);
    }
  }
  return { body, corners };
}

/** Whether the chair goes over when it is let go, tilted by an angle about the x axis (positive: backwards). */
function goesOver(chair: Chair, angle: number): boolean {
  const world = new World({ gravity: new Vec3(0, 0, -9.80665) });
  const [wood, floorboards] = [new Material("wood"), new Material("floor")];
  world.addContactMaterial(
    new ContactMaterial(wood, floorboards, { friction: 0.9, restitution: 0, contactEquationStiffness: 1e8 }),
  );
  // The engine's planes look up along z as they come.
  world.addBody(new Body({ mass: 0, shape: new Plane(), material: floorboards }));
  const { body, corners } = bodyOf(chair);
  body.material = wood;
  body.quaternion = new Quaternion().setFromAxisAngle(new Vec3(1, 0, 0), -angle);
  const lowest = Math.min(...corners.map((corner) => body.quaternion.vmult(corner).z));
  body.position.set(0, 0, -lowest);
  body.allowSleep = false;
  world.addBody(body);
  const up = new Vec3(0, 0, 1);
  for (let time = 0; time < 6; time += STEP) {
    world.step(STEP);
    const tilt = Math.acos(Math.min(1, body.quaternion.vmult(up).dot(up)));
    if (tilt < Math.abs(angle) * 0.6) return false;
    if (tilt > Math.abs(angle) + 0.35) return true;
  }
  throw new Error(`still balancing at ${angle}`);
}

describe("the mess chair in a physics engine", () => {
  const { chair } = studiedSample("boathouse-mess-chair");
  it.each([
    ["tip.back", 1],
    ["tip.front", -1],
  ] as const)("%s, to half a degree", (value, way) => {
    let [low, high] = [0.1, 0.9];
    expect(goesOver(chair, way * low)).toBe(false);
    expect(goesOver(chair, way * high)).toBe(true);
    while (high - low > 0.002) {
      const middle = (low + high) / 2;
      if (goesOver(chair, way * middle)) high = middle;
      else low = middle;
    }
    const degrees = (((low + high) / 2) * 180) / Math.PI;
    expect(Math.abs(degrees - (chair.values.get(value)!.number * 180) / Math.PI)).toBeLessThan(0.5);
  });
});
