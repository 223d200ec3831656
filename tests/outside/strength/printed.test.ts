/**
 * The model as it is printed is enough for anyone to solve it again: each case of two stools, whose feet hold, lift and slide, from the JSON alone
 * by ml-matrix's dense solver.
 */
import { expect, it } from "vitest";
import { strengthOutput } from "../../../server/main/cli/schema-strength.ts";
import type { Frame } from "../../../server/strength/frame/frame.ts";
import { seatwright } from "../../server/main/cli/bench.ts";
import { movesByLibrary } from "./dense.ts";

type V = [number, number, number];

it.each(["slip-stool", "boathouse-stool"])("%s's cases are solved again from what is printed", (name) => {
  const { out } = seatwright("strength", `samples/${name}.chair`, "--format", "json", "--model");
  const { model, cases } = strengthOutput.parse(JSON.parse(out));
  const at = new Map(model!.nodes.map(({ id }, k) => [id, k]));
  const node = (id: string) => at.get(id)!;
  const ends = <T extends { from: string; to: string }>(each: T) => ({
    ...each,
    from: node(each.from),
    to: node(each.to),
  });
  const states = new Set<string>();
  for (const { k, loads, supports, reactions, displacements } of cases) {
    const frame: Frame = {
      nodes: model!.nodes.map(({ id, at: place }) => ({ id, at: place as V })),
      beams: model!.members.map((each) => ({ ...ends(each), yAxis: each.yAxis as V })),
      springs: model!.springs.map((each) => ({
        ...ends(each),
        axes: each.axes as unknown as [V, V, V],
        k: k![each.id]!,
      })),
    };
    for (const { state } of supports!) states.add(state);
    const held = new Set(
      supports!.flatMap((each) => each.held.flatMap((on, way) => (on ? [node(each.node) * 6 + way] : []))),
    );
    // What rubs pushes on the frame as a load does.
    const rubs = reactions!.map((each) => {
      const of = node(each.node);
      return { node: of, v: each.v.map((value, way) => (held.has(of * 6 + way) ? 0 : value)) };
    });
    const pushes = loads!.map((each) => ({ node: node(each.node), v: each.v }));
    const moved = movesByLibrary(frame, [...pushes, ...rubs], held).flat();
    const wanted = displacements!.flatMap(({ v }) => v);
    const most = Math.max(...wanted.map(Math.abs));
    expect(Math.max(...wanted.map((value, dof) => Math.abs(value - moved[dof]!)))).toBeLessThan(1e-6 * most);
  }
  expect([...states].sort()).toEqual(
    name === "slip-stool" ? ["held", "lifted", "slides"] : ["held", "slides"],
  );
});
