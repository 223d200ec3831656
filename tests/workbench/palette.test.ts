/**
 * Every command of the palette in VS Code for the web.
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, beforeEach, describe } from "vitest";
import { root } from "../house/project-files.ts";
import { paletteSteps } from "./palette-steps.ts";
import { openWorkbench, type Workbench } from "./workbench.ts";

const [name, other] = ["boathouse-mess-chair.chair", "ladder-back.chair"];
const sample = (file: string) => readFileSync(join(root, "samples", file), "utf8");

let workbench: Workbench;

beforeAll(async () => {
  workbench = await openWorkbench({ files: { [name]: sample(name), [other]: sample(other) }, opens: name });
}, 120_000);

afterAll(() => workbench?.close());

/** Each step begins where the one before ended, so after a failure the rest says nothing. */
let failed = false;

beforeEach(({ skip, onTestFailed }) => {
  skip(failed, "an earlier step failed");
  onTestFailed(async () => {
    failed = true;
    await workbench.page.screenshot({ path: join(root, ".cache", "palette-failed.png") });
  });
});

describe("the palette in VS Code for the web", { timeout: 180_000 }, () => {
  paletteSteps(() => workbench, other);
});
