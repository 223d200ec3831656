/**
 * The main job in a real VS Code: a maker opens the mess chair with two mistakes in it, sees what is wrong, mends one by quick fix,
 * reads hovers and completions, and watches the drawing follow the text.
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { root } from "../house/project-files.ts";
import { panelSteps } from "./panel-steps.ts";
import { stepByStep } from "./step-by-step.ts";
import { openWorkbench, type Workbench } from "./workbench.ts";

const name = "boathouse-mess-chair.chair";
const sample = readFileSync(join(root, "samples", name), "utf8");

/** A slip of the pen, and a title that would do harm if it were read as markup. */
const broken = sample
  .replace("  kick 4deg", "  kik 4deg")
  .replace('chair "Boathouse mess chair"', 'chair "<img src=x onerror=document.body.remove()> & <script>"');

let workbench: Workbench;

beforeAll(async () => {
  workbench = await openWorkbench({
    files: { [name]: broken },
    // A save ends a step of undo: one in the middle of a slow drag would make two of it.
    settings: { "files.autoSave": "off" },
  });
}, 120_000);

stepByStep("workbench", () => workbench);

afterAll(() => workbench?.close());

describe("the mess chair in VS Code for the web", { timeout: 90_000 }, () => {
  it("is reported its fault by a squiggle and in the problems list", async () => {
    const { page, open, run, find } = workbench;
    await open(name);
    // Lines out of sight are not drawn, nor are their squiggles.
    await find("kik");
    await page.locator(".squiggly-error").first().waitFor();
    await run("Problems: Focus on Problems View");
    const problem = page.locator(".markers-panel .monaco-list-row", { hasText: "kik" }).first();
    await problem.waitFor();
    expect(await problem.textContent()).toMatch(/kick/);
  });

  it("is coloured before any server speaks", async () => {
    const { page } = workbench;
    const colours = await page
      .locator(".editor-instance .view-line span span")
      .evaluateAll((spans) => new Set(spans.map((span) => getComputedStyle(span).color)).size);
    expect(colours).toBeGreaterThan(3);
  });

  it("is mended by a quick fix", async () => {
    const { page, find, offers } = workbench;
    await page.locator(".editor-instance .overflow-guard").first().click();
    await find("kik");
    await page.keyboard.press("ArrowLeft");
    await offers("kick");
    await page.keyboard.press("Enter");
    await page.locator(".editor-instance .view-line", { hasText: "kick 4deg" }).first().waitFor();
    await page.locator(".squiggly-error").first().waitFor({ state: "detached" });
  });

  it("is drawn beside its text", async () => {
    const { panel, openDrawing } = workbench;
    await openDrawing();
    await panel.locator("svg .view").nth(2).waitFor();
    expect(await panel.locator("svg .caption").allTextContents()).toHaveLength(3);
    expect(await panel.locator("svg .view.side .area").count()).toBeGreaterThan(6);
    expect(await panel.locator("svg .scale-bar").count()).toBe(1);
    expect(await panel.locator("#state").textContent()).toBe("");
  });

  it("has its title as text, whatever it says", async () => {
    const { panel } = workbench;
    expect(await panel.locator("svg").first().getAttribute("aria-label")).toContain("<img src=x");
    expect(await panel.locator("img, svg script").count()).toBe(0);
  });

  it("goes to a part's lines when the part is clicked", async () => {
    const { page, panel, goesTo } = workbench;
    const crest = panel.locator('.view.front .area[data-part="crest"]').first();
    const line = sample.slice(0, sample.indexOf("rail crest {")).split("\n").length;
    await goesTo(line, () => crest.click());
    await page.locator(".editor-instance .view-line", { hasText: "rail crest {" }).first().waitFor();
    await panel.locator('.area.caret[data-part="crest"]').first().waitFor();
  });

  it("is drawn anew when its text changes", async () => {
    const { page, panel, find } = workbench;
    const before = await panel.locator('.view.front .area[data-part="crest"]').first().getAttribute("d");
    await find("up 925");
    await page.keyboard.press("Backspace");
    await page.keyboard.press("Backspace");
    await page.keyboard.type("10");
    await expect
      .poll(() => panel.locator('.view.front .area[data-part="crest"]').first().getAttribute("d"))
      .not.toBe(before);
  });

  it("keeps the last good drawing, and says so, while the text is broken", async () => {
    const { page, panel, find } = workbench;
    await find("rail crest {");
    await page.keyboard.press("Home");
    await page.keyboard.type("rial");
    await panel.locator(".stale #state", { hasText: "Out of date" }).waitFor();
    expect(await panel.locator('.area[data-part="crest"]').count()).toBeGreaterThan(0);
    await page.keyboard.press("Control+z");
    await panel.locator("body:not(.stale)").waitFor();
  });

  it("says what a word and a post come to under the caret", async () => {
    const { page, find, hover } = workbench;
    await find("post back");
    await page.keyboard.press("ArrowLeft");
    expect(await hover("post back")).toMatch(/rake 6\.5° back/);
    await page.keyboard.press("Escape");
  });

  it("shows a joint in section in its hover", async () => {
    const { page, find, hover } = workbench;
    await find("joined crest-tenon");
    await page.keyboard.press("ArrowLeft");
    expect(await hover("twin tenons")).toContain("Glued long grain to long grain");
    const picture = page.locator('.monaco-hover:not(.hidden) img[src^="data:image/svg+xml"]').first();
    await expect
      .poll(() => picture.evaluate((image) => (image as HTMLImageElement).naturalWidth))
      .toBeGreaterThan(100);
    await page.keyboard.press("Escape");
  });

  it("offers what can stand where the caret is", async () => {
    const { page, find } = workbench;
    await find("across back");
    await page.keyboard.press("Enter");
    await page.keyboard.type("bo");
    await page.keyboard.press("Control+Space");
    await page.locator(".suggest-widget.visible .monaco-list-row", { hasText: "bow" }).first().waitFor();
    await page.keyboard.press("Escape");
    await page.locator(".suggest-widget.visible").waitFor({ state: "detached" });
    await page.keyboard.press("Control+Shift+k");
    await page.locator(".squiggly-error").first().waitFor({ state: "detached" });
  });

  it("moves a value along its rule: the text says so, the drawing follows", async () => {
    const { page, panel, find } = workbench;
    await find("let seat-height");
    const crest = panel.locator('.view.front .area[data-part="seat-front"]').first();
    const before = await crest.getAttribute("d");
    const rule = panel.locator("#rule-seat-height");
    await rule.focus();
    for (let key = 0; key < 5; key++) await page.keyboard.press("ArrowRight");
    await page
      .locator(".editor-instance .view-line", { hasText: "let seat-height = 445 within" })
      .first()
      .waitFor();
    await expect.poll(() => crest.getAttribute("d")).not.toBe(before);
    await expect.poll(() => panel.locator(".slider output").first().textContent()).toBe("445 mm");
    expect(await panel.locator(".slider text").allTextContents()).toContain("440");
  });

  panelSteps(() => workbench);

  it("asks nothing of any other machine", async () => {
    expect(await workbench.strayRequests()).toEqual([]);
  });
});
