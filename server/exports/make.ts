/**
 * A chair as files for other programs.
 */

import type { Steps } from "../../grammar/steps.ts";
import type { Chair } from "../chair/chair.ts";
import { boardDrawings } from "./board-drawings.ts";
import { dxf } from "./dxf.ts";
import { type ExportFile, fileName, utf8 } from "./files.ts";
import { gltf } from "./gltf.ts";
import type { ExportKind } from "./kinds.ts";
import { type ModelPart, modelPart, partNames } from "./model.ts";
import { isFlatFaced, step } from "./step.ts";
import { stl } from "./stl.ts";
import { threeMf } from "./three-mf.ts";

interface ExportOptions {
  kind: ExportKind;
  /** Only this part, or the pair or row of this name. */
  part?: string;
  version: string;
  /** See `About`: any fixed time, milliseconds as the local clock has them. */
  stamp: number;
}

export interface Exported {
  files: ExportFile[];
  /** How many parts are in them; of templates, none. */
  parts: number;
  /** Parts whose solids could not be made sound, and so are in no file. */
  leftOut: string[];
}

/** Hears how far it has come; what it gives is waited for. */
type Told = (done: number, of: number) => void | Promise<void>;

/** Writes a chair, or one part of it, as one kind of file; a part that does not make a sound solid is left out and named. */
export async function exportChair(chair: Chair, options: ExportOptions, told?: Told): Promise<Exported> {
  const { kind, part, version, stamp } = options;
  const title = chair.design.title?.value ?? "Chair";
  const named = fileName(part ?? title, kind.ending);
  if (kind.kind === "dxf") {
    const boards = part === undefined ? await resting(boardDrawings(chair), told) : [];
    const text = dxf(chair, boards, part);
    return { files: text === undefined ? [] : [{ name: named, bytes: utf8(text) }], parts: 0, leftOut: [] };
  }
  const names = partNames(chair, part);
  const parts: ModelPart[] = [];
  const leftOut: string[] = [];
  for (const [k, name] of names.entries()) {
    const made = modelPart(chair, name);
    if (made && (kind.kind !== "step" || isFlatFaced(made))) parts.push(made);
    else leftOut.push(name);
    await told?.(k + 1, names.length);
  }
  const one = (bytes: Uint8Array): ExportFile[] => [{ name: named, bytes }];
  const write: Record<Exclude<ExportKind["kind"], "dxf">, () => ExportFile[] | Promise<ExportFile[]>> = {
    "3mf": () => one(threeMf(parts, { title, version, stamp })),
    gltf: async () => one(await gltf(parts, title)),
    stl: () => parts.map((each) => ({ name: fileName(each.name, "stl"), bytes: stl(each) })),
    step: () => one(utf8(step(parts, { title, version }))),
  };
  return { files: parts.length === 0 ? [] : await write[kind.kind](), parts: parts.length, leftOut };
}

/** Steps between two waits: a few milliseconds. */
const BATCH = 50;

/** The value of steps, waiting for whoever hears of it now and then, so that it can be called off. */
async function resting<T>(steps: Steps<T>, told: Told | undefined): Promise<T> {
  for (let k = 1; ; k++) {
    const next = steps.next();
    if (next.done) return next.value;
    if (k % BATCH === 0) await told?.(0, 1);
  }
}
