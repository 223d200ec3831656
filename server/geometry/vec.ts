import type { Vec3 } from "./solid.ts";

/** Arithmetic of points and directions. */
export const add = (a: Vec3, b: Vec3): Vec3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const sub = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const scale = (a: Vec3, k: number): Vec3 => [a[0] * k, a[1] * k, a[2] * k];
export const negate = (a: Vec3): Vec3 => [-a[0], -a[1], -a[2]];
export const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
export const norm = (a: Vec3): number => Math.sqrt(a[0] * a[0] + a[1] * a[1] + a[2] * a[2]);
export const distance = (a: Vec3, b: Vec3): number => norm(sub(a, b));

/** a + k·b. */
export const along = (a: Vec3, b: Vec3, k: number): Vec3 => [
  a[0] + k * b[0],
  a[1] + k * b[1],
  a[2] + k * b[2],
];

/** The point a share `t` of the way from a to b. */
export const between = (a: Vec3, b: Vec3, t: number): Vec3 => [
  a[0] + (b[0] - a[0]) * t,
  a[1] + (b[1] - a[1]) * t,
  a[2] + (b[2] - a[2]) * t,
];

/** Unit vector along a; the zero vector stays zero. */
export function unit(a: Vec3): Vec3 {
  const size = norm(a);
  return size > 0 ? [a[0] / size, a[1] / size, a[2] / size] : a;
}

/** What is left of a when its part along the unit vector `direction` is taken away; not unit. */
export const squareTo = (a: Vec3, direction: Vec3): Vec3 => along(a, direction, -dot(a, direction));

/** Angle between two directions, 0 to π; exact for small angles too. */
export function angleBetween(a: Vec3, b: Vec3): number {
  return Math.atan2(norm(cross(a, b)), dot(a, b));
}

/** `a` turned by `angle` about the unit vector `axis`, anticlockwise as seen with the axis pointing at the eye. */
export function turned(a: Vec3, axis: Vec3, angle: number): Vec3 {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const k = dot(axis, a) * (1 - c);
  const w = cross(axis, a);
  return [
    a[0] * c + w[0] * s + axis[0] * k,
    a[1] * c + w[1] * s + axis[1] * k,
    a[2] * c + w[2] * s + axis[2] * k,
  ];
}

/** Mirrored left to right (x ↦ −x). */
export const mirrored = (a: Vec3): Vec3 => [-a[0], a[1], a[2]];
