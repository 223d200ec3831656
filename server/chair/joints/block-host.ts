import { height } from "../../geometry/plane.ts";
import type { Plane } from "../../geometry/solid.ts";
import { between, dot } from "../../geometry/vec.ts";
import type { Block } from "../chair.ts";
import type { Host } from "./host.ts";
import { squaredWood } from "./wood.ts";

/** A corner block as a host: one flat-sided solid. */
export function blockHost(block: Block): Host {
  const { pieces } = block.body;
  const middle = between(block.centreLine[0]!, block.centreLine[1]!, 0.5);
  const planes = pieces[0]!.planes;
  return {
    entered: { kind: "block", name: block.name },
    pieces,
    wood: () => squaredWood(pieces, block.grain),
    centre: (z) => [middle[0], middle[1], z],
    chord: () => [0, 0, 1],
    face: (look, _around, but) =>
      planes
        .filter((plane) => !but || dot(plane.normal, but.normal) < 0.999)
        .reduce((best, plane) => (dot(plane.normal, look) > dot(best.normal, look) ? plane : best)),
    check: (corners, shoulder) => {
      const beside = planes.filter((plane: Plane) => dot(plane.normal, shoulder.normal) < 0.7);
      return { off: Math.max(...corners.flatMap((corner) => beside.map((plane) => height(plane, corner)))) };
    },
    fallBack: () => 0,
  };
}
