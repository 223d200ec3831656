/**
 * A chair made ready to be turned, as plain lists of numbers: what is sent to where the turning happens. Places are rounded to a
 * ten-thousandth of a millimetre and directions to 1e-7, a hundred times finer than what counts as touching in a picture.
 */
import type { Steps } from "../../../grammar/steps.ts";
import type { Body, Convex, Edge, Motion, Vec3 } from "../../geometry/solid.ts";
import type { GlueUpTold } from "./glue-ups.ts";
import type { Turnable } from "./turnable.ts";

/** Places and directions three numbers each, one after another; all else refers to them by their index. */
export interface PackedBody {
  places: number[];
  directions: number[];
  /** Of each convex piece: its corners, and by two numbers a plane's direction and offset. */
  pieces: { corners: number[]; planes: number[] }[];
  /** By five numbers: two ends, the directions of two faces, 1 where facets of one curved face meet and 0 elsewhere. */
  edges: number[];
}

export interface PackedTurnable {
  /** Whether the parts are as they leave the bench. */
  bench: boolean;
  parts: { name: string; body: PackedBody }[];
  stance: Motion;
  tenons: { part: string; body: PackedBody }[];
  offsets: { part: string; by: Vec3 }[];
  glueUps: GlueUpTold[];
}

/** Packs what is to be sent, resting after each part. */
export function* packedSteps(turnable: Turnable, bench: boolean): Steps<PackedTurnable> {
  const { stance, offsets, glueUps } = turnable;
  const parts: PackedTurnable["parts"] = [];
  for (const { name, body } of turnable.parts) {
    parts.push({ name, body: packedBody(body) });
    yield;
  }
  const tenons = turnable.tenons.map(({ part, edges }) => ({
    part,
    body: packedBody({ pieces: [], edges }),
  }));
  return { bench, parts, stance, tenons, offsets: [...offsets].map(([part, by]) => ({ part, by })), glueUps };
}

/** The same again, to be looked at; faces of the pieces are left out, which no picture asks for. */
export function unpacked({ parts, stance, tenons, offsets, glueUps }: PackedTurnable): Turnable {
  return {
    parts: parts.map(({ name, body }) => ({ name, body: unpackedBody(body) })),
    stance,
    tenons: tenons.map(({ part, body }) => ({ part, edges: unpackedBody(body).edges })),
    offsets: new Map(offsets.map(({ part, by }) => [part, by])),
    glueUps,
  };
}

const PLACE = 1e4;
const DIRECTION = 1e7;

function packedBody({ pieces, edges }: Body): PackedBody {
  const places = collection(PLACE);
  const directions = collection(DIRECTION);
  return {
    pieces: pieces.map(({ points, planes }) => ({
      corners: points.map(places.indexOf),
      planes: planes.flatMap(({ normal, offset }) => [
        directions.indexOf(normal),
        Math.round(offset * PLACE) / PLACE,
      ]),
    })),
    edges: edges.flatMap(({ a, b, is, normals }) => [
      places.indexOf(a),
      places.indexOf(b),
      directions.indexOf(normals[0]),
      directions.indexOf(normals[1]),
      Number(is === "smooth"),
    ]),
    places: places.numbers,
    directions: directions.numbers,
  };
}

/** Triples kept once each, rounded. */
function collection(fine: number) {
  const numbers: number[] = [];
  const known = new Map<string, number>();
  return {
    numbers,
    indexOf(triple: Vec3): number {
      const rounded = triple.map((v) => Math.round(v * fine) / fine + 0);
      const key = rounded.join(" ");
      const there = known.get(key);
      if (there !== undefined) return there;
      const index = known.size;
      known.set(key, index);
      numbers.push(...rounded);
      return index;
    },
  };
}

function unpackedBody({ places, directions, pieces, edges }: PackedBody): Body {
  const points = triples(places);
  const normals = triples(directions);
  return {
    pieces: pieces.map(({ corners, planes }): Convex => {
      const made: Convex = { points: corners.map((k) => points[k]!), planes: [], faces: [] };
      for (let k = 0; k < planes.length; k += 2)
        made.planes.push({ normal: normals[planes[k]!]!, offset: planes[k + 1]! });
      return made;
    }),
    edges: Array.from({ length: edges.length / 5 }, (_, k): Edge => {
      const [a, b, first, second, smooth] = edges.slice(5 * k, 5 * k + 5) as [
        number,
        number,
        number,
        number,
        number,
      ];
      return {
        a: points[a]!,
        b: points[b]!,
        is: smooth ? "smooth" : "arris",
        normals: [normals[first]!, normals[second]!],
      };
    }),
  };
}

const triples = (numbers: readonly number[]): Vec3[] =>
  Array.from({ length: numbers.length / 3 }, (_, k) => numbers.slice(3 * k, 3 * k + 3) as unknown as Vec3);
