/**
 * Every part of every sample, and of random chairs, as other people's programs read it: closed, seen from outside, by its name, and of the
 * volume that the weight is worked out from. Readers: lib3MF 1.8 and assimp 5.2 (3MF, glTF), admesh 0.98 (STL), the Khronos validator
 * (glTF), Open Cascade (STEP), dxf-parser (DXF R12), manifold-3d 3.5.4 (the surfaces before they are written).
 */
import { createHash } from "node:crypto";
import DxfParser from "dxf-parser";
import fc from "fast-check";
import { validateBytes } from "gltf-validator";
import { afterAll, describe, expect, test } from "vitest";
import { stockList, wholePlan } from "../../../server/boards/plan.ts";
import type { Chair } from "../../../server/chair/chair.ts";
import { exportKinds } from "../../../server/exports/kinds.ts";
import { type Exported, exportChair } from "../../../server/exports/make.ts";
import { meshOf } from "../../../server/exports/mesh.ts";
import { partNames } from "../../../server/exports/model.ts";
import { partSolids } from "../../../server/solids/part-solid.ts";
import { weigh } from "../../../server/timber/weight.ts";
import { studied } from "../../check.ts";
import { chairs } from "../joinery/random-chairs.ts";
import { sampleNames, studiedSample } from "../samples.ts";
import { asWritten, sweepSolids } from "../solids/manifold.ts";
import { by3mf, byAdmesh, byAssimp, byOcct, sweep } from "./readers.ts";

const runs = Number(process.env.SEATWRIGHT_RUNS ?? 1);
/** All samples by the slow reader too: `npm run prove exports`. */
const whole = process.env.SEATWRIGHT_RUNS !== undefined;

afterAll(sweep);

const write = (chair: Chair, kind: string, part?: string): Promise<Exported> =>
  exportChair(chair, {
    kind: exportKinds.find((each) => each.kind === kind)!,
    version: "0.0.0",
    stamp: new Date(1980, 0, 1).getTime(),
    ...(part === undefined ? {} : { part }),
  });

/** Squared parts agree to a millionth; what is turned or bent, or enters turned work, to a ten-thousandth. */
function tolerance(chair: Chair, name: string): number {
  const bent = (member: string): boolean => {
    const found = chair.members.get(member);
    if (!found) return false;
    if (found.is === "stick" || found.is === "bow") return true;
    if (found.is === "post") return found.pieces.length > 1 || found.pieces.some(({ faces }) => !faces);
    return (
      (found.is === "rail" || found.is === "slat") && (found.round !== undefined || found.bow !== undefined)
    );
  };
  const joined = [...chair.joints.values()].some(({ part, entered }) => part === name && bent(entered.name));
  return bent(name) || joined ? 1e-4 : 1e-6;
}

function sameVolume(chair: Chair, name: string, volume: number, least = 0): void {
  const known = weigh(chair).parts.get(name);
  if (!known) return;
  const off = Math.abs(volume / known.volume - 1);
  expect(off, `${name}: ${volume} mm³ for ${known.volume}`).toBeLessThan(
    Math.max(least, tolerance(chair, name)),
  );
}

async function solidsHold(chair: Chair): Promise<void> {
  const names = partNames(chair);
  const threeMf = await write(chair, "3mf");
  expect(threeMf.leftOut).toEqual([]);
  const { unit, warnings, objects } = by3mf(threeMf.files[0]!.bytes);
  // 1 is the millimetre.
  expect({ unit, warnings }).toEqual({ unit: 1, warnings: 0 });
  expect(objects.map(({ name }) => name)).toEqual(names);
  expect(objects.filter(({ sound }) => !sound)).toEqual([]);
  for (const { name, volume } of objects) sameVolume(chair, name, volume);

  const stl = await write(chair, "stl");
  expect(stl.files.map(({ name }) => name)).toEqual(names.map((name) => `${name}.stl`));
  for (const [k, { bytes }] of stl.files.entries()) {
    const { volume, faults } = byAdmesh(bytes);
    expect(
      Object.entries(faults).filter(([, count]) => count !== 0),
      names[k],
    ).toEqual([]);
    // admesh adds up in single precision.
    sameVolume(chair, names[k]!, volume, 1e-5);
  }
}

async function gltfHolds(chair: Chair): Promise<void> {
  const names = partNames(chair);
  const { bytes } = (await write(chair, "gltf")).files[0]!;
  const { issues } = await validateBytes(bytes);
  expect({ ...issues, messages: [] }).toMatchObject({ numErrors: 0, numWarnings: 0, numInfos: 0 });
  const { meshes, low, high } = byAssimp("chair.glb", bytes);
  expect(meshes.map(({ name }) => name)).toEqual(names);
  // Metres, and six figures in the text that assimp writes.
  for (const { name, volume } of meshes) sameVolume(chair, name, volume * 1e9, 1e-3);
  expect(low[1], "feet on the floor").toBeCloseTo(0, 5);
  expect(high[1]! * 1000, "as high as the chair").toBeGreaterThan(300);
}

async function stepHolds(chair: Chair, part?: string): Promise<void> {
  const { files, leftOut } = await write(chair, "step", part);
  expect(leftOut).toEqual([]);
  const solids = await byOcct(files[0]!.bytes);
  expect(solids.map(({ name }) => name)).toEqual(partNames(chair, part));
  for (const { name, volume } of solids) sameVolume(chair, name, volume);
}

describe.each(whole ? sampleNames : ["small-mess-chair", "ladder-back"])("%s", (name) => {
  test("3MF and STL", { timeout: 120_000 }, () => solidsHold(studiedSample(name).chair));
  test("glTF", { timeout: 120_000 }, () => gltfHolds(studiedSample(name).chair));
  test.runIf(whole)("STEP", { timeout: 600_000 }, () => stepHolds(studiedSample(name).chair));
});

test.each(sampleNames)("every part of %s is one closed solid", { timeout: 60_000 }, (name) => {
  const open = [...partSolids(studiedSample(name).chair)].filter(({ closed }) => !closed);
  expect(open.map((part) => part.name)).toEqual([]);
});

test.each(whole ? sampleNames : ["harbour-chair", "ladder-back"])(
  "every part of %s is one solid to manifold-3d, which is given its corners by number and welds nothing",
  { timeout: 60_000 },
  (name) => {
    const { chair } = studiedSample(name);
    for (const { name: part, shell } of partSolids(chair)) {
      const { points, triangles } = meshOf(shell);
      const corners = points.map(([x, y, z]): [number, number, number] => [x, y, z]);
      const volumes = asWritten(corners, triangles);
      expect(volumes, part).toHaveLength(1);
      // Its corners are in single precision.
      sameVolume(chair, part, volumes[0]!, 1e-5);
    }
    sweepSolids();
  },
);

test("the same text gives the same bytes", { timeout: 60_000 }, async () => {
  const [one, other] = [studiedSample("small-mess-chair").chair, studiedSample("small-mess-chair").chair];
  const hashes = async (chair: Chair, kind: string) =>
    (await write(chair, kind)).files.map(({ bytes }) => createHash("sha256").update(bytes).digest("hex"));
  for (const { kind } of exportKinds)
    expect(await hashes(one, kind), kind).toEqual(await hashes(other, kind));
});

test("STEP of a whole squared chair, and of one turned, bent post", { timeout: 120_000 }, async () => {
  await stepHolds(studiedSample("joined-stool").chair);
  await stepHolds(studiedSample("small-mess-chair").chair, "back.left");
});

test("random chairs", { timeout: 600_000 + runs * 60_000 }, async () => {
  await fc.assert(
    fc.asyncProperty(chairs, async (text) => {
      const { chair } = studied(text);
      await solidsHold(chair);
      await gltfHolds(chair);
      if (whole) await stepHolds(chair);
    }),
    { numRuns: runs, seed: 7 },
  );
});

test("DXF holds every board of the plan at full size with its pieces on it", {
  timeout: 120_000,
}, async () => {
  const { chair } = studiedSample("bench-from-a-yard");
  const { files } = await write(chair, "dxf");
  const read = new DxfParser().parseSync(new TextDecoder().decode(files[0]!.bytes))!;
  const on = (layer: string) =>
    (read.entities as unknown as { layer: string; type: string; vertices: { x: number; y: number }[] }[])
      .filter((each) => each.layer === layer && each.type === "POLYLINE")
      .map(({ vertices }) => ({
        left: Math.min(...vertices.map(({ x }) => x)),
        right: Math.max(...vertices.map(({ x }) => x)),
        low: Math.min(...vertices.map(({ y }) => y)),
        high: Math.max(...vertices.map(({ y }) => y)),
      }));
  const plan = wholePlan(stockList(chair), chair.design.matches);
  const boards = on("BOARD");
  expect(boards.map(({ left, right, low, high }) => [right - left, high - low])).toEqual(
    plan.boards.map(({ board }) => [expect.closeTo(board.long, 4), expect.closeTo(board.wide, 4)]),
  );
  const pieces = on("PIECE");
  expect(pieces.length).toBe(plan.boards.reduce((sum, each) => sum + each.pieces.length, 0));
  for (const piece of pieces)
    expect(
      boards.some(
        ({ left, right, low, high }) =>
          piece.left > left - 1e-4 &&
          piece.right < right + 1e-4 &&
          piece.low > low - 1e-4 &&
          piece.high < high + 1e-4,
      ),
    ).toBe(true);
  // Boards that are only guessed are not drawn to be cut.
  const guessed = await write(studiedSample("small-mess-chair").chair, "dxf");
  expect(new TextDecoder().decode(guessed.files[0]!.bytes)).not.toContain("\nBOARD\n0\nVERTEX");
});

test("DXF holds the seat and the curved rails at full size, by layers", async () => {
  const { chair } = studiedSample("mess-armchair");
  const { files } = await write(chair, "dxf");
  const read = new DxfParser().parseSync(new TextDecoder().decode(files[0]!.bytes))!;
  expect(read.header.$ACADVER).toBe("AC1009");
  const lines = read.entities.filter(({ type }) => type === "POLYLINE") as unknown as {
    layer: string;
    shape: boolean;
    vertices: { x: number; y: number }[];
  }[];
  expect(new Set(lines.map(({ layer }) => layer)).has("OUTLINE")).toBe(true);
  const wide = (points: { x: number; y: number }[]) =>
    Math.max(...points.map(({ x }) => x)) - Math.min(...points.map(({ x }) => x));
  // The seat is the widest closed outline: as wide as its wood is where the posts have their notches.
  const spans = lines.filter(({ shape }) => shape).map(({ vertices }) => wide(vertices));
  const xs = chair.seat!.body.pieces.flatMap(({ points }) => points.map(([x]) => x));
  expect(spans.some((span) => Math.abs(span - (Math.max(...xs) - Math.min(...xs))) < 0.001)).toBe(true);
  for (const { layer } of read.entities) expect(Object.keys(read.tables.layer.layers)).toContain(layer);
});

test("one part by its name, a pair by its name", async () => {
  const { chair } = studiedSample("boathouse-mess-chair");
  expect((await write(chair, "stl", "front.left")).files.map(({ name }) => name)).toEqual(["front.left.stl"]);
  expect((await write(chair, "stl", "front")).files).toHaveLength(2);
});
