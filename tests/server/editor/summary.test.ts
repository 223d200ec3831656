import { describe, expect, it } from "vitest";
import { summary } from "../../../server/editor/summary.ts";
import { projectFiles, read } from "../../house/project-files.ts";
import { at } from "./frame.ts";
import { address, plainView } from "./view.ts";

describe("a file in a few words", () => {
  it("has its seat height in the file's units, and no back lean where there is no back", () => {
    const { seatHeight, backLean } = summary(at("chair").view);
    expect(seatHeight).toBe("428 mm");
    expect(backLean === undefined || /^-?\d+(\.\d)?°$/.test(backLean)).toBe(true);
  });

  it("tells what every sample is, in its own units", () => {
    const paths = projectFiles().filter((path) => /^samples\/.*\.chair$/.test(path));
    const files = Object.fromEntries(paths.map((path) => [path.slice("samples/".length), read(path)]));
    for (const path of paths) {
      const view = plainView(read(path), address, files);
      const told = summary(view);
      const isChair = view.study.chair.posts.size > 0;
      const unit = { mm: /^\d+(\.\d)? mm$/, cm: /^\d+(\.\d+)? cm$/, in: /^[\d /]+ in$/ }[
        view.study.design.units
      ];
      if (isChair) expect(told.seatHeight, path).toMatch(unit);
      expect(told.holds === undefined, path).toBe(isChair);
    }
    expect(summary(plainView(read("samples/boathouse-joints.chair"), address)).holds).toMatch(/^\d+ joints?/);
  });

  it("is nothing for an empty file", () => {
    expect(summary(plainView("", address))).toEqual({});
  });
});
