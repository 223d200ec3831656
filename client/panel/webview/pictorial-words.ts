import type { GlueUpTold } from "../../../server/drawing/pictorial/glue-ups.ts";
import type { Area } from "../../../server/drawing/sheet.ts";
import type { Fault } from "../../../server/editor/faults.ts";

/** What is said of it. */
export interface PictorialWords {
  caption: string;
  glueUps: readonly GlueUpTold[];
}

/** A picture whose faulty parts are to be flagged, seen at so many pixels to the millimetre. */
export interface FlaggedPicture {
  areas: readonly Area[];
  faults: readonly Fault[];
  bounds: { left: number; right: number; top: number; foot: number };
  scale: number;
}
