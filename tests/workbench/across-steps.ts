/**
 * What goes over several files: rename, references and going to a part of any file, in a workbench whose folder has the joints, the mess
 * armchair that uses them, and the mess chair.
 */
import { expect, it } from "vitest";
import type { Workbench } from "./workbench.ts";

const armchair = "mess-armchair.chair";
const joints = "boathouse-joints.chair";
const mess = "boathouse-mess-chair.chair";

/** The steps; each begins where the one before ended. */
export function acrossSteps(at: () => Workbench): void {
  it("rename a joint in the library and in the chairs that use it", async () => {
    const { page, open, find } = at();
    await open(joints);
    // The server has read it: before that no name can be renamed.
    await page.locator(".statusbar-item", { hasText: "6 joints" }).waitFor();
    await find("joint boathouse-back");
    await page.keyboard.press("ArrowLeft");
    await page.keyboard.press("F2");
    const box = page.locator(".rename-box input, .rename-box .rename-input").first();
    await box.waitFor();
    await box.fill("splat-tenon");
    await page.keyboard.press("Enter");
    await page
      .locator(".editor-instance .view-line", { hasText: /joint.splat-tenon/ })
      .first()
      .waitFor();
    await open(armchair);
    await find("joined splat-tenon");
  });

  it("find every place a joint is spoken of, over all files", async () => {
    const { page, open, find, run } = at();
    await open(joints);
    await find("joint boathouse-rail");
    await page.keyboard.press("ArrowLeft");
    await run("References: Find All References");
    const found = page.locator(
      ".references-view .monaco-list-row, .tree-explorer-viewlet-tree-view .monaco-list-row",
    );
    await found.filter({ hasText: armchair }).first().waitFor();
    await found.filter({ hasText: joints }).first().waitFor();
  });

  it("go to a part of any file by its name", async () => {
    const { page } = at();
    const input = page.locator(".quick-input-widget .quick-input-filter input[type=text]");
    const found = page.locator(".quick-input-list .monaco-list-row", { hasText: mess }).first();
    // The list of references takes the focus as it fills, which closes what was opened before: then it is asked again.
    const asked = async () => {
      await page.keyboard.press("Control+1");
      await page.keyboard.press("Control+t");
      await input.fill("#side-stretcher", { timeout: 3000 });
      await found.waitFor({ timeout: 8000 });
    };
    await expect
      .poll(
        () =>
          asked().then(
            () => true,
            () => false,
          ),
        { timeout: 60_000 },
      )
      .toBe(true);
    await page.keyboard.press("Escape");
  });
}
