/**
 * The frame at work in a real VS Code for the web, as a maker uses it: shown, looked at case by case, followed as the text changes.
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { root } from "../house/project-files.ts";
import { frameOf, seriousIn } from "./in-the-panel.ts";
import { stepByStep } from "./step-by-step.ts";
import { openWorkbench, type Workbench } from "./workbench.ts";

const name = "boathouse-mess-chair.chair";
const sample = readFileSync(join(root, "samples", name), "utf8");

let workbench: Workbench;

beforeAll(async () => {
  workbench = await openWorkbench({ files: { [name]: sample } });
  await workbench.open(name);
  // As a maker opens a preview anywhere in VS Code.
  await workbench.find("Boathouse mess chair");
  await workbench.page.keyboard.press("Control+k");
  await workbench.page.keyboard.press("v");
  await workbench.panel.locator("svg .view").nth(2).waitFor();
}, 120_000);

stepByStep("strength", () => workbench);

afterAll(() => workbench?.close());

const strength = () => workbench.panel.locator("#strength");
const picture = () => strength().locator("svg");
const spoken = () => picture().getAttribute("aria-label");
const turn = (on: boolean) => workbench.run(`Seatwright: ${on ? "Show" : "Hide"} Strength`);

describe("the frame at work", { timeout: 90_000 }, () => {
  it("comes when it is asked for, with its own script", async () => {
    const scripts = () => workbench.panel.locator('script[src*="panel-strength"]').count();
    expect(await scripts()).toBe(0);
    expect(await strength().isVisible()).toBe(false);
    await turn(true);
    await picture().locator("text").first().waitFor();
    expect(await scripts()).toBe(1);
    await expect.poll(spoken).toMatch(/^seat and back together\. .* works hardest, at 0\.\d+\./);
    expect(await picture().locator("path.bent").count()).toBeGreaterThan(10);
    expect(await strength().textContent()).toContain("A calculation is not a test.");
  });

  it("is looked at case by case, by the keyboard alone", async () => {
    const { page } = workbench;
    const cases = strength().locator("select");
    await cases.focus();
    await page.keyboard.press("ArrowDown");
    await expect.poll(spoken).toMatch(/^the seat's front edge\./);
    expect(await cases.evaluate((select) => select === document.activeElement)).toBe(true);
    await cases.selectOption({ label: "pushed sideways at the seat" });
    await expect.poll(spoken).toMatch(/^pushed sideways at the seat\./);
  });

  it("follows the text, and keeps the case that is looked at", async () => {
    const { page, find } = workbench;
    const before = await strength().locator("p").first().textContent();
    await find("seat drop-in");
    await page.keyboard.press("Home");
    await page.keyboard.insertText("strength severe\n");
    await expect
      .poll(() => strength().locator("p").first().textContent(), { timeout: 20_000 })
      .not.toBe(before);
    await expect.poll(spoken).toMatch(/^pushed sideways at the seat\./);
  });

  it("shows a load of the file's own", async () => {
    const { page, find } = workbench;
    await find("strength severe");
    await page.keyboard.press("Home");
    await page.keyboard.insertText("load swing { push 300N back on crest }\n");
    await expect
      .poll(() => strength().locator("option").allTextContents(), { timeout: 20_000 })
      .toContain("swing");
  });

  it("can be read by everyone, and is taken away", async () => {
    expect(await seriousIn(await frameOf(workbench.panel.locator("body")))).toEqual([]);
    await turn(false);
    await strength().waitFor({ state: "hidden" });
  });
});
