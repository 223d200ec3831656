import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

/** The checkout's top folder. */
export const root = dirname(dirname(fileURLToPath(import.meta.url)));

/** Where the bundles go. */
export const dist = join(root, "dist");
