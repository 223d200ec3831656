/**
 * Everything the server advertises, each with its handler. What it leaves out stands in `server/editor/left-out.ts`.
 */

import type { Feature } from "./feature.ts";
import { completionFeature } from "./features/completing.ts";
import { layoutFeatures } from "./features/layout.ts";
import { mendingFeatures } from "./features/mending.ts";
import { namingFeatures } from "./features/naming.ts";
import { readingFeatures } from "./features/reading.ts";

export const features: Feature[] = [
  ...readingFeatures,
  completionFeature,
  ...namingFeatures,
  ...mendingFeatures,
  ...layoutFeatures,
];
