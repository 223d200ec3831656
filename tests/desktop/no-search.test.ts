/**
 * A folder that VS Code's own search does not go through, on the desktop: rename, references and symbols of all its files.
 */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe } from "vitest";
import { startCodeServer } from "../../.build/desktop/code-server.mjs";
import { makeMemoryFiles } from "../../.build/package.mjs";
import { root } from "../house/project-files.ts";
import { acrossSteps } from "../workbench/across-steps.ts";
import { stepByStep } from "../workbench/step-by-step.ts";
import { driveWorkbench, type Workbench } from "../workbench/workbench.ts";

const names = ["boathouse-mess-chair.chair", "boathouse-joints.chair", "mess-armchair.chair"];
const home = mkdtempSync(join(tmpdir(), "seatwright-no-search-"));
let workbench: Workbench;

beforeAll(async () => {
  const samples = names.map((name) => [name, readFileSync(join(root, "samples", name), "utf8")]);
  const memory = await makeMemoryFiles(home, Object.fromEntries(samples));
  const workspace = join(home, "chairs.code-workspace");
  writeFileSync(workspace, JSON.stringify({ folders: [{ uri: "memory:/chairs", name: "chairs" }] }));
  const host = await startCodeServer({
    folder: workspace,
    home,
    vsix: [join(root, ".cache", "desktop.vsix"), memory],
  });
  workbench = await driveWorkbench(host, names[0]!);
});

afterAll(async () => {
  await workbench?.close();
  rmSync(home, { recursive: true, force: true });
});

stepByStep("no-search", () => workbench);

describe("a folder without a search in VS Code with a Node extension host", () => {
  acrossSteps(() => workbench);
});
