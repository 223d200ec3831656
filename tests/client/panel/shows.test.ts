import { afterEach, describe, expect, it, vi } from "vitest";
import {
  lookCommand,
  lookNames,
  showCommand,
  showKey,
  shows,
} from "../../../client/panel/webview/showable.ts";
import { createShows, overlaysOn, shownOf } from "../../../client/panel/webview/shows.ts";
import { overlayNames } from "../../../server/drawing/sheet.ts";
import { read } from "../../house/project-files.ts";

/** As much of a page as is asked for. */
function standInPage() {
  const classes = new Set<string>();
  vi.stubGlobal("document", {
    body: {
      classList: { toggle: (name: string, on: boolean) => (on ? classes.add(name) : classes.delete(name)) },
    },
  });
  const changes: string[][] = [];
  return {
    classes,
    changes,
    fill: (turned: string[]) => createShows({ turned, changed: (now) => changes.push(now) }),
  };
}

afterEach(() => {
  vi.unstubAllGlobals();
});

it("findings and values are shown at first, overlays are not", () => {
  const page = standInPage();
  page.fill([]);
  for (const name of overlayNames) expect(page.classes).toContain(`without-${name}`);
  expect(page.classes).not.toContain("without-findings");
  expect(page.classes).not.toContain("without-rules");
});

it("what is turned on and off again is told each time, and nothing where it is so already", () => {
  const page = standInPage();
  const { turn } = page.fill([]);
  turn("floor", true);
  expect(page.classes).not.toContain("without-floor");
  turn("floor", true);
  turn("findings", false);
  expect(page.classes).toContain("without-findings");
  turn("floor", false);
  expect(page.classes).toContain("without-floor");
  expect(page.changes).toEqual([["floor"], ["floor", "findings"], ["findings"]]);
});

it("things are as they were left", () => {
  const page = standInPage();
  page.fill(["sitter", "findings"]);
  expect(page.classes).not.toContain("without-sitter");
  expect(page.classes).toContain("without-findings");
  expect(shownOf(["sitter", "findings"])).toEqual(["rules", "sitter"]);
});

it("only the overlays that are turned on are asked for", () => {
  expect(overlaysOn([])).toEqual([]);
  expect(overlaysOn(["sitter", "findings"])).toEqual(["sitter"]);
  expect([...overlaysOn(["sitter", "floor"])].sort()).toEqual(["floor", "sitter"]);
});

interface Item {
  command?: string;
  when?: string;
}

describe("the manifest", () => {
  const { contributes } = JSON.parse(read("package.json")) as {
    contributes: {
      commands: { command: string; enablement?: string; icon?: string }[];
      submenus: { icon?: string }[];
      menus: Record<string, Item[]>;
    };
  };
  const enablement = (command: string) =>
    contributes.commands.find((each) => each.command === command)?.enablement ?? "missing";
  const inMenu = (menu: string, command: string) =>
    contributes.menus[menu]?.find((each) => each.command === command);

  it("has a command for each view, in the palette and in the menu of the title bar", () => {
    for (const name of lookNames) {
      expect(enablement(lookCommand(name))).toBe("seatwright.drawing.inSight");
      expect(inMenu("seatwright.drawing.views", lookCommand(name))).toBeDefined();
      expect(inMenu("commandPalette", lookCommand(name))?.when).toBe("seatwright.drawing.inSight");
    }
  });

  it("takes its icons from VS Code's own", () => {
    const known = read("node_modules/@vscode/codicons/dist/codicon.css");
    const icons = [...contributes.commands, ...contributes.submenus].flatMap(({ icon }) => icon ?? []);
    expect(icons.length).toBeGreaterThan(8);
    for (const icon of icons)
      expect(known).toContain(`.codicon-${/^\$\((.+)\)$/.exec(icon)?.[1] ?? icon}:before`);
  });

  it("has of each thing to show the one command that would change something", () => {
    for (const { name } of shows) {
      for (const on of [true, false]) {
        const key = `${on ? "!" : ""}${showKey(name)}`;
        expect(enablement(showCommand(name, on))).toBe(`seatwright.drawing.inSight && ${key}`);
        expect(inMenu("seatwright.drawing.shown", showCommand(name, on))?.when).toBe(key);
      }
    }
  });
});
