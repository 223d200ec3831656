/**
 * Every command of the palette in VS Code for the web.
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe } from "vitest";
import { root } from "../house/project-files.ts";
import { paletteSteps } from "./palette-steps.ts";
import { stepByStep } from "./step-by-step.ts";
import { openWorkbench, type Workbench } from "./workbench.ts";

const [name, other] = ["boathouse-mess-chair.chair", "ladder-back.chair"];
const sample = (file: string) => readFileSync(join(root, "samples", file), "utf8");

let workbench: Workbench;

beforeAll(async () => {
  workbench = await openWorkbench({ files: { [name]: sample(name), [other]: sample(other) }, opens: name });
}, 120_000);

afterAll(() => workbench?.close());

stepByStep("palette", () => workbench);

describe("the palette in VS Code for the web", { timeout: 180_000 }, () => {
  paletteSteps(() => workbench, other);
});
