/**
 * The pictorial view in a real VS Code for the web, as a maker uses it: turned, looked into, taken apart, glued up step by step, kept.
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { root } from "../house/project-files.ts";
import { frameOf, keptBy, listen, seriousIn } from "./in-the-panel.ts";
import { stepByStep } from "./step-by-step.ts";
import { openWorkbench, type Workbench } from "./workbench.ts";

const name = "boathouse-mess-chair.chair";
const sample = readFileSync(join(root, "samples", name), "utf8");

let workbench: Workbench;

beforeAll(async () => {
  workbench = await openWorkbench({ files: { [name]: sample } });
  await workbench.open(name);
  await workbench.openDrawing();
  await workbench.panel.locator("svg .view").nth(2).waitFor();
}, 120_000);

stepByStep("pictorial", () => workbench);

afterAll(() => workbench?.close());

const view = () => workbench.panel.locator("#pictorial");
const spoken = () => view().getAttribute("aria-label");
const drawn = () => workbench.panel.locator(".view.pictorial");
const press = (label: string) => workbench.panel.locator("#turning button", { hasText: label }).click();

describe("the pictorial view", { timeout: 90_000 }, () => {
  it("is loaded when it is asked for, and stands beside the three", async () => {
    const { panel } = workbench;
    const scripts = () => panel.locator('script[src*="panel-pictorial"]').count();
    expect(await scripts()).toBe(0);
    await workbench.run("Seatwright: Show Pictorial View");
    await drawn().locator(".outline").first().waitFor();
    expect(await scripts()).toBe(1);
    expect(await panel.locator("#sheet > svg > .view").count()).toBe(4);
    await expect.poll(spoken).toBe("From the front left, 25° above level.");
  });

  it("goes from a part to its text, and from the caret to the part", async () => {
    const { find, goesTo } = workbench;
    const line = sample.slice(0, sample.indexOf("rail crest {")).split("\n").length;
    await goesTo(line, () => drawn().locator('.area[data-part="crest"]').click());
    await drawn().locator('.area.caret[data-part="crest"]').waitFor();
    await find("rail seat-front");
    await drawn().locator('.outline.caret[data-of="seat-front"]').waitFor();
    expect(await drawn().locator('.caret[data-of="crest"]').count()).toBe(0);
  });

  it("turns by arrow keys and back, and says from where it is seen", async () => {
    const { page, panel } = workbench;
    const heard = await listen(panel.locator("#said"));
    await view().focus();
    await page.keyboard.press("ArrowLeft");
    await expect.poll(spoken).toBe("From 15° on from the front left, 25° above level.");
    await page.keyboard.press("Shift+ArrowDown");
    await expect.poll(spoken).toBe("From 15° on from the front left, 30° above level.");
    await expect.poll(heard).toContain("Seen from 15° on from the front left, 30° above level.");
    await page.keyboard.press("0");
    await expect.poll(spoken).toBe("From the front left, 25° above level.");
    const from = panel.locator("#turning select").first();
    for (const side of ["front", "back", "left", "right", "above", "below", "back-right"]) {
      await from.selectOption(side);
      await expect.poll(spoken).toMatch(new RegExp(`^From (the )?${side.replace("-", " ")}`));
    }
    await from.selectOption("front-left");
  });

  it("turns as it is dragged, and keeps the size of its room", async () => {
    const { page } = workbench;
    const box = (await view().boundingBox())!;
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.mouse.down();
    for (let k = 1; k <= 10; k++)
      await page.mouse.move(box.x + box.width / 2 - 5 * k, box.y + box.height / 2 + k);
    await page.mouse.up();
    await expect.poll(spoken).toBe("From 20° on from the front left, 29° above level.");
    expect(await view().boundingBox()).toEqual(box);
    await page.keyboard.press("0");
    await expect.poll(spoken).toBe("From the front left, 25° above level.");
  });

  it("is looked at alone, nearer and farther", async () => {
    const { page, panel, run } = workbench;
    await page.keyboard.press("4");
    await panel.locator(".view.front").waitFor({ state: "detached" });
    await drawn().locator(".outline").first().waitFor();
    const wide = (await view().boundingBox())!.width;
    await page.keyboard.press("+");
    await expect.poll(async () => (await view().boundingBox())!.width / wide).toBeCloseTo(1.25, 2);
    await run("Seatwright: Look at All Views");
    await panel.locator(".view.front").waitFor();
  });

  it("shows the joints dashed and comes apart, mortises and tenons showing", async () => {
    const { panel } = workbench;
    await press("Joints");
    await drawn().locator(".tenon").first().waitFor();
    const dashes = await drawn()
      .locator(".tenon")
      .first()
      .evaluate((line) => getComputedStyle(line).strokeDasharray);
    expect(dashes).not.toBe("none");
    await press("Joints");
    await drawn().locator(".tenon").first().waitFor({ state: "detached" });
    const lines = async () => (await drawn().locator('.edge[data-of="back.left"]').getAttribute("d")) ?? "";
    const whole = (await lines()).length;
    await panel.locator("#turning input[type=range]").fill("100");
    await expect.poll(spoken).toBe("From the front left, 25° above level, taken apart.");
    await expect.poll(async () => (await lines()).length).toBeGreaterThan(whole * 1.5);
  });

  it("is glued up step by step, each with what is said of it", async () => {
    const { page, panel } = workbench;
    await page.emulateMedia({ reducedMotion: "no-preference" });
    await press("›");
    const told = panel.locator(".glue-up");
    await told.locator("h2").waitFor();
    const first = await told.locator("h2").textContent();
    await expect.poll(spoken).toMatch(/glue-up 1 of \d\.$/);
    expect(await told.textContent()).toMatch(/Bring together .*Closes \d+ joint/s);
    await press("›");
    await expect.poll(() => told.locator("h2").textContent()).not.toBe(first);
    await expect.poll(spoken).toMatch(/glue-up 2 of \d\.$/);
    await press("‹");
    await expect.poll(() => told.locator("h2").textContent()).toBe(first);
  });

  it("moves nothing by itself for those who want less motion", async () => {
    const { page, panel } = workbench;
    await page.emulateMedia({ reducedMotion: "reduce" });
    const frames = await panel.locator("#pictorial").evaluate((focus) => {
      const seen: string[] = [];
      new MutationObserver(() => seen.push(focus.getAttribute("aria-label") ?? "")).observe(focus, {
        attributes: true,
        attributeFilter: ["aria-label"],
      });
      const caption = document.querySelector(".view.pictorial .caption")!;
      new MutationObserver(() => seen.push(caption.textContent ?? "")).observe(caption, { childList: true });
      (document.querySelector('#turning [aria-label="The next glue-up"]') as HTMLElement).click();
      return new Promise<string[]>((done) => setTimeout(() => done(seen), 900));
    });
    expect(frames.length).toBeGreaterThan(0);
    for (const caption of frames) expect(caption).not.toMatch(/closed/);
    await page.emulateMedia({ reducedMotion: null });
    await panel.locator("#turning select").last().selectOption("");
    await expect.poll(spoken).toBe("From the front left, 25° above level.");
  });

  it("hatches and flags a faulty part with its letter, and follows a value that is moved", async () => {
    const { page, panel, find } = workbench;
    await find("thick 1/3");
    await page.keyboard.press("Backspace");
    await page.keyboard.type("9");
    await drawn().locator('.flag.warning[data-part="seat-front"]').waitFor();
    const letters = (at: string) =>
      panel.locator(`${at} .flag[data-part="seat-front"] text`).first().textContent();
    expect(await letters(".view.pictorial")).toBe(await letters("#sheet > svg > .flags"));
    expect(await drawn().locator(".hatched .warning").count()).toBeGreaterThan(0);
    await page.keyboard.press("Backspace");
    await page.keyboard.type("3");
    await drawn().locator(".flag").first().waitFor({ state: "detached" });
    const seat = () => drawn().locator('.outline[data-of="seat"]').getAttribute("d");
    const before = await seat();
    await panel.locator("#rule-seat-height").focus();
    await page.keyboard.press("ArrowRight");
    await expect.poll(seat).not.toBe(before);
  });

  it("is told in words", async () => {
    const { panel, run } = workbench;
    await run("Seatwright: Open Drawing in Words");
    const words = panel.locator("#words");
    await words.locator("h2", { hasText: "Pictorial view" }).waitFor();
    expect(await words.textContent()).toMatch(
      /From the front left, 25° above level\..*Gluing up.*Bring together/s,
    );
    await run("Seatwright: Close Drawing in Words");
    expect(await seriousIn(await frameOf(panel.locator("body")))).toEqual([]);
  });

  it("is saved with the rest, as it is turned, also from the palette", async () => {
    const { page, panel, run } = workbench;
    await panel.locator("#turning select").first().selectOption("back-right");
    await run("Seatwright: Save Drawing");
    const title = page.locator(".quick-input-widget .quick-input-title", { hasText: "Save Drawing" });
    await title.waitFor();
    await page.keyboard.press("Escape");
    await view().focus();
    await run("Seatwright: Save Drawing");
    await title.waitFor();
    await page.locator(".quick-input-widget .quick-input-action", { hasText: "OK" }).click();
    const told = page.locator(".notification-list-item", {
      hasText: "Saved boathouse-mess-chair.svg",
    });
    await told.locator(".monaco-button", { hasText: "Open" }).click();
    await page.locator('.tab.active[data-resource-name="boathouse-mess-chair.svg"]').waitFor();
    await page
      .locator(".editor-instance .view-line", { hasText: "From the back right, 25° above level" })
      .first()
      .waitFor();
  });

  it("comes back as it was after the window is loaded anew", async () => {
    const { page, panel } = workbench;
    // VS Code for the web puts what it keeps away every few seconds.
    await expect
      .poll(() => page.evaluate(keptBy), { timeout: 20_000 })
      .toMatch(/"turned\\*":\[\\*"pictorial\\*"\].*"round\\*":3\.92/);
    await page.reload();
    await panel.locator(".view.pictorial .outline").first().waitFor();
    await expect.poll(spoken).toBe("From the back right, 25° above level.");
  });
});
