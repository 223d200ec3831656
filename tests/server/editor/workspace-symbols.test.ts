import { describe, expect, it } from "vitest";
import { workspaceSymbols } from "../../../server/editor/workspace-symbols.ts";
import { at } from "./frame.ts";
import { plainView } from "./view.ts";

const views = [
  at("chair|").view,
  plainView("joint far-tenon {\n  tenon thick 8, long 20\n}\npost front {", "file:///mess/joints.chair"),
];
const found = (query: string) =>
  workspaceSymbols(views, query).map(({ name, containerName }) => `${name} in ${containerName}`);

describe("symbols of the workspace", () => {
  it("finds things by letters in order, the best fit first", () => {
    expect(found("front")).toEqual([
      "front in Mess frame",
      "front in joints.chair",
      "seat-front in Mess frame",
    ]);
    expect(found("RTEN")).toEqual(["rail-tenon in Mess frame", "far-tenon in joints.chair"]);
    expect(found("zzz")).toEqual([]);
  });

  it("lists everything when nothing is asked", () => {
    expect(found("")).toHaveLength(9 + 2);
  });
});
