import { describe, expect, it } from "vitest";
import { finish } from "../../../grammar/steps.ts";
import { partsTold } from "../../../server/editor/about/parts-told.ts";
import { projectFiles, read } from "../../house/project-files.ts";
import { address, plainView } from "./view.ts";

const samples = projectFiles().filter((path) => /^samples\/.*\.chair$/.test(path));
const files = Object.fromEntries(samples.map((path) => [path.slice("samples/".length), read(path)]));
const view = (text: string) => plainView(text, address, files);
const mess = finish(partsTold(view(read("samples/boathouse-mess-chair.chair"))));
const told = (part: string) => mess.find((each) => each.part === part);

describe("each part in plain words", () => {
  it("has a post's length, leans and joints", () => {
    const back = told("back.left");
    expect(back).toMatchObject({
      title: "post back.left",
      description: "Sawn from one board, two legs nested.",
    });
    expect(back?.lines[0]).toMatch(/^Length 923\.1 mm/);
    expect(back?.lines.join("\n")).toMatch(/rake 6\.5° back/);
    expect(back?.lines.at(-1)).toBe(
      "Joined to seat-side.left, seat-back, side-stretcher.left, back-lower, crest",
    );
  });

  it("has a rail's section, length, joints and bevels", () => {
    const lines = told("seat-side.right")?.lines.join("\n");
    expect(lines).toMatch(/^22 mm × 70 mm, [\d.]+ mm between shoulders/);
    expect(lines).toMatch(/Into front\.right: face bevel [\d.]+° .*tenon 7\.3 mm × /);
  });

  it("has the seat's sizes as it stands", () => {
    expect(told("seat")).toMatchObject({ title: "seat drop-in" });
    expect(told("seat")?.lines[0]).toBe("Height at the front 439.7 mm");
  });

  it("is in the file's own units", () => {
    const text = read("samples/joined-stool.chair");
    const lines = finish(partsTold(view(text))).flatMap((each) => each.lines);
    expect(lines.join("\n")).toContain(/^units in$/m.test(text) ? " in" : " mm");
  });

  it("is of everything drawn, without any markup", () => {
    for (const path of samples) {
      const given = view(read(path));
      const all = finish(partsTold(given));
      expect(all).toHaveLength(given.study.chair.members.size);
      expect(all.flatMap(({ lines }) => lines).filter((line) => /[`*\\]/.test(line))).toEqual([]);
    }
  });
});
