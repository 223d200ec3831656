import { Document, WebIO } from "@gltf-transform/core";
import { movePoint } from "../geometry/motion.ts";
import type { Motion, Vec3 } from "../geometry/solid.ts";
import type { ModelPart } from "./model.ts";

/** Linear light of planed timber, and how dull it is: a viewer's plain default is white. */
const TIMBER = { colour: [0.62, 0.42, 0.24, 1], roughness: 0.8 } as const;

/**
 * A binary glTF 2.0 file of the whole chair: every part a node by its name. In metres with y up and the front towards +z, as glTF has it,
 * so that a viewer meets the chair from the front.
 */
export async function gltf(parts: readonly ModelPart[], title: string): Promise<Uint8Array> {
  const document = new Document();
  const buffer = document.createBuffer();
  const scene = document.createScene(title);
  document.getRoot().setDefaultScene(scene);
  const timber = document
    .createMaterial("timber")
    .setBaseColorFactor([...TIMBER.colour])
    .setMetallicFactor(0)
    .setRoughnessFactor(TIMBER.roughness);
  for (const { name, mesh, place } of parts) {
    const position = document
      .createAccessor()
      .setType("VEC3")
      .setArray(new Float32Array(mesh.points.flatMap(([x, y, z]) => [x / 1000, z / 1000, -y / 1000])))
      .setBuffer(buffer);
    const indices = document
      .createAccessor()
      .setType("SCALAR")
      .setArray(new Uint32Array(mesh.triangles.flat()))
      .setBuffer(buffer);
    const primitive = document
      .createPrimitive()
      .setAttribute("POSITION", position)
      .setIndices(indices)
      .setMaterial(timber);
    const node = document
      .createNode(name)
      .setMesh(document.createMesh(name).addPrimitive(primitive))
      .setRotation(quaternion(turned(place)))
      .setTranslation(upright(place.shift.map((v) => v / 1000) as unknown as Vec3));
    scene.addChild(node);
  }
  return new WebIO().writeBinary(document);
}

/** x to the sitter's left, y back, z up → x to the sitter's left, y up, z to the front. */
const upright = ([x, y, z]: Vec3): [number, number, number] => [x, z, -y];
const back = ([x, y, z]: Vec3): Vec3 => [x, -z, y];

/** The rotation of a motion between places said the glTF way, by rows. */
function turned({ rotation }: Motion): [Vec3, Vec3, Vec3] {
  const still: Motion = { rotation, shift: [0, 0, 0] };
  const columns = (
    [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ] as const
  ).map((axis) => upright(movePoint(still, back(axis))));
  return [0, 1, 2].map((k) => columns.map((column) => column[k]!)) as unknown as [Vec3, Vec3, Vec3];
}

/** x, y, z, w of a rotation by rows; by the largest of the four, so that nothing is divided by little. */
function quaternion([[a, b, c], [d, e, f], [g, h, i]]: [Vec3, Vec3, Vec3]): [number, number, number, number] {
  const squares = [1 + a - e - i, 1 - a + e - i, 1 - a - e + i, 1 + a + e + i];
  const largest = squares.indexOf(Math.max(...squares));
  const four = 2 * Math.sqrt(squares[largest]!);
  const all: [number, number, number, number][] = [
    [four / 4, (b + d) / four, (c + g) / four, (h - f) / four],
    [(b + d) / four, four / 4, (f + h) / four, (c - g) / four],
    [(c + g) / four, (f + h) / four, four / 4, (d - b) / four],
    [(h - f) / four, (c - g) / four, (d - b) / four, four / 4],
  ];
  return all[largest]!;
}
