/**
 * Comparing chairs and keeping a notebook in VS Code for the web, where there is no git: the saved version and other files.
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it, onTestFailed } from "vitest";
import { root } from "../house/project-files.ts";
import { openWorkbench, type Workbench } from "./workbench.ts";

const name = "boathouse-mess-chair.chair";
const sample = readFileSync(join(root, "samples", name), "utf8");

let workbench: Workbench;

beforeAll(async () => {
  const others = { "wider.chair": sample.replace("foot out 205", "foot out 215") };
  workbench = await openWorkbench({
    files: { [name]: sample, ...others },
    // What is typed here is to differ from what is saved.
    settings: { "files.autoSave": "off" },
  });
}, 120_000);

afterAll(() => workbench?.close());

describe("comparing in VS Code for the web", { timeout: 120_000 }, () => {
  const pictured = () =>
    onTestFailed(async () => {
      await workbench.page.screenshot({ path: join(root, ".cache", "comparing-failed.png") });
    });

  it("lays the saved version behind the drawing and lists what differs, following the typing", async () => {
    pictured();
    const { page, panel, open, run, find } = workbench;
    await open(name);
    await find("kick 4");
    await page.keyboard.press("Backspace");
    await page.keyboard.type("5");
    await run("Compare Chair With");
    await page.locator(".quick-input-list .monaco-list-row", { hasText: "Saved Version" }).first().click();
    const rows = panel.locator("#compare li");
    await rows.filter({ hasText: "kick, 4deg below 100 over 50 → 5deg below 100 over 50" }).waitFor();
    expect(await panel.locator("#compare h2").allTextContents()).toEqual([
      "Chosen",
      "Follows",
      "To make anew",
    ]);
    const before = panel.locator(".view.side .before").first();
    expect(await before.evaluate((line) => getComputedStyle(line).strokeDasharray)).not.toBe("none");
    const heavy = panel.locator(".view.side .outline.changed").first();
    await heavy.waitFor({ state: "attached" });
    const width = (line: Element) => Number.parseFloat(getComputedStyle(line).strokeWidth);
    const plain = panel.locator(".view.side .outline:not(.changed)").first();
    expect(await heavy.evaluate(width)).toBeGreaterThan(await plain.evaluate(width));
    await find("height 930");
    await page.keyboard.press("Backspace");
    await page.keyboard.type("5");
    await rows.filter({ hasText: "height, 930 → 935" }).waitFor();
    await page.screenshot({ path: join(root, ".cache", "comparing.png") });
  });

  it("goes to the text of what is chosen in the list", async () => {
    pictured();
    const { page, panel, goesTo } = workbench;
    const kick = panel.locator("#compare li button", { hasText: "kick" }).first();
    const line = sample.slice(0, sample.indexOf("  kick ")).split("\n").length;
    await goesTo(line, () => kick.click());
    await page.locator(".editor-instance .monaco-editor.focused").first().waitFor();
  });

  it("writes today's note with what was changed, ready to be edited, one step to undo", async () => {
    pictured();
    const { page, run } = workbench;
    await run("Add Note");
    const note = page.locator(".editor-instance .view-line", { hasText: "back kick: 4deg" }).first();
    await note.waitFor();
    // Blanks in the editor's lines are hard ones.
    expect((await note.textContent())?.replace(/\s/g, " ")).toMatch(
      /^note \d{4}-\d\d-\d\d "back height: 930 → 935; back kick|^note \d{4}-\d\d-\d\d "back kick/,
    );
    await page.keyboard.type("Feet further back.");
    await page
      .locator(".editor-instance .view-line", { hasText: /Feet.further.back/ })
      .first()
      .waitFor();
  });

  it("shows the notebook: notes in order with what changed", async () => {
    pictured();
    const { page, run } = workbench;
    await run("Seatwright: Notebook");
    const notebook = page.frameLocator("iframe.webview.ready >> nth=-1").frameLocator("#active-frame");
    await notebook.locator("h1", { hasText: "Boathouse mess chair" }).waitFor();
    await notebook.locator("li", { hasText: "back kick" }).waitFor();
    expect(await notebook.locator("strong").allTextContents()).toEqual(
      expect.arrayContaining(["2026-03-14", "2026-04-02"]),
    );
  });

  it("takes another file, and ends when asked to", async () => {
    pictured();
    const { page, panel, run, find } = workbench;
    await find("height 93");
    await run("Compare Chair With");
    await page.locator(".quick-input-list .monaco-list-row", { hasText: "wider.chair" }).first().click();
    await panel
      .locator("#compare li", { hasText: "foot, out 215, back 20 → out 205, back 20" })
      .first()
      .waitFor();
    await panel.locator("#compare button", { hasText: "End Comparison" }).click();
    await panel.locator("#compare").waitFor({ state: "hidden" });
    await panel.locator(".before").first().waitFor({ state: "detached" });
  });
});
