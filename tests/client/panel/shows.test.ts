import { afterEach, expect, it, vi } from "vitest";
import { createShows, overlaysOn } from "../../../client/panel/webview/shows.ts";
import { overlayNames } from "../../../server/drawing/sheet.ts";

/** As much of a page as the switches ask for. */
function standInPage() {
  const classes = new Set<string>();
  class Button {
    textContent = "";
    title = "";
    pressed = "";
    press: () => void = () => {};
    setAttribute(name: string, value: string) {
      if (name === "aria-pressed") this.pressed = value;
    }
    addEventListener(event: string, heard: () => void) {
      if (event === "click") this.press = heard;
    }
  }
  const buttons: Button[] = [];
  vi.stubGlobal("document", {
    createElement: () => new Button(),
    body: {
      classList: { toggle: (name: string, on: boolean) => (on ? classes.add(name) : classes.delete(name)) },
    },
  });
  const place = { replaceChildren: (...children: Button[]) => buttons.push(...children) };
  const changes: string[][] = [];
  return {
    classes,
    changes,
    fill: (turned: string[]) =>
      createShows({
        place: place as unknown as HTMLElement,
        turned,
        changed: (now) => changes.push(now),
      }),
    button(label: string): Button {
      const found = buttons.find(({ textContent }) => textContent === label);
      if (!found) throw new Error(`there is no switch ${label}`);
      return found;
    },
  };
}

afterEach(() => {
  vi.unstubAllGlobals();
});

it("findings and values are shown at first, overlays are not", () => {
  const page = standInPage();
  page.fill([]);
  expect(page.button("Findings").pressed).toBe("true");
  expect(page.button("Values").pressed).toBe("true");
  for (const name of overlayNames) expect(page.classes).toContain(`without-${name}`);
  expect(page.classes).not.toContain("without-findings");
});

it("a switch turns what it shows on and off again, and what was turned is told each time", () => {
  const page = standInPage();
  page.fill([]);
  page.button("Floor").press();
  expect(page.button("Floor").pressed).toBe("true");
  expect(page.classes).not.toContain("without-floor");
  page.button("Findings").press();
  expect(page.classes).toContain("without-findings");
  page.button("Floor").press();
  expect(page.classes).toContain("without-floor");
  expect(page.changes).toEqual([["floor"], ["floor", "findings"], ["findings"]]);
});

it("switches are as they were left", () => {
  const page = standInPage();
  page.fill(["sitter", "findings"]);
  expect(page.button("Sitter").pressed).toBe("true");
  expect(page.button("Findings").pressed).toBe("false");
  expect(page.button("Floor").pressed).toBe("false");
});

it("only the overlays that are turned on are asked for", () => {
  expect(overlaysOn([])).toEqual([]);
  expect(overlaysOn(["sitter", "findings"])).toEqual(["sitter"]);
  expect([...overlaysOn(["sitter", "floor"])].sort()).toEqual(["floor", "sitter"]);
});
