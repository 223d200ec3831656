/**
 * Dependencies point one way, and only the rooms by the door see the outside world.
 */
import { builtinModules } from "node:module";
import { describe, expect, it } from "vitest";
import { type Module, readModule } from "./module.ts";
import { projectFiles, read } from "./project-files.ts";

/** The rooms from top to bottom; those on one line may see each other. A path belongs to the last room that it begins with. */
const rooms = [
  ["grammar/", "server/geometry/"],
  ["server/design/"],
  ["server/chair/"],
  ["server/joinery/", "server/sitter/", "server/solids/", "server/boards/"],
  ["server/timber/"],
  ["server/floor/"],
  ["server/strength/"],
  ["server/rules/"],
  ["server/settle.ts", "server/study.ts"],
  ["server/drawing/"],
  ["server/exports/"],
  ["server/sensitivity/", "server/compare/"],
  ["server/range/"],
  ["server/mends/"],
  ["server/editor/"],
  ["server/main/"],
  ["client/"],
];

const modules = projectFiles()
  .filter((path) => /^(grammar|server|client)\/.*\.ts$/.test(path) && !path.endsWith(".d.ts"))
  .map((path) => readModule(path, read(path)));

const pure = modules.filter(({ path }) => !/^(client|server\/main)\//.test(path));

const rankOf = (path: string) => rooms.findIndex((names) => names.some((name) => path.startsWith(name)));

/** One line for each import that a rule forbids. */
function offences(
  among: Module[],
  forbids: (given: { path: string } & Module["imports"][number]) => boolean,
) {
  return among.flatMap(({ path, imports }) =>
    imports.filter((each) => forbids({ path, ...each })).map(({ from }) => `${path} imports ${from}`),
  );
}

describe("rooms", () => {
  it("are all known", () => {
    expect(modules.map(({ path }) => path).filter((path) => rankOf(path) < 0)).toEqual([]);
    expect(modules.length).toBeGreaterThan(20);
  });

  it("import only from rooms above them", () => {
    expect(
      offences(modules, ({ path, from, own }) => own && isRoom(from) && rankOf(from) > rankOf(path)),
    ).toEqual([]);
  });

  it("import no file of the tests or the build", () => {
    expect(offences(modules, ({ from, own }) => own && !isRoom(from) && from !== "package.json")).toEqual([]);
  });

  it("hold geometry that imports nothing of ours", () => {
    const geometry = modules.filter(({ path }) => path.startsWith("server/geometry/"));
    expect(offences(geometry, ({ from, own }) => own && !from.startsWith("server/geometry/"))).toEqual([]);
  });

  it("hold a grammar that imports only itself", () => {
    const grammar = modules.filter(({ path }) => path.startsWith("grammar/"));
    expect(offences(grammar, ({ from, own }) => own && !from.startsWith("grammar/"))).toEqual([]);
  });

  it("have no circle of imports, those of types alone included", () => {
    expect(circles(modules)).toEqual([]);
  });
});

describe("the outside world", () => {
  it("gives no Node module to grammar or server outside main", () => {
    expect(offences(pure, ({ from }) => from.startsWith("node:") || builtinModules.includes(from))).toEqual(
      [],
    );
  });

  it("gives no timer, clock, network or process to grammar or server outside main", () => {
    const forbidden = [
      "setTimeout setInterval setImmediate queueMicrotask requestAnimationFrame Date performance",
      "fetch XMLHttpRequest WebSocket process console require globalThis self window navigator",
    ].flatMap((names) => names.split(" "));
    const uses = pure.flatMap(({ path, globals }) =>
      forbidden.filter((name) => globals.has(name)).map((name) => `${path} uses ${name}`),
    );
    expect(uses).toEqual([]);
  });

  it("is VS Code only to the client", () => {
    const others = modules.filter(({ path }) => !path.startsWith("client/"));
    expect(
      offences(others, ({ from }) => from === "vscode" || from.startsWith("vscode-languageclient")),
    ).toEqual([]);
  });

  it("is a connection only to server/main", () => {
    const connections = /^vscode-(languageserver(-protocol)?|jsonrpc)(\/|$)/;
    expect(offences(pure, ({ from, typeOnly }) => connections.test(from) && !typeOnly)).toEqual([]);
  });

  it("is only drawing to the panel's own script: nothing that reads, works out or connects", () => {
    const webview = modules.filter(({ path }) => path.startsWith("client/panel/webview/"));
    const allowed = /^(client\/panel\/webview|server\/drawing)\//;
    expect(offences(webview, ({ from, typeOnly }) => !typeOnly && !allowed.test(from))).toEqual([]);
  });
});

describe("reading a module", () => {
  const { imports, globals } = readModule(
    "server/editor/made-up.ts",
    `
      import type { A } from "vscode";
      import { type B } from "../main/b.ts";
      import { c } from "./c.ts";
      export * from "../../grammar/d.ts";
      type E = import("node:fs").Stats;
      export const later = (at: { Date: number }) => setTimeout(() => at.Date, new Map().size);
      const fs = await import("node:path");
    `,
  );

  it("finds imports of every form", () => {
    expect(imports.map(({ from, typeOnly }) => [from, typeOnly])).toEqual([
      ["vscode", true],
      ["server/main/b.ts", true],
      ["server/editor/c.ts", false],
      ["grammar/d.ts", false],
      ["node:fs", true],
      ["node:path", false],
    ]);
  });

  it("tells the clock from a date that is given", () => {
    const uses = (text: string) => readModule("grammar/made-up.ts", text).globals.has("Date");
    expect(["Date.now()", "new Date()", "Date()"].map(uses)).toEqual([true, true, true]);
    expect(['new Date("2026-03-14")', "Date.UTC(2026, 2, 14)"].map(uses)).toEqual([false, false]);
  });

  it("tells a global from a property of the same name", () => {
    expect(globals).toContain("setTimeout");
    expect(globals).not.toContain("Date");
  });
});

function isRoom(path: string): boolean {
  return /^(grammar|server|client)\//.test(path);
}

/** Circles by way of imports that remain at run time, each told once. */
function circles(among: Module[]): string[] {
  const next = new Map(
    among.map(({ path, imports }) => [path, imports.filter(({ own }) => own).map(({ from }) => from)]),
  );
  const done = new Set<string>();
  const found: string[] = [];
  const walk = (path: string, trail: string[]) => {
    const at = trail.indexOf(path);
    if (at >= 0) found.push([...trail.slice(at), path].join(" → "));
    if (at >= 0 || done.has(path)) return;
    for (const each of next.get(path) ?? []) walk(each, [...trail, path]);
    done.add(path);
  };
  for (const path of next.keys()) walk(path, []);
  return found;
}
