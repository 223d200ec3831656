/** Arithmetic of the tests' own, so that nothing is measured with the rule that made it. */
export type V = [number, number, number];

export const plus = (a: V, b: V, k = 1): V => [a[0] + k * b[0], a[1] + k * b[1], a[2] + k * b[2]];
export const minus = (a: V, b: V): V => plus(a, b, -1);
export const times = (a: V, k: number): V => [a[0] * k, a[1] * k, a[2] * k];
export const inner = (a: V, b: V): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const outer = (a: V, b: V): V => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
export const size = (a: V): number => Math.hypot(...a);
export const direction = (a: V): V => times(a, 1 / size(a));
/** What is left of a when its part along a unit vector is taken away. */
export const across = (a: V, unit: V): V => plus(a, unit, -inner(a, unit));
export const angle = (a: V, b: V): number =>
  Math.acos(Math.max(-1, Math.min(1, inner(direction(a), direction(b)))));

/** Looks out of the wood. */
export interface Face {
  at: V;
  out: V;
}

export const above = (face: Face, p: V): number => inner(minus(p, face.at), face.out);
