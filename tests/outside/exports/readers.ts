/**
 * Programs and libraries that read what is exported, none of which had a part in writing it.
 */
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";

const folder = mkdtempSync(join(tmpdir(), "seatwright-exports-"));
export const sweep = (): void => rmSync(folder, { recursive: true, force: true });

const put = (name: string, bytes: Uint8Array): string => {
  const path = join(folder, name);
  writeFileSync(path, bytes);
  return path;
};

export interface ReadPart {
  name: string;
  /** mm³. */
  volume: number;
}

let lib3mf: string | undefined;

/** lib3MF (BSD), the 3MF Consortium's own reader, by a small program beside this file. */
export function by3mf(bytes: Uint8Array): {
  unit: number;
  warnings: number;
  objects: (ReadPart & { sound: boolean })[];
} {
  if (!lib3mf) {
    lib3mf = join(folder, "read-3mf");
    const source = new URL("read-3mf.cpp", import.meta.url).pathname;
    execFileSync("g++", ["-I/usr/include/lib3mf", "-o", lib3mf, source, "-l3MF"]);
  }
  return JSON.parse(execFileSync(lib3mf, [put("chair.3mf", bytes)], { encoding: "utf8" }));
}

/** admesh: what it finds and would mend in an STL file. */
export function byAdmesh(bytes: Uint8Array): { volume: number; faults: Record<string, number> } {
  const said = execFileSync("admesh", [put("part.stl", bytes)], {
    encoding: "utf8",
    stdio: ["ignore", "pipe", "ignore"],
  });
  const figure = (name: string): number => Number(new RegExp(`${name}\\s*:\\s*([-\\d.]+)`).exec(said)?.[1]);
  const names = [
    "Degenerate facets",
    "Edges fixed",
    "Facets removed",
    "Facets added",
    "Facets reversed",
    "Backwards edges",
    "Normals fixed",
    "Total disconnected facets",
  ];
  return {
    volume: figure("Volume"),
    faults: Object.fromEntries([
      ...names.map((name) => [name, figure(name)]),
      ["other parts", figure("Number of parts") - 1],
    ]),
  };
}

/** assimp: a file of many kinds as OBJ, read here as text: a volume for each mesh, in the file's unit cubed, and the box about all. */
export function byAssimp(
  name: string,
  bytes: Uint8Array,
): { meshes: ReadPart[]; low: number[]; high: number[] } {
  const out = join(folder, "chair.obj");
  execFileSync("assimp", ["export", put(name, bytes), out], { stdio: "ignore" });
  const points: number[][] = [];
  const meshes = new Map<string, { six: number; from?: number[] }>();
  let mesh: { six: number; from?: number[] } = { six: 0 };
  for (const line of readFileSync(out, "utf8").split("\n")) {
    const [word, ...rest] = line.trim().split(/\s+/);
    if (word === "v") points.push(rest.slice(0, 3).map(Number));
    if (word === "g" || word === "o") {
      mesh = { six: 0 };
      meshes.set(`${rest.join(" ")} ${meshes.size}`, mesh);
    }
    if (word !== "f") continue;
    const corners = rest.map((corner) => points[Number.parseInt(corner, 10) - 1]!);
    mesh.from ??= corners[0]!;
    const [a, b, c] = corners.map((p) => p.map((v, k) => v - mesh.from![k]!)) as [
      number[],
      number[],
      number[],
    ];
    mesh.six +=
      a[0]! * (b[1]! * c[2]! - b[2]! * c[1]!) +
      a[1]! * (b[2]! * c[0]! - b[0]! * c[2]!) +
      a[2]! * (b[0]! * c[1]! - b[1]! * c[0]!);
  }
  const all = (pick: (...values: number[]) => number) =>
    [0, 1, 2].map((k) => pick(...points.map((p) => p[k]!)));
  return {
    meshes: [...meshes].map(([key, { six }]) => ({ name: key.replace(/ \d+$/, ""), volume: six / 6 })),
    low: all(Math.min),
    high: all(Math.max),
  };
}

interface Occt {
  ReadStepFile(
    bytes: Uint8Array,
    options: object,
  ): {
    success: boolean;
    meshes: { name: string; attributes: { position: { array: number[] } }; index: { array: number[] } }[];
  };
}

/** Open Cascade (LGPL) by occt-import-js: every solid of a STEP file as a mesh with its name. */
export async function byOcct(bytes: Uint8Array): Promise<ReadPart[]> {
  const start = createRequire(import.meta.url)("occt-import-js") as () => Promise<Occt>;
  const { success, meshes } = (await start()).ReadStepFile(bytes, { linearUnit: "millimeter" });
  if (!success) throw new Error("Open Cascade could not read the file");
  return meshes.map(({ name, attributes, index }) => {
    const p = attributes.position.array;
    const at = (k: number) => [0, 1, 2].map((i) => p[3 * index.array[k]! + i]! - p[i]!);
    let six = 0;
    for (let k = 0; k < index.array.length; k += 3) {
      const [a, b, c] = [at(k), at(k + 1), at(k + 2)] as [number[], number[], number[]];
      six +=
        a[0]! * (b[1]! * c[2]! - b[2]! * c[1]!) +
        a[1]! * (b[2]! * c[0]! - b[0]! * c[2]!) +
        a[2]! * (b[0]! * c[1]! - b[1]! * c[0]!);
    }
    return { name, volume: six / 6 };
  });
}
