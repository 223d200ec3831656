/**
 * Takes the README's pictures: the mess chair beside its drawing in four themes, in three of them with a tenon too thin.
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
const sample = readFileSync(join(cwd(), "samples", name), "utf8");
const thin = sample.replace("tenon thick 1/3 of rail", "tenon thick 1/6 of rail");
for (const [file, theme] of Object.entries(themes)) {
  const settings = {
    "workbench.colorTheme": theme,
    "workbench.activityBar.location": "hidden",
    "editor.minimap.enabled": false,
  };
  const files = { [name]: file === "light" ? sample : thin };
  const { page, panel, open, find, close } = await openWorkbench({ files, settings });
  await open(name);
  await page.keyboard.press("Control+b");
  await page.locator('.editor-actions .action-label[aria-label*="Open Drawing"]').first().click();
  await panel.locator("svg .view").nth(2).waitFor();
  if (file === "light") {
    await find("rail seat-side");
    await panel.locator(".area.caret").first().waitFor();
  } else {
    await panel.locator('.flags .flag[data-part="seat-side.left"] .board path').last().hover();
    await panel.locator("#told .fault").first().waitFor();
  }
  await page.screenshot({ path: join(folder, `panel-${file}.png`) });
  await close();
}
