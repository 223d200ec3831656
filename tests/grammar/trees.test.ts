import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { expect, test } from "vitest";
import { read } from "./fixtures/reading.ts";
import { treeText } from "./fixtures/tree-text.ts";

/**
 * Golden trees: files of cases, each a title after `# `, a text, `==>` and its tree. With SEATWRIGHT_UPDATE set in the
 * environment the trees are written anew, to be looked at.
 */
const folder = new URL("./trees/", import.meta.url);

interface Case {
  title: string;
  text: string;
  tree: string;
}

function casesOf(file: string): Case[] {
  return file
    .split(/^#{3} /m)
    .slice(1)
    .map((piece) => {
      const [title = "", ...lines] = piece.split("\n");
      const [text = "", tree = ""] = lines.join("\n").split(/^==>\n/m);
      return { title: title.trim(), text: text.trim(), tree: tree.trim() };
    });
}

for (const name of readdirSync(folder).filter((file) => file.endsWith(".txt"))) {
  const file = new URL(name, folder);
  const cases = casesOf(readFileSync(file, "utf8"));
  if (process.env.SEATWRIGHT_UPDATE !== undefined) {
    const pieces = cases.map(
      ({ title, text }) => `### ${title}\n\n${text}\n\n==>\n${treeText(read(text))}\n`,
    );
    writeFileSync(file, pieces.join("\n"));
  }
  test.each(cases.map((one): [string, Case] => [one.title, one]))(`${name}: %s`, (_, { text, tree }) => {
    expect(treeText(read(text))).toBe(tree);
  });
}
