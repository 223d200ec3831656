/**
 * What the server and the command line put to work.
 */
import type { Services } from "./put-to-work.ts";
import { rooms } from "./rooms.ts";

export const services: Services = {
  ...rooms,
  late: async () => (await import("./strength/bundle.ts")).lateSteps,
};
