import { describe, expect, test } from "vitest";
import { box } from "../../../server/geometry/convex.ts";
import { less } from "../../../server/geometry/less.ts";
import { type Shell, shellCount, shellEdges, shellOf, shellVolume } from "../../../server/geometry/shell.ts";

/** Points − edges + faces − holes in them = 2 × (shells − holes through them): Euler and Poincaré's formula. */
function euler(shell: Shell): number {
  const edges = shellEdges(shell);
  expect(edges).toBeDefined();
  const holes = shell.faces.reduce((sum, face) => sum + face.holes.length, 0);
  return shell.points.length - edges!.length + shell.faces.length - holes;
}

describe("the shell of pieces that touch", () => {
  test("one box keeps its 8 corners, 12 edges and 6 faces", () => {
    const shell = shellOf([box([0, 0, 0], [30, 20, 10])]);
    expect([shell.points.length, shellEdges(shell)!.length, shell.faces.length]).toEqual([8, 12, 6]);
    expect(shellVolume(shell)).toBeCloseTo(6000, 9);
  });

  test("two boxes end to end are one box", () => {
    const shell = shellOf([box([0, 0, 0], [30, 20, 10]), box([30, 0, 0], [50, 20, 10])]);
    expect([shell.points.length, shell.faces.length]).toEqual([8, 6]);
    expect(shellVolume(shell)).toBeCloseTo(10000, 9);
  });

  test("a face that three others cover is not there", () => {
    const shell = shellOf([
      box([0, 0, 0], [30, 20, 10]),
      box([0, 0, 10], [10, 20, 15]),
      box([10, 0, 10], [25, 20, 15]),
      box([25, 0, 10], [30, 20, 15]),
    ]);
    expect([shell.points.length, shell.faces.length]).toEqual([8, 6]);
    expect(shellVolume(shell)).toBeCloseTo(9000, 9);
  });

  test("a stud on a plate leaves the plate a face with a hole", () => {
    const shell = shellOf([box([0, 0, 0], [30, 30, 10]), box([10, 10, 10], [20, 20, 15])]);
    const holed = shell.faces.filter((face) => face.holes.length > 0);
    expect(holed.map(({ plane }) => plane)).toEqual([{ normal: [0, 0, 1], offset: 10 }]);
    expect(shell.faces).toHaveLength(11);
    expect(euler(shell)).toBe(2);
    expect(shellVolume(shell)).toBeCloseTo(9500, 9);
  });

  test("one plane holds faces that look both ways", () => {
    // Two boxes half over each other, as a stair: at height 10 one looks up and one down, edge to edge.
    const shell = shellOf([box([0, 0, 0], [20, 10, 10]), box([10, 0, 10], [30, 10, 20])]);
    const at10 = shell.faces.filter(({ plane }) => Math.abs(plane.normal[2] * plane.offset) === 10);
    expect(at10.map(({ plane }) => plane.normal[2]).sort()).toEqual([-1, 1]);
    expect(euler(shell)).toBe(2);
    expect(shellVolume(shell)).toBeCloseTo(4000, 9);
  });

  test("a block with a hole right through it is a ring", () => {
    const shell = shellOf(less(box([0, 0, 0], [30, 30, 10]), box([10, 10, -1], [20, 20, 11])));
    expect(euler(shell)).toBe(0);
    expect(shell.faces).toHaveLength(10);
    expect(shellVolume(shell)).toBeCloseTo(8000, 9);
  });

  test("a block with a hollow inside has two surfaces", () => {
    const shell = shellOf(less(box([0, 0, 0], [30, 30, 30]), box([10, 10, 10], [20, 20, 20])));
    expect(shellCount(shell)).toBe(2);
    expect(shellVolume(shell)).toBeCloseTo(26000, 9);
  });

  test("boxes that touch along one edge are not a solid, and are not said to be", () => {
    expect(
      shellEdges(shellOf([box([0, 0, 0], [10, 10, 10]), box([10, 10, 0], [20, 20, 10])])),
    ).toBeUndefined();
  });
});
