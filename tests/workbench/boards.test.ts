/**
 * The boards in a real VS Code for the web, as a maker uses them: planned while they are shown, followed from part to text and back.
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { root } from "../house/project-files.ts";
import { frameOf, seriousIn } from "./in-the-panel.ts";
import { stepByStep } from "./step-by-step.ts";
import { openWorkbench, type Workbench } from "./workbench.ts";

const name = "boathouse-mess-chair.chair";
const sample = `${readFileSync(join(root, "samples", name), "utf8")}
board thick { size 2900 x 240 x 50; defect at 900 long 40 from edge 60 wide 30 "knot" }
board thin { size 2800 x 200 x 32; count 2 }
make 1
`;

let workbench: Workbench;

beforeAll(async () => {
  workbench = await openWorkbench({ files: { [name]: sample } });
  await workbench.open(name);
  await workbench.openDrawing();
  await workbench.panel.locator("svg .view").nth(2).waitFor();
}, 120_000);

stepByStep("boards", () => workbench);

afterAll(() => workbench?.close());

const boards = () => workbench.panel.locator("#boards");
const cells = (part: string) =>
  boards()
    .locator("tr", { has: workbench.panel.locator("button", { hasText: new RegExp(`^${part}$`) }) })
    .locator("td");
const turn = (on: boolean) => workbench.run(`Seatwright: ${on ? "Show" : "Hide"} Boards`);

describe("the boards", { timeout: 90_000 }, () => {
  it("come when they are asked for: the stock list, then a plan", async () => {
    expect(await boards().isVisible()).toBe(false);
    await turn(true);
    await boards().locator("table").waitFor();
    expect(await cells("front").nth(2).textContent()).toBe("2");
    await boards().locator("figure svg .piece").first().waitFor();
    expect(await boards().locator("figure .defect title").first().textContent()).toBe("knot");
    expect(await boards().textContent()).toContain("no plan of this kind can use less than");
  });

  it("go from a part to its text, and from the caret to its pieces", async () => {
    const { find, goesTo } = workbench;
    const line = sample.slice(0, sample.indexOf("rail crest {")).split("\n").length;
    const crest = boards().locator("button", { hasText: /^crest$/ });
    await goesTo(line, () => crest.click());
    await boards().locator('.piece.caret[data-part="crest"]').waitFor();
    await boards().locator("tr.caret", { hasText: "crest" }).waitFor();
    await find("post back");
    await boards().locator('.piece.caret[data-part^="back."]').first().waitFor();
    expect(await boards().locator('.piece.caret[data-part="crest"]').count()).toBe(0);
  });

  it("follow the text, and can be stopped or wait to be done", async () => {
    const { page, find } = workbench;
    await find("make 1");
    await page.keyboard.press("End");
    await page.keyboard.press("Backspace");
    await page.keyboard.type("2");
    await expect.poll(() => cells("front").nth(2).textContent(), { timeout: 20_000 }).toBe("4");
    const stop = boards().locator("button", { hasText: "Stop" });
    await stop.or(boards().locator("> p:empty")).first().waitFor();
    if (await stop.isVisible()) await stop.click({ timeout: 5_000 }).catch(() => undefined);
    await expect
      .poll(() => boards().locator("> p").first().textContent(), { timeout: 60_000 })
      .toMatch(/^$|Planning was stopped/);
    expect(await boards().locator("figure").count()).toBeGreaterThan(1);
  });

  it("can be read by everyone, and are taken away", async () => {
    expect(await seriousIn(await frameOf(workbench.panel.locator("body")))).toEqual([]);
    await turn(false);
    await boards().waitFor({ state: "hidden" });
  });
});
