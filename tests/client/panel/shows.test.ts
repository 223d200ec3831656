import { expect, it } from "vitest";
import { overlaysOn, shows } from "../../../client/panel/webview/shows.ts";
import { overlayNames } from "../../../server/drawing/sheet.ts";

it("every overlay has its switch, off at first, and is asked for once it is turned", () => {
  expect(shows.filter(({ name }) => overlayNames.some((each) => each === name)).map(({ on }) => on)).toEqual(
    overlayNames.map(() => false),
  );
  expect(overlaysOn([])).toEqual([]);
  expect(overlaysOn(["sitter", "findings"])).toEqual(["sitter"]);
  expect(overlaysOn(["sitter", "floor"])).toEqual(["floor", "sitter"]);
});
