import type { Vec3 } from "../../../geometry/solid.ts";
import { dot } from "../../../geometry/vec.ts";
import { roundTenon, type TenonFrame, tenonPrism } from "../joint-solid.ts";
import type { Cut, Form } from "./kind.ts";

/** A side of a tenon whose normal lies nearer to the grain of the member entered than this glues to end grain. */
const ALONG_GRAIN = Math.SQRT1_2;

const meetsLongGrain = (normal: Vec3, grain: Vec3): boolean => Math.abs(dot(normal, grain)) < ALONG_GRAIN;

/** Glued at the cheeks as a rule: `faces` of them, and both edges where they meet long grain. */
const cheeks = (frame: TenonFrame, { thick, wide, glued }: Cut, grain: Vec3, faces: number): number =>
  (meetsLongGrain(frame.acrossThick, grain) ? faces * wide * glued : 0) +
  (meetsLongGrain(frame.acrossWide, grain) ? 2 * thick * glued : 0);

const box = {
  solid: tenonPrism,
  area: ({ thick, wide }: Pick<Cut, "thick" | "wide">): number => thick * wide,
  support: (thick: number, wide: number): number => thick + wide,
};

export const rectangularForm: Form = {
  ...box,
  name: "rectangular",
  glued: (frame, cut, grain) => cheeks(frame, cut, grain, 2),
};

/** Half the surface of a round tenon meets long grain. */
export const roundForm: Form = {
  name: "round",
  solid: roundTenon,
  // A cone cut off: the mean of its sections is a third of both ends' and that between them.
  area: ({ thick, tip }) => (Math.PI * thick * thick * (1 + tip + tip * tip)) / 12,
  support: (thick, wide) => Math.hypot(thick, wide),
  glued: (_frame, { thick, tip, glued }) => (Math.PI * thick * ((1 + tip) / 2) * glued) / 2,
};

/** A fork is glued at its inner faces, and at its outer ones where there is wood beside them. */
export const forkedForm: Form = {
  ...box,
  name: "forked",
  glued: (frame, cut, grain, wall) => cheeks(frame, cut, grain, wall <= 0 ? 1 : 2),
};
