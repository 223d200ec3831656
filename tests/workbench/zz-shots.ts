import { readFileSync } from "node:fs";
import { openWorkbench } from "./workbench.ts";

const name = "boathouse-mess-chair.chair";
const sample = readFileSync(`${process.cwd()}/samples/${name}`, "utf8");
const themes = {
  light: "Default Light Modern",
  dark: "Default Dark Modern",
  hc: "Default High Contrast",
  hcl: "Default High Contrast Light",
};
for (const [file, theme] of Object.entries(themes)) {
  const { page, panel, open, run, close } = await openWorkbench({
    files: { [name]: sample },
    settings: {
      "workbench.colorTheme": theme,
      "workbench.activityBar.location": "hidden",
      "editor.minimap.enabled": false,
    },
  });
  await open(name);
  await page.keyboard.press("Control+b");
  await page.locator('.editor-actions .action-label[aria-label*="Open Drawing"]').first().click();
  await panel.locator("svg .view").nth(2).waitFor();
  await run("Seatwright: Show Strength");
  await panel.locator("#strength svg text").first().waitFor();
  await page.screenshot({ path: `/tmp/s/strength-${file}.png` });
  await close();
}
