/**
 * Takes pictures of the drawing's panel to be looked at by eye: three sizes in four themes, each size with what a maker has open there.
 *
 *     npm run pictures screens
 */
import { mkdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { cwd } from "node:process";
import { frameOf } from "./in-the-panel.ts";
import { openWorkbench, type Workbench } from "./workbench.ts";

const name = "boathouse-mess-chair.chair";
const themes = {
  light: "Light Modern",
  dark: "Dark Modern",
  "high-contrast": "Dark High Contrast",
  "high-contrast-light": "Light High Contrast",
};

/** Sizes of the panel, and what is shown there beyond what is shown at first. */
const sizes = {
  narrow: { width: 360, height: 700, shows: [] },
  medium: { width: 680, height: 720, shows: ["Floor", "Sitter"] },
  wide: { width: 1280, height: 800, shows: ["Arrangement", "Pictorial View"] },
} as const;

/** The window made so large that the panel's page has this size. */
async function sized(
  { page, panel }: Workbench,
  { width, height }: { width: number; height: number },
): Promise<void> {
  const frame = await frameOf(panel.locator("body"));
  for (let tries = 0; tries < 4; tries++) {
    const [wide, high] = await frame.evaluate(() => [innerWidth, innerHeight] as const);
    if (wide === width && high === height) return;
    const now = page.viewportSize()!;
    await page.setViewportSize({ width: now.width + width - wide, height: now.height + height - high });
    // The window gives its panel the new size in its own time.
    await frame.waitForFunction(([w, h]) => innerWidth !== w || innerHeight !== h, [wide, high] as const);
  }
}

const folder = join(cwd(), "tests", "workbench", "screens");
mkdirSync(folder, { recursive: true });
const sample = readFileSync(join(cwd(), "samples", name), "utf8");
const thin = sample.replace("tenon thick 1/3 of rail", "tenon thick 1/6 of rail");
const workbench = await openWorkbench({
  files: { [name]: thin },
  settings: { "workbench.activityBar.location": "hidden" },
});
const { page, panel, open, run, close } = workbench;
await open(name);
await page.keyboard.press("Control+b");
await workbench.openDrawing();
await panel.locator("svg .view").nth(2).waitFor();
await panel.locator(".flags .flag").first().waitFor();
// The drawing alone, as large as the window: it stays when the text's tab is closed.
await page.keyboard.press("Control+1");
await run("View: Close Editor");
await page.locator(".tab.active", { hasText: "Drawing of" }).click();
for (const [theme, title] of Object.entries(themes)) {
  await page.keyboard.press("Control+k");
  await page.keyboard.press("Control+t");
  await page.locator(".quick-input-widget .quick-input-filter input[type=text]").fill(title);
  await page.locator(".quick-input-list .monaco-list-row.focused", { hasText: title }).waitFor();
  await page.keyboard.press("Enter");
  for (const [size, { shows, ...room }] of Object.entries(sizes)) {
    await sized(workbench, room);
    for (const each of shows) await run(`Seatwright: Show ${each}`);
    if (size === "wide") {
      await panel.locator(".view.pictorial .outline").first().waitFor();
    }
    await panel
      .locator("body")
      .evaluate(() => new Promise((done) => requestAnimationFrame(() => setTimeout(done, 600))));
    const box = (await page.locator("iframe.webview.ready").first().boundingBox())!;
    await page.screenshot({ path: join(folder, `${size}-${theme}.png`), clip: box });
    for (const each of shows) await run(`Seatwright: Hide ${each}`);
  }
}
await close();
