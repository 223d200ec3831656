/**
 * The problem matcher in a task that runs `seatwright check`: findings of files that are not open come into the problems list, and a
 * click goes to the line.
 */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { execPath } from "node:process";
import { afterAll, beforeAll, expect, it } from "vitest";
import { startCodeServer } from "../../.build/desktop/code-server.mjs";
import { root } from "../house/project-files.ts";
import { stepByStep } from "../workbench/step-by-step.ts";
import { driveWorkbench, type Workbench } from "../workbench/workbench.ts";

const home = mkdtempSync(join(tmpdir(), "seatwright-task-"));
const folder = join(home, "chairs");
let workbench: Workbench;

beforeAll(async () => {
  mkdirSync(join(folder, ".vscode"), { recursive: true });
  writeFileSync(join(folder, "open.chair"), "units mm\n");
  writeFileSync(join(folder, "closed.chair"), "units mm\n\npost leg {\n  sectoin 40 x 40\n}\n");
  const task = {
    label: "check the chairs",
    type: "process",
    command: execPath,
    args: [join(root, "dist", "cli.js"), "check", "closed.chair"],
    problemMatcher: "$seatwright",
    // The terminal stays where it is, so that it does not come before the problems list.
    presentation: { reveal: "never" },
  };
  writeFileSync(join(folder, ".vscode", "tasks.json"), JSON.stringify({ version: "2.0.0", tasks: [task] }));
  const host = await startCodeServer({
    folder,
    home,
    vsix: join(root, ".cache", "desktop.vsix"),
  });
  workbench = await driveWorkbench(host, "open.chair");
});

afterAll(async () => {
  await workbench?.close();
  rmSync(home, { recursive: true, force: true });
});

stepByStep("task", () => workbench);

it("puts what the command line finds into the problems list, each at its place", async () => {
  const { page, open, run } = workbench;
  await open("open.chair");
  const row = page.locator(".quick-input-list .monaco-list-row", { hasText: "check the chairs" }).first();
  const found = page.locator(".markers-panel .monaco-list-row", { hasText: "sectoin" }).first();
  // Asked for before it has read the folder's tasks, VS Code puts its list away again.
  await expect
    .poll(
      async () => {
        await run("Tasks: Run Task");
        await row.click({ timeout: 5000 });
        return true;
      },
      { timeout: 60_000 },
    )
    .toBe(true);
  await run("Problems: Focus on Problems View");
  await found.waitFor();
  expect(await found.textContent()).toMatch(/seatwright.*\[Ln 4, Col 3\]/);
  await found.dblclick();
  await page.locator('.tab[data-resource-name="closed.chair"]').waitFor();
  await page.locator(".statusbar-item", { hasText: "Ln 4, Col 3" }).waitFor();
});
