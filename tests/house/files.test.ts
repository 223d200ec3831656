/**
 * What the checkout may hold.
 */
import { readdirSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { isMade, projectFiles, read, root } from "./project-files.ts";

const files = projectFiles();
const texts = files.filter((path) => !/\.(png|vsix)$/.test(path) && path !== "package-lock.json");

describe("the checkout", () => {
  it("has the fixed top level", () => {
    const allowed = "README.md DEVELOPERS.md package.json tsconfig.json client server grammar tests samples";
    const beside = "LICENSE.txt CHANGELOG.md package-lock.json package.nls.json";
    const top = readdirSync(root).filter((name) => !name.startsWith(".") && !isMade(name));
    const known = `${allowed} ${beside}`.split(" ");
    expect(top.filter((name) => !known.includes(name))).toEqual([]);
    expect(top).toEqual(expect.arrayContaining(["README.md", "package.json", "client", "server", "grammar"]));
  });

  it("has no source file over 500 lines", () => {
    const sources = files.filter((path) => /\.(ts|mjs|js|css)$/.test(path));
    const long = sources.filter((path) => read(path).split("\n").length > 501);
    expect(long).toEqual([]);
  });

  it("names no registry in the lock file", () => {
    const { packages } = JSON.parse(read("package-lock.json")) as {
      packages: Record<string, { resolved?: string }>;
    };
    expect(Object.keys(packages).length).toBeGreaterThan(100);
    expect(Object.keys(packages).filter((path) => packages[path]?.resolved)).toEqual([]);
  });

  it("has the same packages in the manifest and the lock file", () => {
    const { dependencies, devDependencies } = JSON.parse(read("package.json"));
    const lock = JSON.parse(read("package-lock.json")).packages[""];
    expect(lock.dependencies).toEqual(dependencies);
    expect(lock.devDependencies).toEqual(devDependencies);
  });

  // Written in pieces, so that this file does not find itself.
  const forbidden = {
    "a path of one machine": new RegExp(`/(${["work", "root", "home"].join("|")})/[a-z]|/${"tmp"}/[a-z]`),
    "a note of unfinished work": new RegExp(`\\b(${["TO" + "DO", "FIX" + "ME", "X" + "XX"].join("|")})\\b`),
    "a registry host": new RegExp(["registry", "npmjs", "org"].join("\\.")),
  };
  for (const [what, pattern] of Object.entries(forbidden)) {
    it(`holds no text with ${what}`, () => {
      expect(texts.filter((path) => pattern.test(read(path)))).toEqual([]);
    });
  }
});
