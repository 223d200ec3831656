/**
 * Takes the README's pictures: the mess chair beside its drawing in four themes.
 *
 *     npm run pictures
 */
import { mkdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { cwd } from "node:process";
import { openWorkbench } from "./workbench.ts";

const name = "boathouse-mess-chair.chair";
const themes = {
  light: "Default Light Modern",
  dark: "Default Dark Modern",
  "high-contrast": "Default High Contrast",
  "high-contrast-light": "Default High Contrast Light",
};

const folder = join(cwd(), "client", "pictures");
mkdirSync(folder, { recursive: true });
const files = { [name]: readFileSync(join(cwd(), "samples", name), "utf8") };
for (const [file, theme] of Object.entries(themes)) {
  const settings = {
    "workbench.colorTheme": theme,
    "workbench.activityBar.location": "hidden",
    "editor.minimap.enabled": false,
  };
  const { page, panel, open, find, close } = await openWorkbench({ files, settings });
  await open(name);
  await page.keyboard.press("Control+b");
  await page.locator('.editor-actions .action-label[aria-label*="Open Drawing"]').first().click();
  await panel.locator("svg .view").nth(2).waitFor();
  await page.locator(".editor-instance .view-line").first().click();
  await find("rail seat-side");
  await panel.locator(".area.caret").first().waitFor();
  await page.screenshot({ path: join(folder, `panel-${file}.png`) });
  await close();
}
