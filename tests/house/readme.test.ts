/**
 * The chairs that the README shows: whole ones are without findings, and what is said of them is true.
 */
import { describe, expect, it } from "vitest";
import { studied } from "../check.ts";
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
