/**
 * What a maker does with the drawing panel, step by step, in a workbench where the mess chair and its drawing are open side by side.
 */
import type { Locator } from "playwright-core";
import { expect, it } from "vitest";
import { frameOf, keptBy, listen, seriousIn } from "./in-the-panel.ts";
import type { Workbench } from "./workbench.ts";

/** The steps; each begins where the one before ended. */
export function panelSteps(at: () => Workbench): void {
  it("tells of a part under the pointer: its name and figures", async () => {
    const { panel } = at();
    await panel.locator('.view.front .area[data-part="crest"]').first().hover();
    const card = panel.locator("#told:not([hidden])");
    await card.waitFor();
    expect(await card.locator("strong").textContent()).toBe("rail crest");
    expect(await card.textContent()).toMatch(/20 mm × 90 mm, [\d.]+ mm between shoulders/);
    expect(await panel.locator('.view.side .area.pointed-at[data-part="crest"]').count()).toBeGreaterThan(0);
  });

  it("goes from part to part by keyboard, and on to the text", async () => {
    const { page, panel } = at();
    const heard = await listen(panel.locator("#said"));
    await panel.locator("#sheet").focus();
    const said = async (key: string, title: string) => {
      await page.keyboard.press(key);
      await panel.locator("#told:not([hidden]) strong", { hasText: title }).waitFor();
      await expect.poll(() => heard()).toContain(`${title}. `);
    };
    // From the part under the pointer, in the order of the text.
    await said("n", "slat back-slat.1");
    await said("n", "slat back-slat.2");
    await said("p", "slat back-slat.1");
    await page.keyboard.press("Enter");
    await panel.locator('.area.caret[data-part="back-slat.1"]').first().waitFor();
  });

  it("marks a faulty part by a hatching, dashes and a lettered flag, and says which fault", async () => {
    const { page, panel, find, run } = at();
    await find("thick 1/3");
    await page.keyboard.press("Backspace");
    await page.keyboard.type("9");
    const flag = panel.locator('.flags .flag.warning[data-part="seat-front"]').first();
    await flag.waitFor();
    const letter = (await flag.locator("text").textContent()) ?? "";
    expect(letter).toMatch(/^[A-Z]( [A-Z])*…?$/);
    expect(await panel.locator(".view.front .hatched .warning").count()).toBeGreaterThan(0);
    const dashes = panel.locator(".view.front .outline.faulty").first();
    expect(await dashes.evaluate((drawn) => getComputedStyle(drawn).strokeDasharray)).not.toBe("none");
    await flag.locator(".board path").hover();
    await panel.locator("#told .fault", { hasText: "tenon of" }).first().waitFor();
    expect(await panel.locator("#told .fault").first().textContent()).toMatch(
      /^[A-Z] · warning: The tenon of /,
    );
    await run("Seatwright: Hide Findings");
    await flag.waitFor({ state: "hidden" });
    await run("Seatwright: Show Findings");
    await flag.waitFor();
  });

  it("has all of it in words, with the way to each finding", async () => {
    const { page, panel, run, goesTo } = at();
    await run("Seatwright: Open Drawing in Words");
    const words = panel.locator("#words");
    await words.locator("h2", { hasText: "Parts" }).waitFor();
    expect(await words.textContent()).toMatch(/seat\.height 444\.7 mm/);
    expect(await words.locator('button[data-part="crest"]').textContent()).toBe("rail crest");
    await goesTo(12, () => words.locator("button", { hasText: "tenon of" }).first().click());
    await page.locator(".statusbar-item", { hasText: "Ln 12, Col 15" }).waitFor();
  });

  it.each(["Dark Modern", "Dark High Contrast", "Light High Contrast", "Light Modern"])(
    "is drawn in the colours of %s, and axe-core finds nothing serious there",
    async (theme) => {
      const { page, panel } = at();
      const line = panel.locator(".view.front .outline:not(.faulty)").first();
      await page.keyboard.press("Control+k");
      await page.keyboard.press("Control+t");
      await page.locator(".quick-input-widget .quick-input-filter input[type=text]").fill(theme);
      await page.locator(".quick-input-list .monaco-list-row.focused", { hasText: theme }).waitFor();
      await page.keyboard.press("Enter");
      const kind = /High Contrast/.test(theme) ? "vscode-high-contrast" : "vscode";
      await panel
        .locator(`body.${kind}${/Light/.test(theme) ? "-light" : kind === "vscode" ? "-dark" : ""}`)
        .waitFor();
      // Three to one is what WCAG 2.2 asks of lines (1.4.11); from memory.
      await expect.poll(() => contrastOf(line)).toBeGreaterThan(3);
      expect(await line.evaluate(() => document.getAnimations().length)).toBe(0);
      expect(await seriousIn(await frameOf(panel.locator("body")))).toEqual([]);
    },
  );

  it("moves a value by the mouse, and one undo takes the whole drag back", async () => {
    const { page, panel, find, run } = at();
    await run("Seatwright: Close Drawing in Words");
    await find("let seat-height");
    const line = page.locator(".editor-instance .view-line", { hasText: "let seat-height" }).first();
    const before = await line.textContent();
    const rule = panel.locator("#rule-seat-height");
    const { x, y, width, height } = (await rule.boundingBox())!;
    const along = (value: number) => x + 8 + ((width - 16) * (value - 420)) / 50;
    await page.mouse.move(along(445), y + height / 2);
    await page.mouse.down();
    for (const value of [446, 449, 453, 458, 462]) {
      await page.mouse.move(along(value), y + height / 2);
      await page
        .locator(".editor-instance .view-line", { hasText: `seat-height = ${value} within` })
        .first()
        .waitFor();
    }
    await page.mouse.up();
    await panel
      .locator(".dimension title", { hasText: "seat.height: 461.7 mm" })
      .waitFor({ state: "attached" });
    expect(await panel.locator(".slider output").first().textContent()).toBe("462 mm");
    await find("let seat-height");
    await page.keyboard.press("Control+z");
    await expect.poll(() => line.textContent()).toBe(before);
    await panel
      .locator(".dimension title", { hasText: "seat.height: 444.7 mm" })
      .waitFor({ state: "attached" });
    await expect.poll(() => rule.inputValue()).toBe("445");
  });

  it("moves a value by a run of arrow keys, which is one undo too", async () => {
    const { page, panel, find } = at();
    const line = page.locator(".editor-instance .view-line", { hasText: "let seat-height" }).first();
    const before = await line.textContent();
    await panel.locator("#rule-seat-height").focus();
    // All at once: on a busy machine keys that wait for each other may be so far apart that they are two runs.
    await Promise.all(Array.from({ length: 4 }, () => page.keyboard.press("ArrowLeft")));
    await page
      .locator(".editor-instance .view-line", { hasText: "seat-height = 441 within" })
      .first()
      .waitFor();
    await find("let seat-height");
    await page.keyboard.press("Control+z");
    await expect.poll(() => line.textContent()).toBe(before);
  });

  it("lays how it stands over the plan and a sitter over the side view, while they are asked for", async () => {
    const { panel, run } = at();
    await run("Seatwright: Show Floor");
    await panel.locator(".view.plan .overlay.floor .tipping").first().waitFor({ state: "attached" });
    expect(await panel.locator(".view.plan .overlay.floor .foot").count()).toBe(4);
    await run("Seatwright: Show Sitter");
    await panel.locator(".view.side .overlay.sitter.body").waitFor();
    // Where the browser has put them, whatever its font is.
    expect(await panel.locator("#sheet > svg").evaluate(overlapping)).toEqual([]);
    await run("Seatwright: Hide Floor");
    await panel.locator(".overlay.floor").first().waitFor({ state: "detached" });
    expect(await panel.locator(".view.side .overlay.sitter").count()).toBe(2);
    await run("Seatwright: Hide Sitter");
    await panel.locator(".overlay.sitter").first().waitFor({ state: "detached" });
  });

  it("shows the post that the caret is in from each of its faces, with its mortises, while that is asked for", async () => {
    const { panel, find, run } = at();
    await run("Seatwright: Show Post Faces");
    await find("post back");
    await panel.locator('#post svg[aria-label^="back.left"]').waitFor();
    expect(await panel.locator("#post h2").textContent()).toBe("back.left");
    expect(await panel.locator("#post .caption").allTextContents()).toEqual([
      "front",
      "outside",
      "back",
      "inside",
    ]);
    expect(await panel.locator('#post .mouth[d*="M"]').count()).toBe(2);
    await find("post front");
    await panel.locator('#post svg[aria-label^="front.left"]').waitFor();
    await run("Seatwright: Hide Post Faces");
    await panel.locator("#post").waitFor({ state: "hidden" });
  });

  it("is saved as an SVG file where the maker says", async () => {
    const { page, run } = at();
    await run("Seatwright: Save Drawing");
    await page.locator(".quick-input-widget .quick-input-title", { hasText: "Save Drawing" }).waitFor();
    await page.locator(".quick-input-widget .quick-input-action", { hasText: "OK" }).click();
    const told = page.locator(".notification-list-item", {
      hasText: "Saved boathouse-mess-chair.svg",
    });
    await told.locator(".monaco-button", { hasText: "Open" }).click();
    await page.locator('.tab.active[data-resource-name="boathouse-mess-chair.svg"]').waitFor();
    await page.locator(".editor-instance .view-line", { hasText: "<svg" }).first().waitFor();
    await page.locator(".editor-instance .view-line", { hasText: "&lt;img src=x" }).first().waitFor();
  });

  it("is put on a page to print, to a usual scale", async () => {
    const { page, run } = at();
    await page.locator('.tab[data-resource-name="boathouse-mess-chair.chair"]').click();
    await run("Seatwright: Print Drawing");
    await page.locator(".quick-input-list .monaco-list-row", { hasText: /A41 : 10/ }).click();
    await page.locator(".quick-input-widget .quick-input-title", { hasText: "Save Page to Print" }).waitFor();
    await page.locator(".quick-input-widget .quick-input-action", { hasText: "OK" }).click();
    const told = page.locator(".notification-list-item", {
      hasText: "Saved boathouse-mess-chair.html",
    });
    await told.waitFor();
    expect(await told.textContent()).toContain("at 1 : 10 on A4");
    await page
      .locator(".explorer-folders-view .monaco-list-row", { hasText: "boathouse-mess-chair.html" })
      .waitFor();
  });

  it("comes back after the window is loaded anew, with the view and its size as they were", async () => {
    const { page, panel, run } = at();
    await run("Seatwright: Look at the Side View");
    // Its neighbours stay out of it.
    await expect.poll(() => panel.locator("#sheet > svg > .view").count()).toBe(1);
    await run("Seatwright: Show Sitter");
    await panel.locator(".view.side .overlay.sitter.body").waitFor();
    await panel.locator("#sheet").focus();
    await page.keyboard.press("+");
    await page.keyboard.press("ArrowDown");
    const looked = (await panel.locator("#sheet > svg").getAttribute("viewBox")) ?? "";
    // VS Code for the web puts what it keeps away every few seconds.
    await expect.poll(() => page.evaluate(keptBy), { timeout: 20_000 }).toContain(looked.split(" ")[0]);
    await page.reload();
    await panel.locator("svg .view.side").waitFor();
    expect(await panel.locator("#sheet > svg").getAttribute("viewBox")).toBe(looked);
    await panel.locator(".view.side .overlay.sitter.body").waitFor();
  });
}

/** Words of a drawing that lie on others, two by two, by the boxes that the browser gives them. */
function overlapping(svg: Element): string[] {
  const drawn = [...svg.querySelectorAll(".lettering text, .flags .board path")].map((element) => {
    const { left, right, top, bottom } = element.getBoundingClientRect();
    // A box of words reaches as far as the font's highest and lowest signs; these are letters and figures.
    const air = element.tagName === "text" ? (bottom - top) * 0.15 : 0;
    return { words: element.textContent ?? "", left, right, top: top + air, bottom: bottom - air };
  });
  return drawn.flatMap((a, k) =>
    drawn
      .slice(k + 1)
      .filter((b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom)
      .map((b) => `${a.words} on ${b.words}`),
  );
}

/** The contrast of a drawn line with the page behind it, as WCAG 2.2 defines it. */
function contrastOf(line: Locator): Promise<number> {
  return line.evaluate((drawn) => {
    const luminance = (colour: string) => {
      const [r = 0, g = 0, b = 0] = (colour.match(/[\d.]+/g) ?? []).slice(0, 3).map((each) => {
        const share = Number(each) / 255;
        return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
      });
      return 0.2126 * r + 0.7152 * g + 0.0722 * b;
    };
    const shown = luminance(getComputedStyle(drawn).stroke);
    const behind = luminance(getComputedStyle(document.body).backgroundColor);
    return (Math.max(shown, behind) + 0.05) / (Math.min(shown, behind) + 0.05);
  });
}
