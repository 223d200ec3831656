/**
 * How far a chair gives way level when it is pushed at the seat: what a sitter feels as wobbling.
 */
import type { Chair } from "../chair/chair.ts";
import type { CaseResult, Sway } from "./case-result.ts";

const pushes = [
  { name: "leg-forward", towards: "forward", way: 1 },
  { name: "leg-sideways", towards: "sideways", way: 0 },
] as const;

/** The level movement of the seat's rails over that of the feet, on the mean, in the cases that push it level. */
export function swaysOf(chair: Chair, cases: readonly CaseResult[]): Sway[] {
  return pushes.flatMap(({ name, towards, way }) => {
    const found = cases.filter(({ load, share }) => load.name === name && share === 1);
    const given = found.map((one) => ({ stiffness: one.stiffness, ...movedOf(chair, one, way) }));
    const middle = given.find(({ stiffness }) => stiffness === "middle");
    const all = given.flatMap(({ mm }) => mm ?? []);
    if (middle?.mm === undefined || all.length < given.length) return [];
    return [
      {
        towards,
        ruledBy: name,
        title: found[0]?.load.title ?? name,
        mm: middle.mm,
        low: Math.min(...all),
        high: Math.max(...all),
        height: middle.height ?? 0,
      },
    ];
  });
}

function movedOf(
  chair: Chair,
  { frame, solution }: CaseResult,
  way: 0 | 1,
): { mm?: number; height?: number } {
  if (solution.is !== "solved") return {};
  const stems = new Set((chair.seat?.design.on ?? []).map(({ value }) => value.name));
  const seat = [...frame.along].flatMap(([name, nodes]) =>
    stems.has(name.split(".")[0] ?? name) ? nodes : [],
  );
  if (chair.seat?.plan) seat.push(...(frame.along.get(chair.seat.name) ?? []));
  const feet = [...frame.feet.values()];
  if (seat.length === 0 || feet.length === 0) return {};
  const mean = (nodes: readonly number[], of: (node: number) => number) =>
    nodes.reduce((sum, node) => sum + of(node), 0) / nodes.length;
  const moved = (node: number) => solution.displacements[node]?.[way] ?? 0;
  return {
    mm: Math.abs(mean(seat, moved) - mean(feet, moved)),
    height: mean(seat, (node) => frame.nodes[node]?.at[2] ?? 0),
  };
}
