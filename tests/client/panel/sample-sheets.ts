/**
 * The samples as the panel gets them: their sheets with what was asked for, what is said about their parts, and parts at fault.
 */
import { finish } from "../../../grammar/steps.ts";
import type { Chair } from "../../../server/chair/chair.ts";
import { drawSheet } from "../../../server/drawing/draw-sheet.ts";
import { type Turnable, turnableSteps } from "../../../server/drawing/pictorial/turnable.ts";
import type { OverlayName, Sheet } from "../../../server/drawing/sheet.ts";
import { type PartTold, partsTold } from "../../../server/editor/about/parts-told.ts";
import { type Fault, letterOf } from "../../../server/editor/faults.ts";
import { projectFiles, read } from "../../house/project-files.ts";
import { address, plainView } from "../../server/editor/view.ts";

const paths = projectFiles().filter((path) => /^samples\/.*\.chair$/.test(path));
const files = Object.fromEntries(paths.map((path) => [path.slice("samples/".length), read(path)]));
const views = paths.map((path) => [path, plainView(read(path), address, files)] as const);

/** The samples that are chairs, by their paths. */
export const chairs = views.filter(([, view]) => view.study.chair.posts.size > 0);

export const chairOf = (path: string): Chair => chairs.find(([each]) => each === path)![1].study.chair;

export const sheetOf = (path: string, overlays: readonly OverlayName[] = []): Sheet =>
  drawSheet(chairOf(path), overlays);

export const toldOf = (path: string): PartTold[] =>
  finish(partsTold(chairs.find(([each]) => each === path)![1]));

/** A sample as the pictorial view turns it. */
export const turnableOf = (path: string): Turnable => finish(turnableSteps(chairOf(path), true));

/** A finding of every third part that is drawn, the gravest now and then. */
export function faultsIn({ views: drawn }: Sheet): Fault[] {
  const parts = [...new Set(drawn.flatMap(({ areas }) => areas.map(({ part }) => part)))];
  return parts
    .filter((_, index) => index % 3 === 0)
    .map((part, index) => ({
      letter: letterOf(index),
      severity: index % 2 ? "warning" : "error",
      code: "made-up",
      message: "",
      at: 0,
      parts: [{ part }],
    }));
}
