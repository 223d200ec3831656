import { describe, expect, it } from "vitest";
import { defaultSettings, readSettings } from "../../../server/editor/settings.ts";

describe("settings", () => {
  it("take what is given and the defaults for the rest", () => {
    expect(readSettings({ rules: { "rake-over-limit": "off" }, inlayHints: { bevels: true } })).toEqual({
      ...defaultSettings,
      rules: { "rake-over-limit": "off" },
      inlayHints: { ...defaultSettings.inlayHints, bevels: true },
    });
  });

  it("lose only the value that is wrong", () => {
    expect(
      readSettings({ rules: { a: "loud", b: "hint" }, codeLens: "yes", problemLimit: -1, inlayHints: 7 }),
    ).toEqual({
      ...defaultSettings,
      rules: { b: "hint" },
    });
  });

  it.each([undefined, null, 7, "x", []])("are the defaults for %j", (given) => {
    expect(readSettings(given)).toEqual(defaultSettings);
  });
});
