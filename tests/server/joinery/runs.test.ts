import { expect, it } from "vitest";
import { runsOf } from "../../../server/joinery/pieces/runs.ts";

const along = (...leans: (number | "curve")[]) => {
  let lean = 0;
  return leans.map((each, k) => {
    lean = each === "curve" ? lean + 0.02 : each;
    return {
      direction: [0, Math.sin(lean), Math.cos(lean)] as const,
      curved: each === "curve",
      start: [0, 0, 100 * k] as const,
      end: [0, 0, 100 * k + 100] as const,
    };
  });
};
const saidOf = (...leans: (number | "curve")[]) =>
  runsOf(along(...leans), "at the floor").map(({ datum }) => `${datum.name} ${datum.says}`);

it("datums beyond bends say which curve or bend they are at", () => {
  expect(saidOf(0, "curve", 0.1, "curve", 0.2)).toEqual([
    "D1 at the floor",
    "D2 squared round where the first curve ends",
    "D3 squared round where the second curve ends",
  ]);
  expect(saidOf(0, 0.1, 0.2)).toEqual([
    "D1 at the floor",
    "D2 squared round at the first bend, on the centre line",
    "D3 squared round at the second bend, on the centre line",
  ]);
  expect(saidOf(0, "curve", 0.1, 0.2)).toEqual([
    "D1 at the floor",
    "D2 squared round where the curve ends",
    "D3 squared round at the bend, on the centre line",
  ]);
});
