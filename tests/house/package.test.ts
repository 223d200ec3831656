/**
 * What is shipped, and how large it is. Looks at the bundles as `npm test` or `npm run build` left them.
 */

import { execFileSync } from "node:child_process";
import { readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { beforeAll, describe, expect, it } from "vitest";
import { bundles } from "../../.build/bundles.mjs";
import { packagedFiles } from "../../.build/package.mjs";
import { rules } from "../../server/rules/index.ts";
import { examples } from "../rule-examples.ts";
import { read, root } from "./project-files.ts";

const manifest = JSON.parse(read("package.json"));

describe("the package", () => {
  let files: string[];

  // Asked for once: packing takes a while.
  beforeAll(async () => {
    files = await packagedFiles();
  });

  it("holds the bundles, what the manifest names, the samples and the papers, and nothing else", () => {
    const expected = [
      /^(package\.json|package\.nls\.json|README\.md|DEVELOPERS\.md|CHANGELOG\.md|LICENSE\.txt)$/,
      /^(grammar|server\/rules|server\/strength)\/reference\.md$/,
      /^dist\/[a-z-]+\.js$/,
      /^dist\/(panel\.css|notices\.txt|explanations\.json)$/,
      /^dist\/letters\/noto-sans-[a-z-]+-(400|700)-normal\.woff$/,
      /^client\/l10n\/bundle\.l10n\.json$/,
      /^client\/(language-configuration|snippets)\.json$/,
      /^client\/walkthrough\/[a-z]+\.md$/,
      /^client\/(icons|pictures)\/[a-z-]+\.(png|svg)$/,
      /^grammar\/highlight\/chair\.tmLanguage\.json$/,
      /^samples\/[a-z-]+\.chair$/,
    ];
    expect(files.filter((file) => !expected.some((form) => form.test(file)))).toEqual([]);
    expect(expected.filter((form) => !files.some((file) => form.test(file)))).toEqual([]);
  });

  it("holds every bundle but the command line, which has a package of its own", () => {
    const scripts = files.filter((file) => /^dist\/.*\.js$/.test(file));
    const wanted = Object.keys(bundles).filter(
      (name) => name.endsWith(".js") && name !== "cli.js" && name !== "stdio.js",
    );
    expect(scripts.sort()).toEqual(wanted.map((name) => `dist/${name}`).sort());
  });

  it("holds every file that the manifest names", () => {
    const { main, browser, icon, contributes } = manifest;
    const named = [
      main,
      browser,
      icon,
      ...contributes.languages.flatMap((each: { configuration: string; icon: Record<string, string> }) => [
        each.configuration,
        ...Object.values(each.icon),
      ]),
      ...contributes.grammars.map((each: { path: string }) => each.path),
      ...contributes.walkthroughs.flatMap((each: { steps: { media: { markdown: string } }[] }) =>
        each.steps.map(({ media }) => media.markdown),
      ),
    ].map((path: string) => path.replace(/^\.\//, ""));
    expect(files).toEqual(expect.arrayContaining(named));
  });

  it("holds every file and picture that its page shows or leads to", () => {
    const named = [...read("README.md").matchAll(/\]\(([^):#]+)\)/g)].map(([, path]) => path!);
    expect(named.length).toBeGreaterThan(5);
    expect(
      named.filter((path) => !files.some((file) => file === path || file.startsWith(`${path}/`))),
    ).toEqual([]);
  });

  it("holds what a server reads when a rule is to be explained", () => {
    expect(files).toContain("dist/explanations.json");
  });

  it("takes no part in what its dependencies carry: they are bundled", () => {
    expect(files.filter((file) => file.includes("node_modules"))).toEqual([]);
  });
});

describe("the bundles", () => {
  /** Gzipped size in kB that each may reach. */
  const ceilings: Record<string, number> = {
    "server.js": 400,
    "server-web.js": 400,
    "cli.js": 400,
    "stdio.js": 400,
    "strength.js": 55,
    "strength-web.js": 55,
    "markout.js": 355,
    "markout-web.js": 355,
    "export.js": 320,
    "export-web.js": 320,
    "boards.js": 330,
    "boards-web.js": 260,
    "client.js": 150,
    "client-web.js": 140,
    "panel.js": 20,
    "panel-boards.js": 3,
    "panel-strength.js": 2,
    "panel-pictorial.js": 12,
    "panel.css": 4,
  };

  it("are all measured", () => {
    expect(Object.keys(ceilings).sort()).toEqual(Object.keys(bundles).sort());
  });

  for (const [name, most] of Object.entries(ceilings)) {
    it(`${name} stays under ${most} kB gzipped`, () => {
      expect(gzipSync(readFileSync(join(root, "dist", name))).length / 1000).toBeLessThan(most);
    });
  }

  it("have every rule's example beside the command line, none in the servers, and no explanation in what makes sheets, files and plans", () => {
    const command = [join(root, "dist", "cli.js"), "explain", "tenon-too-thin"];
    expect(execFileSync(process.execPath, command, { encoding: "utf8" })).toContain("    joint plain {");
    const copied = readdirSync(join(root, "dist", "examples")).sort();
    expect(copied).toEqual(examples.map(({ code }) => `${code}.chair`).sort());
    for (const name of ["markout.js", "export-web.js", "boards.js"])
      for (const { explanation } of rules)
        expect(readFileSync(join(root, "dist", name), "utf8")).not.toContain(explanation.slice(0, 60));
    for (const name of ["server.js", "server-web.js"])
      expect(readFileSync(join(root, "dist", name), "utf8")).not.toContain("joint plain");
    const late = Object.values<string>(JSON.parse(read("dist/explanations.json")));
    expect(late.length).toBeGreaterThan(100);
    for (const name of ["server.js", "stdio.js", "cli.js"]) {
      const code = read(`dist/${name}`);
      expect(late.filter((text) => code.includes(text))).toEqual([]);
    }
  });

  it("go with the licences of the libraries in them", () => {
    const notices = readFileSync(join(root, "dist", "notices.txt"), "utf8");
    for (const [name, licence] of [
      ["chevrotain", "Apache License"],
      ["vscode-languageclient", "MIT"],
      ["zod", "MIT"],
      ["pdfkit", "MIT"],
    ] as const)
      expect(notices).toMatch(
        new RegExp(`^${name} [0-9.]+ \\(${licence.split(" ")[0]}[\\s\\S]*?${licence}`, "m"),
      );
  });

  it("go with the notice of the fonts' metrics in them", () => {
    const notices = readFileSync(join(root, "dist", "notices.txt"), "utf8");
    for (const name of ["Helvetica.afm", "Helvetica-Bold.afm"]) {
      const metrics = readFileSync(join(root, "node_modules", "pdfkit", "js", "data", name), "utf8");
      const [copyright] = /Copyright[^\r\n]*/.exec(metrics) ?? [];
      expect(copyright).toContain("Adobe");
      expect(notices).toContain(copyright);
    }
  });

  it("make a command line that can be run as a program", () => {
    expect(readFileSync(join(root, manifest.bin.seatwright), "utf8")).toMatch(/^#!\/usr\/bin\/env node\n/);
    expect(statSync(join(root, manifest.bin.seatwright)).size).toBeGreaterThan(1000);
  });
});
