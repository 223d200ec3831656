/**
 * Exports in VS Code for the web, where there is no disk: made in a worker from a chair that uses another file, and saved beside it.
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, expect, it } from "vitest";
import { root } from "../house/project-files.ts";
import { openWorkbench, type Workbench } from "./workbench.ts";

const sample = (name: string) => readFileSync(join(root, "samples", name), "utf8");
const [name, library] = ["mess-armchair.chair", "boathouse-joints.chair"];

let workbench: Workbench;

beforeAll(async () => {
  workbench = await openWorkbench({ files: { [name]: sample(name), [library]: sample(library) } });
}, 120_000);

afterAll(() => workbench?.close());

it("writes the solids beside the chair", { timeout: 90_000 }, async () => {
  const { page, open, run } = workbench;
  const rows = page.locator(".quick-input-list .monaco-list-row");
  await open(name);
  await run("Seatwright: Export");
  await rows.filter({ hasText: "3MF" }).first().waitFor();
  await page.keyboard.press("Enter");
  const box = page.locator(".quick-input-widget .quick-input-box input[type=text]");
  await expect.poll(() => box.inputValue(), { timeout: 30_000 }).toMatch(/mess-armchair\.3mf$/);
  await page.locator(".quick-input-widget .quick-input-action .monaco-button").first().click();
  const toast = page.locator(".notification-toast .notification-list-item-message", {
    hasText: "Saved mess-armchair.3mf",
  });
  await toast.waitFor();
  await page.locator(".explorer-folders-view .monaco-list-row", { hasText: "mess-armchair.3mf" }).waitFor();
  expect(await workbench.strayRequests()).toEqual([]);
});
