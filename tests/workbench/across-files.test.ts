/**
 * What a maker does over several files, in VS Code for the web, whose folders no search goes through: rename, references, going to a
 * part of any file; and what begins a chair: the file that is open at first, New Chair, accepting a finding.
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { kindsOfChair } from "../../client/fresh-chair.ts";
import { root } from "../house/project-files.ts";
import { acrossSteps } from "./across-steps.ts";
import { stepByStep } from "./step-by-step.ts";
import { openWorkbench, type Workbench } from "./workbench.ts";

const textOf = (name: string) => readFileSync(join(root, "samples", name), "utf8");
const armchair = "mess-armchair.chair";
const joints = "boathouse-joints.chair";
const small = "small-mess-chair.chair";
const mess = "boathouse-mess-chair.chair";

let workbench: Workbench;

beforeAll(async () => {
  const files = Object.fromEntries([armchair, joints, small].map((name) => [name, textOf(name)]));
  const unaccepted = textOf(mess).replace(/^accept .*\n/m, "");
  workbench = await openWorkbench({ files: { ...files, [mess]: unaccepted }, opens: mess });
}, 120_000);

afterAll(() => workbench?.close());

stepByStep("across-files", () => workbench);

describe("several chairs in VS Code for the web", { timeout: 120_000 }, () => {
  it("begin with one of them open", async () => {
    const { page } = workbench;
    await page.locator(`.tab.active[data-resource-name="${mess}"]`).waitFor();
    await page.locator(".editor-instance .view-line", { hasText: "Boathouse mess chair" }).first().waitFor();
  });

  it("accept a finding with the caret between the quotes, where it is seen", async () => {
    const { page, find, offers } = workbench;
    await find("tenon thick 5");
    await page.locator(".squiggly-warning").first().waitFor();
    const focused = page.locator(".action-widget .monaco-list-row.action.focused");
    await offers(/./);
    const chosen = async () => (await focused.first().textContent()) ?? "";
    for (let k = 0; k < 6 && !(await chosen()).includes("Accept this on"); k++)
      await page.keyboard.press("ArrowDown");
    expect(await chosen()).toContain("Accept this on");
    await page.keyboard.press("Enter");
    await page
      .locator(".editor-instance .view-line", { hasText: /accept.tenon-too-thin/ })
      .first()
      .waitFor();
    await page.keyboard.type("let in dry");
    const line = page.locator(".editor-instance .view-line", { hasText: /accept.tenon-too-thin/ }).first();
    await line.waitFor();
    expect((await line.textContent())?.replace(/\s/g, " ")).toMatch(
      /^accept tenon-too-thin on back-slat.* because "let in dry"$/,
    );
  });

  acrossSteps(() => workbench);

  it("say how far a value may go under its rule, once it is touched", async () => {
    const { page, panel, open, run } = workbench;
    await run("View: Show Explorer");
    await open(mess);
    await run("Seatwright: Open Drawing Beside");
    await panel.locator("svg .view").nth(2).waitFor();
    const slider = panel.locator("input[type=range]").first();
    await slider.focus();
    const bar = panel.locator(".range-bars .band", { hasText: "seat-too-high" });
    await bar.first().waitFor();
    // Its label stays inside the panel.
    const inside = await bar.locator(".band-label").first().boundingBox();
    const rule = await panel.locator(".range-bars").first().boundingBox();
    expect(inside!.x).toBeGreaterThanOrEqual(rule!.x - 1);
    expect(inside!.x + inside!.width).toBeLessThanOrEqual(rule!.x + rule!.width + 1);
    const spoken = await slider.getAttribute("aria-describedby");
    const ids = (spoken ?? "").split(" ").filter(Boolean);
    const words = await Promise.all(ids.map((id) => panel.locator(`[id="${id}"]`).textContent()));
    expect(words.join(" ")).toContain("seat-too-high");
    await page.screenshot({ path: join(root, ".cache", "ranges.png") });
  });

  it("reach a figure by a choice from a list, one step to undo", async () => {
    const { page, run, find } = workbench;
    await find("trim back 10");
    await run("Reach a Figure");
    const rows = page.locator(".quick-input-list .monaco-list-row");
    await page.locator('.quick-input-widget input[placeholder^="Which value"]').waitFor();
    await page.keyboard.type("seat.slope");
    await rows.filter({ hasText: "seat.slope" }).first().waitFor();
    await page.keyboard.press("Enter");
    await page.locator(".quick-input-message", { hasText: "seat.slope is" }).waitFor();
    await page.keyboard.type("2deg");
    await page.keyboard.press("Enter");
    await rows.filter({ hasText: "trim.back" }).first().waitFor();
    await page.keyboard.type("trim.back");
    await page.keyboard.press("Enter");
    const line = page.locator(".editor-instance .view-line", { hasText: /trim.back.1[3-9]/ });
    await line.first().waitFor();
    await find("trim back");
    await page.keyboard.press("Control+z");
    await page
      .locator(".editor-instance .view-line", { hasText: /trim.back.10/ })
      .first()
      .waitFor();
  });

  it("are drawn from the explorer's menu", async () => {
    const { page, panel } = workbench;
    await page
      .locator(".explorer-folders-view .monaco-list-row", { hasText: armchair })
      .click({ button: "right" });
    await page.locator(".monaco-menu .action-item", { hasText: "Open Drawing Beside" }).first().click();
    await page.locator(`.tab[data-resource-name="${armchair}"]`).first().waitFor();
    await panel.locator("svg .view .area[data-part^='arm']").first().waitFor({ state: "attached" });
  });

  it("may begin anew from any kind of chair, dated today and without its notes", async () => {
    const { page, run } = workbench;
    await run("New Chair");
    const rows = page.locator(".quick-input-list .monaco-list-row");
    await expect.poll(() => rows.count()).toBe(kindsOfChair.length + 1);
    await rows.filter({ hasText: "Mess-room armchair" }).click();
    await page.locator(".tab.active", { hasText: "Mess-room armchair" }).waitFor();
    const lines = page.locator(".editor-instance .view-line");
    await lines.filter({ hasText: "Mess-room armchair" }).first().waitFor();
    await page.keyboard.press("Control+End");
    const now = new Date();
    await lines
      .filter({ hasText: `note ${now.getFullYear()}-` })
      .filter({ hasText: "Begun from" })
      .first()
      .waitFor();
  });
});
