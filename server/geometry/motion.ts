import type { Body, Convex, Motion, Plane, Vec3 } from "./solid.ts";
import { add, dot, negate, sub, turned } from "./vec.ts";

export const STILL: Motion = {
  rotation: [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  shift: [0, 0, 0],
};

/** Turns by `angle` about the line through `point` along the unit vector `axis` (right-hand rule). */
export function rotationAbout(point: Vec3, axis: Vec3, angle: number): Motion {
  const x = turned([1, 0, 0], axis, angle);
  const y = turned([0, 1, 0], axis, angle);
  const z = turned([0, 0, 1], axis, angle);
  const rotation: Motion["rotation"] = [
    [x[0], y[0], z[0]],
    [x[1], y[1], z[1]],
    [x[2], y[2], z[2]],
  ];
  return { rotation, shift: sub(point, rotate(rotation, point)) };
}

/** The motion that only shifts. */
export const shiftBy = (shift: Vec3): Motion => ({ rotation: STILL.rotation, shift });

const rotate = (rows: Motion["rotation"], v: Vec3): Vec3 => [
  dot(rows[0], v),
  dot(rows[1], v),
  dot(rows[2], v),
];

export const movePoint = (motion: Motion, p: Vec3): Vec3 => add(rotate(motion.rotation, p), motion.shift);

export const moveDirection = (motion: Motion, d: Vec3): Vec3 => rotate(motion.rotation, d);

export function movePlane(motion: Motion, plane: Plane): Plane {
  const normal = rotate(motion.rotation, plane.normal);
  return { normal, offset: plane.offset + dot(normal, motion.shift) };
}

/** First `first`, then `second`. */
export function compose(second: Motion, first: Motion): Motion {
  const columns = [0, 1, 2].map((i) => first.rotation.map((row) => row[i]) as unknown as Vec3);
  const rotation = second.rotation.map((row) =>
    columns.map((c) => dot(row, c)),
  ) as unknown as Motion["rotation"];
  return { rotation, shift: movePoint(second, first.shift) };
}

export function inverse(motion: Motion): Motion {
  const rotation = [0, 1, 2].map((i) =>
    motion.rotation.map((row) => row[i]),
  ) as unknown as Motion["rotation"];
  return { rotation, shift: negate(rotate(rotation, motion.shift)) };
}

export function moveConvex(motion: Motion, solid: Convex): Convex {
  return {
    planes: solid.planes.map((plane) => movePlane(motion, plane)),
    points: solid.points.map((p) => movePoint(motion, p)),
    faces: solid.faces,
  };
}

export function moveBody(motion: Motion, body: Body): Body {
  return {
    pieces: body.pieces.map((piece) => moveConvex(motion, piece)),
    edges: body.edges.map((edge) => ({
      a: movePoint(motion, edge.a),
      b: movePoint(motion, edge.b),
      is: edge.is,
      normals: [moveDirection(motion, edge.normals[0]), moveDirection(motion, edge.normals[1])],
    })),
  };
}
