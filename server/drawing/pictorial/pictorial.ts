import { finish, type Steps } from "../../../grammar/steps.ts";
import type { Chair } from "../../chair/chair.ts";
import type { Point, Stroke } from "../sheet.ts";
import { captionOf, framed } from "./framed.ts";
import { type Look, lookSteps } from "./look.ts";
import { turnableSteps } from "./turnable.ts";

export type PictorialOptions = Look;

/** A chair seen from anywhere; mm, y down. */
export interface Pictorial {
  title: string;
  /** "From the front left, 25° above level, taken apart." */
  caption: string;
  width: number;
  height: number;
  strokes: Stroke[];
  /** Lines of the tenons that the wood hides. */
  tenons: { points: Point[]; part: string }[];
}

/** A chair as it stands, seen from the given place, hidden lines taken out. */
export const drawPictorial = (chair: Chair, options: PictorialOptions): Pictorial =>
  finish(pictorialSteps(chair, options));

/** The same, resting after each part. */
export function* pictorialSteps(chair: Chair, options: PictorialOptions): Steps<Pictorial> {
  const bench = (options.apart ?? 0) > 0 || options.glueUp !== undefined;
  const turnable = yield* turnableSteps(chair, bench);
  const looked = yield* lookSteps(turnable, options);
  return { title: chair.design.title?.value ?? "", ...framed(looked, captionOf(turnable, options)) };
}
