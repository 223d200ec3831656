/**
 * Marking-out sheets in VS Code for the web, where there is no disk: made in a worker from a chair that uses another file, and saved beside it.
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, expect, it } from "vitest";
import { root } from "../house/project-files.ts";
import { openWorkbench, type Workbench } from "./workbench.ts";

const sample = (name: string) => readFileSync(join(root, "samples", name), "utf8");
const [name, library, broken] = ["mess-armchair.chair", "boathouse-joints.chair", "broken.chair"];

let workbench: Workbench;

beforeAll(async () => {
  workbench = await openWorkbench({
    files: {
      [name]: sample(name),
      [library]: sample(library),
      [broken]: sample(name).replace("section 38 x 38", "sectoin 38 x 38"),
    },
  });
}, 120_000);

afterAll(() => workbench?.close());

it("makes the sheets and saves them beside the chair", { timeout: 90_000 }, async () => {
  const { page, open, run } = workbench;
  const rows = page.locator(".quick-input-list .monaco-list-row");
  await open(name);
  await run("Seatwright: Marking-Out Sheets");
  await rows.filter({ hasText: "Letter" }).first().waitFor();
  await page.keyboard.press("Enter");
  const box = page.locator(".quick-input-widget .quick-input-box input[type=text]");
  await expect.poll(() => box.inputValue(), { timeout: 30_000 }).toMatch(/mess-armchair\.pdf$/);
  await page.locator(".quick-input-widget .quick-input-action .monaco-button").first().click();
  const toast = page.locator(".notification-toast .notification-list-item-message", {
    hasText: "mess-armchair.pdf",
  });
  await toast.waitFor();
  expect(await toast.textContent()).toMatch(/\d\d pages, to print at 100 %/);
  await page.locator(".explorer-folders-view .monaco-list-row", { hasText: "mess-armchair.pdf" }).waitFor();
  expect(await workbench.strayRequests()).toEqual([]);
});

it("says why, when the chair has errors", { timeout: 60_000 }, async () => {
  const { page, open, run } = workbench;
  const rows = page.locator(".quick-input-list .monaco-list-row");
  await open(broken);
  await run("Seatwright: Marking-Out Sheets");
  await rows.filter({ hasText: "A4" }).first().waitFor();
  await page.keyboard.press("Enter");
  const toast = page.locator(".notification-toast .notification-list-item-message", {
    hasText: "was not marked out",
  });
  await toast.waitFor();
  expect(await toast.textContent()).toMatch(/timber should not be cut/);
});
