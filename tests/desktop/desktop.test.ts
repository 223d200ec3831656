/**
 * The packaged extension in VS Code with a Node extension host, as on a desktop: the same path as on the web, and a server that is
 * killed and comes back with nothing lost.
 */
import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { startCodeServer } from "../../.build/desktop/code-server.mjs";
import { root } from "../house/project-files.ts";
import { acrossSteps } from "../workbench/across-steps.ts";
import { paletteSteps } from "../workbench/palette-steps.ts";
import { stepByStep } from "../workbench/step-by-step.ts";
import { driveWorkbench, type Workbench } from "../workbench/workbench.ts";

const name = "boathouse-mess-chair.chair";
const sample = readFileSync(join(root, "samples", name), "utf8");
const other = "ladder-back.chair";
const broken = sample.replace("  kick 4deg", "  kik 4deg");

const home = mkdtempSync(join(tmpdir(), "seatwright-desktop-"));
const folder = join(home, "chairs");
let workbench: Workbench;

beforeAll(async () => {
  mkdirSync(folder);
  writeFileSync(join(folder, name), sample.replace("kick 4deg", "kick 3deg"));
  for (const each of [other, "boathouse-joints.chair", "mess-armchair.chair"])
    writeFileSync(join(folder, each), readFileSync(join(root, "samples", each), "utf8"));
  const git = (...args: string[]) =>
    execFileSync("git", [
      "-C",
      folder,
      "-c",
      "user.name=Mess",
      "-c",
      "user.email=mess@boathouse.example",
      ...args,
    ]);
  git("init", "-q");
  git("add", ".");
  git("commit", "-q", "-m", "First of all");
  git("tag", "first-cut");
  writeFileSync(join(folder, name), broken);
  const host = await startCodeServer({
    folder,
    home,
    vsix: join(root, ".cache", "desktop.vsix"),
    settings: { "files.autoSave": "off" },
  });
  workbench = await driveWorkbench(host, name);
});

afterAll(async () => {
  await workbench?.close();
  rmSync(home, { recursive: true, force: true });
});

stepByStep("desktop", () => workbench);

describe("the mess chair in VS Code with a Node extension host", () => {
  it("shows its fault by a squiggle and in the problems list", async () => {
    const { page, open, run, find } = workbench;
    await open(name);
    await find("kik");
    await page.locator(".squiggly-error").first().waitFor();
    await run("Problems: Focus on Problems View");
    await page.locator(".markers-panel .monaco-list-row", { hasText: "kik" }).first().waitFor();
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

  it("says what a post comes to under the caret", async () => {
    const { page, find, hover } = workbench;
    await find("post back");
    await page.keyboard.press("ArrowLeft");
    expect(await hover("post back")).toMatch(/rake 6\.5° back/);
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

  it("is drawn beside its text, and a click on a part goes to its lines", async () => {
    const { page, panel } = workbench;
    await workbench.openDrawing();
    await panel.locator("svg .view").nth(2).waitFor();
    await panel.locator('.view.front .area[data-part="crest"]').first().click();
    const line = sample.slice(0, sample.indexOf("rail crest {")).split("\n").length;
    await page.locator(".statusbar-item", { hasText: `Ln ${line}, ` }).waitFor();
  });

  it("follows its text", async () => {
    await crestTo("910");
  });

  it("is compared with the last commit and with a revision by name, through the built-in git extension", async () => {
    const { page, run, panel } = workbench;
    const compareWith = async (choose: () => Promise<void>) => {
      await run("Seatwright: Compare Chair With…");
      await choose();
      await panel.locator("#compare").getByText("kick").first().waitFor();
    };
    const row = (text: string) =>
      page.locator(".quick-input-list .monaco-list-row", { hasText: text }).first();
    await compareWith(() => row("First of all").click());
    await panel.locator("#compare", { hasText: "First of all" }).waitFor();
    await compareWith(async () => {
      await row("Another Revision").click();
      await page.locator(".quick-input-message", { hasText: "The revision by its name" }).waitFor();
      await page.keyboard.type("first-cut");
      await page.keyboard.press("Enter");
    });
    await panel.locator("#compare", { hasText: "first-cut" }).waitFor();
  });

  it("gets today's note with what was changed, one step to undo", async () => {
    const { page, run } = workbench;
    await run("Seatwright: Add Note");
    const today = new Date().toISOString().slice(0, 10);
    const note = page.locator(".editor-instance .view-line", { hasText: `note ${today}` });
    await note.first().waitFor();
    await page.keyboard.press("Control+z");
    await note.first().waitFor({ state: "detached" });
  });

  it("loses nothing when its server is killed: text, drawing and findings go on", async () => {
    const { page, panel, find } = workbench;
    const before = serverProcesses();
    expect(before).toHaveLength(1);
    process.kill(before[0]!, "SIGKILL");
    await expect.poll(serverProcesses).not.toEqual(before);
    await expect.poll(() => serverProcesses().length).toBe(1);
    expect(await panel.locator('.area[data-part="crest"]').count()).toBeGreaterThan(0);
    await page.locator(".editor-instance .view-line", { hasText: "up 910" }).first().waitFor();
    await crestTo("915");
    await find("rail crest {");
    await page.keyboard.press("Home");
    await page.keyboard.type("x");
    await page.locator(".squiggly-error").first().waitFor();
    await page.keyboard.press("Control+z");
    await page.locator(".squiggly-error").first().waitFor({ state: "detached" });
  });

  acrossSteps(() => workbench);

  it("goes back to the chair from the list of references", async () => {
    const { open, run } = workbench;
    await run("View: Show Explorer");
    await open(name);
  });

  // What came before has left the text, not the drawing, as the editor in use.
  paletteSteps(() => workbench, other);

  it("asks nothing of any other machine", async () => {
    expect(await workbench.strayRequests()).toEqual([]);
  });
});

/** Types another height for the crest and waits until the drawing shows it. */
async function crestTo(up: string) {
  const { page, panel, find } = workbench;
  const crest = panel.locator('.view.front .area[data-part="crest"]').first();
  const before = await crest.getAttribute("d");
  await find("up 9");
  await page.keyboard.press("End");
  for (let key = 0; key < 3; key++) await page.keyboard.press("Backspace");
  await page.keyboard.type(up);
  await page
    .locator(".editor-instance .view-line", { hasText: `up ${up}` })
    .first()
    .waitFor();
  await expect.poll(() => crest.getAttribute("d")).not.toBe(before);
}

/** Processes that run the language server of the extension installed here. */
function serverProcesses(): number[] {
  return readdirSync("/proc")
    .map(Number)
    .filter((id) => {
      try {
        const words = readFileSync(`/proc/${id}/cmdline`, "utf8");
        return words.includes(home) && words.includes("dist/server.js");
      } catch {
        return false;
      }
    });
}
