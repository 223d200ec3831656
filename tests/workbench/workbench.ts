/**
 * A real VS Code for the web in headless Chromium, offline, as a maker would use it.
 */
import { type Browser, chromium, type FrameLocator, type Page } from "playwright-core";
import { hostWorkbench } from "../../.build/workbench/host.mjs";

export interface Workbench {
  page: Page;
  /** The drawing panel's page. */
  panel: FrameLocator;
  /** Opens a file from the folder by its name. */
  open(name: string): Promise<void>;
  /** Opens the drawing of the text in front, by the button over it. */
  openDrawing(): Promise<void>;
  /** Runs a command from the palette by its title. */
  run(title: string): Promise<void>;
  /** The same by keys alone. */
  runByKeys(title: string): Promise<void>;
  /** Shows the hover at the caret, and again if the editor puts it away before it is read, until it says this; gives all it says. */
  hover(says: string): Promise<string>;
  /** Puts the caret at the end of the first text found in the editor on the left, by way of Find. */
  find(text: string): Promise<void>;
  /** Opens what is offered at the caret, and again where VS Code puts it away, as when findings come anew; the first one is chosen. */
  offers(says: string | RegExp): Promise<void>;
  /** Clicks something that goes to a line of the text, and again if the caret does not come there. */
  goesTo(line: number, click: () => Promise<void>): Promise<void>;
  /** Addresses asked for that are not on this machine and were not answered by VS Code's own service worker. */
  strayRequests(): Promise<string[]>;
  close(): Promise<void>;
}

const chromiumPath = "/usr/bin/chromium";
const flags = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  // Whatever is asked of any other machine fails, so a test that passes has needed none.
  "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE localhost, EXCLUDE *.localhost, EXCLUDE 127.0.0.1",
];

/** Starts the workbench with these files in its folder and waits until they are listed. */
export async function openWorkbench(given: {
  files: Record<string, string>;
  settings?: Record<string, unknown>;
  /** The file that is open at first. */
  opens?: string;
}): Promise<Workbench> {
  return driveWorkbench(await hostWorkbench(given), Object.keys(given.files)[0] ?? "");
}

/** Opens a workbench that is being served, and waits until this file is listed; closing it stops the serving. */
export async function driveWorkbench(
  host: { address: string; close(): Promise<void> },
  listed: string,
): Promise<Workbench> {
  const browser: Browser = await chromium.launch({ executablePath: chromiumPath, args: flags });
  const page = await browser.newPage({ viewport: { width: 1400, height: 900 } });
  page.setDefaultTimeout(30_000);
  const answered: Promise<string | undefined>[] = [];
  page.on("request", (request) => answered.push(strayAddress(request)));
  await page.goto(host.address);
  await row(page, listed).waitFor();

  const workbench: Workbench = {
    page,
    panel: page.frameLocator("iframe.webview.ready").frameLocator("#active-frame"),
    async open(name) {
      await row(page, name).dblclick();
      await page.locator(`.tab.active[data-resource-name="${name}"]`).waitFor();
      await page.locator(".editor-instance .view-line").first().waitFor();
    },
    openDrawing: () =>
      page.locator('.editor-actions .action-label[aria-label*="Open Drawing"]').first().click(),
    async run(title) {
      await page.keyboard.press("F1");
      const input = page.locator(".quick-input-widget .quick-input-filter input[type=text]");
      await input.fill(`>${title}`);
      // Its whole name, so that none is taken that only begins so.
      const named = page.locator(`.quick-input-list .monaco-list-row[aria-label*="${title}"]`).first();
      await named.click();
    },
    async runByKeys(title) {
      const input = page.locator(".quick-input-widget .quick-input-filter input[type=text]");
      const row = `.monaco-list-row[aria-label*="${title}"]`;
      // The palette lists what could be run when it was opened: a command that came since is there at the next opening.
      for (let tries = 0; ; tries++) {
        await page.keyboard.press("F1");
        await input.waitFor();
        // All letters at once: the list is sought through after each.
        await page.keyboard.insertText(title);
        try {
          await page.locator(`.quick-input-list ${row}`).first().waitFor({ timeout: 5000 });
          break;
        } catch (error) {
          if (tries > 4) throw error;
          await page.keyboard.press("Escape");
          await page.locator(".quick-input-widget").first().waitFor({ state: "hidden" });
        }
      }
      // Commands that only begin so may stand before it, and the list may change under the first key.
      const chosen = page.locator(`.quick-input-list ${row}.focused`);
      await chosen.or(page.locator(".quick-input-list .monaco-list-row.focused")).first().waitFor();
      for (let tries = 0; (await chosen.count()) === 0 && tries < 50; tries++)
        await page.keyboard.press("ArrowDown");
      await page.keyboard.press("Enter");
    },
    async hover(says) {
      const shown = page.locator(".monaco-hover:not(.hidden) .hover-contents", { hasText: says }).first();
      for (let tries = 0; ; tries++) {
        await workbench.run("Show or Focus Hover");
        try {
          return (await shown.textContent({ timeout: 4000 })) ?? "";
        } catch (error) {
          if (tries > 4) throw error;
          await page.keyboard.press("Escape");
        }
      }
    },
    async find(text) {
      await page.keyboard.press("Control+1");
      await page.locator(".editor-instance .monaco-editor.focused").first().waitFor();
      const widget = page.locator(".find-widget.visible");
      await page.keyboard.press("Control+f");
      await widget.waitFor();
      await widget.locator(".find-part textarea").fill(text);
      const count = widget.locator(".matchesCount", { hasText: /of [1-9]/ });
      // Sought before: the words are already there and nothing was gone to.
      if ((await count.textContent())?.startsWith("?")) await page.keyboard.press("Enter");
      await widget.locator(".matchesCount", { hasText: /^\d+ of/ }).waitFor();
      // The caret goes back to the text when the widget goes, and not always at the first asking.
      for (;;) {
        await page.keyboard.press("Escape");
        await widget.waitFor({ state: "hidden" });
        // Two frames on: the widget shows and hides itself after the key, and may come back.
        const inText = await page.evaluate(async () => {
          const frame = () => new Promise(requestAnimationFrame);
          await frame();
          await frame();
          return (
            document.activeElement?.closest(".editor-instance:has(.monaco-editor)") !== null &&
            document.activeElement?.closest(".find-widget") === null &&
            document.querySelector(".find-widget.visible") === null
          );
        });
        if (inText) break;
      }
      await page.keyboard.press("ArrowRight");
    },
    async offers(says) {
      const chosen = page.locator(".action-widget .monaco-list-row.action.focused", { hasText: says });
      for (let tries = 0; ; tries++) {
        await page.keyboard.press("Control+.");
        try {
          return await chosen.waitFor({ timeout: 8000 });
        } catch (error) {
          if (tries > 8) throw error;
          await page.keyboard.press("Escape");
        }
      }
    },
    async goesTo(line, click) {
      const caret = page.locator(".statusbar-item", { hasText: `Ln ${line}, ` });
      for (let tries = 0; ; tries++) {
        await click();
        try {
          return await caret.waitFor({ timeout: 8000 });
        } catch (error) {
          if (tries > 2) throw error;
        }
      }
    },
    strayRequests: async () => (await Promise.all(answered)).filter((address) => address !== undefined),
    async close() {
      await browser.close();
      await host.close();
    },
  };
  return workbench;
}

function row(page: Page, name: string) {
  return page.locator(".explorer-folders-view .monaco-list-row", { hasText: name }).first();
}

async function strayAddress(request: import("playwright-core").Request): Promise<string | undefined> {
  const { protocol, hostname } = new URL(request.url());
  if (!/^(https?|wss?):$/.test(protocol)) return undefined;
  if (hostname === "127.0.0.1" || /(^|\.)localhost$/.test(hostname)) return undefined;
  const response = await request.response().catch(() => null);
  return response?.fromServiceWorker() ? undefined : request.url();
}
