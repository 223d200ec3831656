import { expect, test } from "vitest";
import { notched, type Spot } from "../../../server/chair/seat/notch.ts";

const square: Spot[] = [
  [0, 0],
  [100, 0],
  [100, 100],
  [0, 100],
];
const box = (x: number, y: number, w: number, h: number): Spot[] => [
  [x, y],
  [x + w, y],
  [x + w, y + h],
  [x, y + h],
];
const area = (ring: readonly Spot[]): number =>
  ring.reduce((sum, [x, y], k) => {
    const [u, v] = ring[(k + 1) % ring.length]!;
    return sum + (x * v - u * y) / 2;
  }, 0);

test("a corner is cut out", () => {
  for (const bite of [
    box(-10, -10, 30, 40),
    box(80, -5, 40, 35),
    box(70, 90, 50, 50),
    box(-20, 60, 50, 60),
  ]) {
    const left = notched(square, bite);
    const [[x, y], [u, v]] = [bite[0]!, bite[2]!];
    const overlap = (Math.min(100, u) - Math.max(0, x)) * (Math.min(100, v) - Math.max(0, y));
    expect(left).toHaveLength(6);
    expect(area(left!)).toBeCloseTo(100 * 100 - overlap, 4);
  }
});

test("an edge is cut into", () => {
  const left = notched(square, box(40, -5, 20, 15));
  expect(left).toHaveLength(8);
  expect(area(left!)).toBeCloseTo(10000 - 200, 4);
});

test("one that stands off changes nothing", () => {
  expect(notched(square, box(120, 20, 10, 10))).toEqual(square);
});

test("a hole is not a line, nor are two bites by one tool", () => {
  expect(notched(square, box(40, 40, 10, 10))).toBeUndefined();
  expect(notched(square, box(-10, 40, 120, 10))).toBeUndefined();
});
