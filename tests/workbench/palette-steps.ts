/**
 * Every command that the palette offers, run from it by keys alone, with what comes of it; in a workbench where the mess chair is open.
 */
import { expect, it } from "vitest";
import { lookCommand, lookNames, showCommand, shows } from "../../client/panel/webview/showable.ts";
import { pageCommand, pageKinds, pageTitles } from "../../server/editor/pages/kinds.ts";
import { read } from "../house/project-files.ts";
import type { Workbench } from "./workbench.ts";

const manifest = JSON.parse(read("package.json")) as {
  contributes: { commands: { command: string; title: string; category: string }[] };
};
const words = JSON.parse(read("package.nls.json")) as Record<string, string>;
/** What the manifest names, in English. */
const inWords = (text: string): string => text.replace(/^%(.+)%$/, (whole, key) => words[key] ?? whole);

/** The steps, in an order in which each command can be run; `other` is a second chair in the folder. */
export function paletteSteps(at: () => Workbench, other: string): void {
  const driven = new Set<string>();
  const run = async (command: string) => {
    driven.add(command);
    const { title, category } = manifest.contributes.commands.find((each) => each.command === command)!;
    await at().runByKeys(`${inWords(category)}: ${inWords(title)}`);
  };
  /** A question of VS Code's own shows, and is put away. */
  const asks = async (command: string, says: string | RegExp) => {
    const { page } = at();
    await run(command);
    await page.locator(".quick-input-widget:not(.hidden)", { hasText: says }).first().waitFor();
    await page.keyboard.press("Escape");
    await page.locator(".quick-input-widget").first().waitFor({ state: "hidden" });
  };

  it("opens the drawing, and looks at each view of it", async () => {
    const { panel } = at();
    await run("seatwright.openDrawing");
    await panel.locator("#sheet > svg > .view").nth(2).waitFor();
    for (const name of lookNames) {
      await run(lookCommand(name));
      const shown = panel.locator("#sheet > svg > .view");
      if (name !== "all") {
        await panel.locator(`#sheet > svg > .view.${name}`).waitFor();
        await expect.poll(() => shown.count()).toBe(1);
      }
    }
    await run(showCommand("pictorial", false));
    await expect.poll(() => panel.locator("#sheet > svg > .view").count()).toBe(3);
  });

  it("zooms in and out", async () => {
    const { panel } = at();
    const wide = async () =>
      Number((await panel.locator("#sheet > svg").getAttribute("viewBox"))?.split(" ")[2]);
    const before = await wide();
    await run("seatwright.drawing.zoomIn");
    await expect.poll(async () => before / (await wide())).toBeCloseTo(1.25, 3);
    await run("seatwright.drawing.zoomOut");
    await expect.poll(async () => before / (await wide())).toBeCloseTo(1, 3);
    await run(lookCommand("all"));
  });

  it("shows and hides each thing that can be shown", async () => {
    const { panel } = at();
    for (const { name, on } of shows) {
      for (const now of [!on, on]) {
        await run(showCommand(name, now));
        await panel.locator(now ? `body:not(.without-${name})` : `body.without-${name}`).waitFor();
      }
    }
  });

  it("tells all of it in words, and puts them away", async () => {
    const { panel } = at();
    await run("seatwright.drawing.openWords");
    await panel.locator("#words h2", { hasText: "Parts" }).waitFor();
    await run("seatwright.drawing.closeWords");
    await panel.locator("#words").waitFor({ state: "hidden" });
  });

  it("follows the chair that is being written, unless it is locked", async () => {
    const { page, open } = at();
    const tab = (label: string) => page.locator(`.tab[aria-label^="${label}"]`).first();
    const [mess] = (await page.locator(".tab.active").first().getAttribute("data-resource-name"))!.split(
      "\n",
    );
    // Beside the drawing, not over it.
    await page.keyboard.press("Control+1");
    await open(other);
    await tab(`Drawing of ${other}`).waitFor();
    await run("seatwright.drawing.lock");
    await tab(`[Drawing of ${other}]`).waitFor();
    await page.keyboard.press("Control+1");
    await open(mess!);
    await page.locator(`.tab.active[data-resource-name="${mess}"]`).waitFor();
    expect(await tab(`[Drawing of ${other}]`).count()).toBe(1);
    await run("seatwright.drawing.unlock");
    await tab(`Drawing of ${mess}`).waitFor();
  });

  it("asks what it has to know: a kind of chair, a place, a paper, a figure, an older chair", async () => {
    await asks("seatwright.newChair", "Bare chair");
    await asks("seatwright.saveDrawing", "Save Drawing");
    await asks("seatwright.printDrawing", "Print Drawing");
    await asks("seatwright.markOut", "Marking-Out Sheets");
    await asks("seatwright.export", "Export");
    await asks("seatwright.reachFigure", /\d ?(mm|°)/);
    await asks("seatwright.compareWith", other);
  });

  it("opens a page about the chair: stance, fit, gluing up, values, notebook", async () => {
    const { page } = at();
    const shown = page.frameLocator("iframe.webview.ready >> nth=-1").frameLocator("#active-frame");
    for (const kind of pageKinds) {
      await run(pageCommand(kind));
      await shown.locator("h1", { hasText: `: ${pageTitles[kind]}` }).waitFor();
      expect(await shown.locator("h2").count()).toBeGreaterThan(0);
      await at().run("View: Close Editor");
      // The drawing's page comes back in its place, and hears no key until it is there.
      await page.locator(".tab").first().click();
    }
    await run("seatwright.notebook");
    await shown.locator("h1").first().waitFor();
    await at().run("View: Close Editor");
    await page.locator(".tab").first().click();
  });

  it("writes a note, one step to undo", async () => {
    const { page, find } = at();
    await find("chair");
    await run("seatwright.addNote");
    const note = page.locator(".editor-instance .view-line", { hasText: /note\s\d{4}-\d\d-\d\d\s"/ });
    const today = new Date().toISOString().slice(0, 10);
    await note.filter({ hasText: today }).first().waitFor();
    await page.keyboard.press("Control+z");
    await note.filter({ hasText: today }).first().waitFor({ state: "detached" });
  });

  it("starts the server anew, and the status goes on telling", async () => {
    await run("seatwright.restartServer");
    await at()
      .page.locator(".statusbar-item", { hasText: /Seat [\d.]+ mm/ })
      .waitFor();
  });

  it("has been run whole", () => {
    const all = manifest.contributes.commands.map(({ command }) => command);
    expect(all.filter((command) => !driven.has(command))).toEqual([]);
  });
}
