import { expect, test } from "vitest";
import { textmateFile } from "../../grammar/highlight/textmate.ts";
import { reference } from "../../grammar/reference.ts";
import { vocabulary } from "../../grammar/vocabulary/index.ts";
import { speciesTable } from "../../server/timber/reference.ts";

// Made from the vocabulary; `npx vitest run --config tests/vitest.config.mts tests/grammar/generated.test.ts -u` writes them anew.
test("the highlighting is current", async () => {
  await expect(textmateFile(vocabulary)).toMatchFileSnapshot("../../grammar/highlight/chair.tmLanguage.json");
});

test("the reference is current", async () => {
  await expect(reference(vocabulary, [speciesTable()])).toMatchFileSnapshot("../../grammar/reference.md");
});

test("the reference speaks of every row and every word", () => {
  const page = reference(vocabulary);
  for (const row of vocabulary.rows) {
    expect(page).toContain(row.meaning);
    expect(page).toContain(row.example);
  }
  for (const { word } of vocabulary.words) expect(page).toContain(`| \`${word}\` |`);
});
