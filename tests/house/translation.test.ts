/**
 * Ready to be translated: whatever findings, their mends and the editor's windows say stands in one list, and the manifest's words in
 * another. With SEATWRIGHT_UPDATE set in the environment the list is written anew.
 */
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { t } from "@vscode/l10n";
import { afterEach, describe, expect, it } from "vitest";
import { parse } from "../../grammar/parser.ts";
import { editorEnglish } from "../../grammar/sentences/editor-sentence.ts";
import { english as findingsSay, sentence } from "../../grammar/sentences/sentence.ts";
import { said, speak } from "../../grammar/sentences/speech.ts";
import { vocabulary } from "../../grammar/vocabulary/index.ts";
import { projectFiles, read, root } from "./project-files.ts";

const bundle = "client/l10n/bundle.l10n.json";
const sources = projectFiles().filter((path) => /^(grammar|server|client)\/.*\.ts$/.test(path));
const texts = sources.map(read);

/** What the editor's own windows say: the first argument of each `l10n.t`. */
const clientSays = sources
  .filter((path) => path.startsWith("client/"))
  .flatMap((path) => [...read(path).matchAll(/l10n\.t\(\s*("(?:[^"\\]|\\.)*"|'(?:[^'\\]|\\.)*')/g)])
  .map(([, quoted]) => quoted!.slice(1, -1).replaceAll('\\"', '"'));

const english = { ...findingsSay, ...editorEnglish };

const placeholders = (text: string): string[] => [...text.matchAll(/\{(\w+)\}/g)].map(([, name]) => name!);

describe("what a translation translates", () => {
  afterEach(() => speak({}));

  it("is listed whole for translators", () => {
    const all = [...new Set([...Object.values(english), ...clientSays])].sort();
    const wanted = `${JSON.stringify(Object.fromEntries(all.map((text) => [text, text])), null, 2)}\n`;
    if (process.env.SEATWRIGHT_UPDATE !== undefined) writeFileSync(join(root, bundle), wanted);
    expect(read(bundle)).toBe(wanted);
    expect(clientSays.length).toBeGreaterThan(40);
  });

  it("is used: each sentence of the catalogue has its place in the code", () => {
    const all = texts.join("\n");
    const beginnings = [...all.matchAll(/`([a-z][\w. -]*[.-])\$\{/g)].map(([, beginning]) => beginning!);
    const idle = Object.keys(english).filter(
      (key) => !all.includes(`"${key}"`) && !beginnings.some((beginning) => key.startsWith(beginning)),
    );
    expect(idle).toEqual([]);
  });

  it("is where rules take what they say from: none writes a message or a remedy out", () => {
    const written = /\b(?:message|otherwise):\s*(?:[^,;(]*[?:]\s*)?["`]/;
    const rules = sources.filter((path) => path.startsWith("server/rules/"));
    expect(rules.filter((path) => written.test(read(path)))).toEqual([]);
    expect(rules.length).toBeGreaterThan(80);
  });

  it("is where reading a chair and building it take what they say from: no sentence is written out there", () => {
    // Titles and explanations of the codes are the reference's, as rules' are.
    const rooms = sources.filter(
      (path) => /^server\/(?:design|chair)\//.test(path) && !path.endsWith("codes.ts"),
    );
    const written = rooms.flatMap((path) =>
      read(path)
        .split("\n")
        .filter((line) => !/^\s*(?:\*|\/[/*])|throw |Error\(/.test(line))
        .filter((line) => /(["`])(?:(?!\1).)*(?:[a-z]+,? ){4}(?:(?!\1).)*\1/.test(line))
        .map((line) => `${path}: ${line.trim()}`),
    );
    expect(written).toEqual([]);
    expect(rooms.length).toBeGreaterThan(100);
  });

  it("gets every value that it names, where the code names them one by one", () => {
    const lacking = texts.flatMap((text, at) =>
      [...text.matchAll(/\b(?:s|editorS)entence\(\s*"([^"]+)"\s*(?:,\s*\{([^{}`]*)\}\s*,?\s*)?\)/g)].flatMap(
        ([, key, values = ""]) => {
          const given = [...values.matchAll(/(?:^|,)\s*(\w+)/g)].map(([, name]) => name);
          if (values.includes("...")) return [];
          return placeholders(english[key as keyof typeof english] ?? "")
            .filter((name) => !given.includes(name))
            .map((name) => `${sources[at]}: ${key} lacks ${name}`);
        },
      ),
    );
    expect(lacking).toEqual([]);
  });

  it("is said in place of the English, and English stays where it lacks something", () => {
    speak({ [english["conflict-marker"]]: "Merke av en fletting.", "{part} {x}": "never said" });
    const { problems } = parse('chair "c"\n<<<<<<< ours\n}\n', vocabulary);
    const said = problems.map(({ code, message }) => [code, message]);
    expect(said).toContainEqual(["conflict-marker", "Merke av en fletting."]);
    expect(said).toContainEqual(["stray-brace", english["stray-brace"]]);
  });

  it("is filled in as the editor's own library does it", () => {
    for (const text of Object.values(english)) {
      const values = Object.fromEntries(placeholders(text).map((name) => [name, `<${name} $1>`]));
      expect(said(text, values)).toBe(t(text, values));
    }
  });

  it("keeps the values in another order", () => {
    speak({ [english["wrong-kind.value"]]: "{kind}: {name}" });
    expect(sentence("wrong-kind.value", { name: "front", kind: "a post" })).toBe("a post: front");
  });
});

describe("the manifest", () => {
  it("takes its words from the list that a translation replaces, and the list holds no others", () => {
    const named = [...read("package.json").matchAll(/"%([^%"]+)%"/g)].map(([, key]) => key!);
    expect([...new Set(named)].sort()).toEqual(Object.keys(JSON.parse(read("package.nls.json"))).sort());
    const { contributes, l10n } = JSON.parse(read("package.json"));
    expect(l10n).toBe("./client/l10n");
    for (const { title } of contributes.commands) expect(title).toMatch(/^%.*%$/);
  });
});
