import type { Steps } from "../../../grammar/steps.ts";
import type { Chair } from "../../chair/chair.ts";
import { edgesOf } from "../../geometry/body.ts";
import type { Body, Edge, Motion, Vec3 } from "../../geometry/solid.ts";
import { dot } from "../../geometry/vec.ts";
import { solidsOf } from "../../solids/part-pieces.ts";
import { sceneOf } from "../scene.ts";
import { benchPart, offsetsApart } from "./apart.ts";
import { type GlueUpTold, glueUpsTold } from "./glue-ups.ts";

/** A chair made ready to be looked at from anywhere: all that a view needs and that no turning changes. As drawn, mm. */
export interface Turnable {
  parts: TurnablePart[];
  /** From as drawn to as it stands. */
  stance: Motion;
  /** The edges of each part's tenons, facets of turned ones being `smooth`. */
  tenons: { part: string; edges: Edge[] }[];
  /** How far each part is moved when the whole is taken apart; none stay where they are. */
  offsets: ReadonlyMap<string, Vec3>;
  /** In the order to do them. */
  glueUps: GlueUpTold[];
}

interface TurnablePart {
  /** Full name. */
  name: string;
  body: Body;
}

/** The cosine of the most that two facets of a turned tenon turn. */
const FACET = Math.cos(0.5);

/** What there is to look at; `bench` gives the parts as they leave the bench, with mortises and tenons in their lines. Rests after each part. */
export function* turnableSteps(chair: Chair, bench: boolean): Steps<Turnable> {
  const parts: TurnablePart[] = [];
  for (const part of sceneOf(chair)) {
    const { name, body } = bench ? benchPart(chair, part) : part;
    // Its lines are made when they are first asked for, which is here and not while somebody turns it.
    parts.push({ name, body: { pieces: body.pieces, edges: body.edges } });
    yield;
  }
  const tenons = [...chair.joints.values()].map((joint) => ({
    part: joint.part,
    edges: solidsOf(joint).flatMap((solid) =>
      edgesOf(solid).map(
        ({ a, b, normals }): Edge => ({ a, b, normals, is: dot(...normals) > FACET ? "smooth" : "arris" }),
      ),
    ),
  }));
  yield;
  return {
    parts,
    stance: chair.stance,
    tenons: tenons.filter(({ edges }) => edges.length > 0),
    offsets: offsetsApart(chair),
    glueUps: glueUpsTold(chair),
  };
}
