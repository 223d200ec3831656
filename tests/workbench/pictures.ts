/**
 * Takes the README's pictures: the mess chair beside its drawing in four themes, in three of them with a tenon too thin; the same with the
 * pictorial view, turned, apart or at a glue-up; and the chair taken apart, drawn by the command line.
 *
 *     npm run pictures
 */
import { execFileSync } from "node:child_process";
import { mkdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { cwd } from "node:process";
import type { Page } from "playwright-core";
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
  const { page, panel, open, openDrawing, find, run, close } = await openWorkbench({ files, settings });
  await open(name);
  await page.keyboard.press("Control+b");
  await openDrawing();
  await panel.locator("svg .view").nth(2).waitFor();
  if (file === "light") {
    await find("rail seat-side");
    await panel.locator(".area.caret").first().waitFor();
  } else {
    await panel.locator('.flags .flag[data-part="seat-side.left"] .board path').last().hover();
    await panel.locator("#told .fault").first().waitFor();
  }
  await page.screenshot({ path: join(folder, `panel-${file}.png`) });
  await run("Seatwright: Show Pictorial View");
  const view = panel.locator("#pictorial");
  await panel.locator(".view.pictorial .outline").first().waitFor();
  if (file === "light") await panel.locator("#turning button", { hasText: "Joints" }).click();
  if (file === "dark") await panel.locator("#turning input").fill("100");
  if (file.startsWith("high")) await panel.locator("#turning select").last().selectOption("3");
  await run("Seatwright: Look at the Pictorial View");
  if (file === "light") await panel.locator(".view.pictorial .tenon").first().waitFor();
  else await panel.locator(`#pictorial[aria-label*="${file === "dark" ? "apart" : "glue-up"}"]`).waitFor();
  await view.evaluate(() => new Promise((done) => requestAnimationFrame(() => setTimeout(done, 1500))));
  await page.screenshot({ path: join(folder, `pictorial-${file}.png`) });
  if (file === "light") await pictureOfParts(page);
  await close();
}

/** The chair taken apart as `seatwright draw` draws it, for pages that show no SVG. */
async function pictureOfParts(page: Page) {
  const command = [join(cwd(), "dist", "cli.js"), "draw", join(cwd(), "samples", name)];
  const svg = execFileSync(process.execPath, [...command, "--from", "front-left", "--apart"], {
    encoding: "utf8",
  });
  await page.goto("about:blank");
  await page.setViewportSize({ width: 900, height: 900 });
  await page.setContent(
    `<style>body { margin: 0 } svg { width: 900px; height: 900px }</style>${svg.slice(svg.indexOf("<svg"))}`,
  );
  await page.screenshot({ path: join(folder, "chair-apart.png") });
}
