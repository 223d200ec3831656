/**
 * The chairs that the README shows: whole ones are without findings, and what is said of them is true.
 */
import { describe, expect, it } from "vitest";
import { studied } from "../check.ts";
import { chairs as laidDown, seatwright } from "../server/main/cli/bench.ts";
import { read } from "./project-files.ts";

const chairs = [...read("README.md").matchAll(/```chair\n([\s\S]*?)```/g)].map(([, text]) => text ?? "");

describe("the README's first chair", () => {
  const { problems, chair } = studied(chairs[0] ?? "");

  it("is without findings", () => {
    expect(problems.map(({ code, message }) => `${code}: ${message}`)).toEqual([]);
  });

  it("has feet that stand wider than its seat, from front to back and across", () => {
    const posts = [...chair.posts.values()];
    const span = (axis: 0 | 1, end: "foot" | "top") => {
      const places = posts.map((post) => post[end][axis]);
      return Math.max(...places) - Math.min(...places);
    };
    expect(posts).toHaveLength(4);
    expect(span(0, "foot")).toBeGreaterThan(span(0, "top"));
    expect(span(1, "foot")).toBeGreaterThan(span(1, "top"));
  });
});

describe("the README's chair on a solid seat", () => {
  const text = chairs.find((each) => each.includes("seat solid")) ?? "";
  const { problems, chair } = studied(text);

  it("is without findings, and leans and is bored as is said", () => {
    expect(problems.map(({ code, message }) => `${code}: ${message}`)).toEqual([]);
    const value = (name: string) => chair.values.get(`front-leg.left.${name}`)!.number;
    const degrees = (name: string) => ((value(name) * 180) / Math.PI).toFixed(1);
    const said = read("README.md");
    expect(said).toContain(
      `lean ${degrees("lean")}° from square to the seat, on a sight line ${degrees("sight-line")}°`,
    );
    expect(said).toContain(`bevel is set to ${(90 - Number(degrees("lean"))).toFixed(1)}°`);
    expect(said).toContain(`bores are ${value("bore-depth").toFixed(1)} mm deep`);
  });
});

/** The block that follows these words of the README, line by line; a line that is cut short ends in `…`. */
function shown(after: string): string[] {
  const text = read("README.md");
  const block = /```\n([\s\S]*?)```/.exec(text.slice(text.indexOf(after)))?.[1];
  return block?.trimEnd().split("\n") ?? [];
}

describe("what the README shows of a command's words", () => {
  const sample = read("samples/boathouse-mess-chair.chair");
  const path = laidDown({
    "old.chair": sample,
    "new.chair": sample.replace("kick 4deg below 100", "kick 5deg below 100"),
    "boathouse-joints.chair": read("samples/boathouse-joints.chair"),
  });

  it("of stand stands there", () => {
    const { out } = seatwright("stand", path("old.chair"));
    const lines = shown("says of tipping");
    expect(lines.length).toBeGreaterThan(8);
    expect(out).toContain(`${lines.join("\n")}\n`);
  });

  it("of compare stands there line by line", () => {
    const { out } = seatwright("compare", path("old.chair"), path("new.chair"));
    const lines = shown("## What a change comes to").filter((line) => !/^\s*…?$/.test(line));
    expect(lines.length).toBeGreaterThan(6);
    const words = (line: string) => line.trim().replace(/\s+/g, " ");
    const said = out.replaceAll(/\s+/g, " ");
    for (const line of lines) for (const piece of words(line).split(/\s*…\s*/)) expect(said).toContain(piece);
  });
});
