/**
 * What documents and explanations show as lines of the language is read by it; what they say happens, happens.
 */
import { describe, expect, it } from "vitest";
import { parse } from "../../grammar/parser.ts";
import { vocabulary } from "../../grammar/vocabulary/index.ts";
import { rules } from "../../server/rules/index.ts";
import { studied } from "../check.ts";
import { samples } from "../proofs/mended-texts.ts";
import { projectFiles, read } from "./project-files.ts";

const pages = projectFiles().filter((path) => path.endsWith(".md") && !path.endsWith("reference.md"));
const blocks = pages.flatMap((path) =>
  [...read(path).matchAll(/```chair\n([\s\S]*?)```/g)].map(([, text]) => ({ path, text: text ?? "" })),
);
const isWhole = (text: string) => /^chair "/m.test(text);

describe("chairs and lines in documents", () => {
  it("are found: a whole chair and parts of one", () => {
    expect(blocks.filter(({ text }) => isWhole(text)).length).toBeGreaterThan(0);
    expect(blocks.filter(({ text }) => !isWhole(text)).length).toBeGreaterThan(1);
  });

  it.each(blocks.map(({ path, text }) => [path, text] as const))("of %s", (_, text) => {
    if (isWhole(text)) expect(studied(text).problems).toEqual([]);
    else expect(parse(text, vocabulary).problems).toEqual([]);
  });

  it("the walkthrough's change does what it says", () => {
    expect(read("client/walkthrough/change.md")).toContain("`rake 9deg`");
    const changed = samples["boathouse-mess-chair.chair"]!.replace("rake back-lean", "rake 9deg");
    expect(studied(changed).problems.map(({ code }) => code)).toContain("rake-over-limit");
  });
});

/** Whether a line is one of some block, or of the file. */
function isLine(line: string): boolean {
  const heads = new Set(
    vocabulary.rows.filter(({ word }) => line.split(/\s/)[0] === word).map(({ owner }) => owner),
  );
  return [...heads].some((owner) => {
    let text = `${line}\n`;
    for (let kind = owner; kind !== "file"; ) {
      const opener = vocabulary.rows.find(({ opens }) => opens === kind)!;
      text = `${opener.example.replace(/\s*\{$/, "")} {\n${text}}\n`;
      kind = opener.owner;
    }
    const own = parse(text, vocabulary).problems;
    return own.every(({ code }) => code === "missing-property" || code === "not-yet-worked-out");
  });
}

describe("lines in the rules' explanations", () => {
  const words = new Set(vocabulary.rows.map(({ word }) => word));
  const lines = rules.flatMap(({ code, explanation }) =>
    [...explanation.matchAll(/`([^`]+)`/g)]
      .map(([, line]) => line!)
      .filter((line) => /\d/.test(line) && !/[…A-Z]/.test(line) && words.has(line.split(" ")[0]!))
      // Only a phrase of a line.
      .filter((line) => line !== "from 250mm to foot")
      .map((line) => [code, line] as const),
  );

  it("are many", () => expect(lines.length).toBeGreaterThan(30));

  it.each(lines)("%s: %s", (code, line) => {
    expect(isLine(line), line).toBe(true);
    if (!line.startsWith("limit ")) return;
    const { problems } = studied(`${samples["boathouse-joints.chair"]}\n${line}\n`);
    const refused = problems.filter((each) => ["limit-does-not-fit", "unknown-rule"].includes(each.code));
    expect(refused, code).toEqual([]);
  });
});
