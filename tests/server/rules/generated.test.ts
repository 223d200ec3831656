/**
 * What is made from the rule table is current; with SEATWRIGHT_UPDATE set in the environment it is written anew.
 */
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { expect, test } from "vitest";
import { rules } from "../../../server/rules/index.ts";
import {
  reference,
  type SettingSection,
  settingSections,
  settingWords,
} from "../../../server/rules/machinery/reference.ts";
import { exampleOf } from "../../rule-examples.ts";

const manifest = new URL("../../../package.json", import.meta.url);
const page = new URL("../../../server/rules/reference.md", import.meta.url);
const words = new URL("../../../package.nls.json", import.meta.url);
const folder = new URL("../../../server/rules/", import.meta.url);
const updating = process.env.SEATWRIGHT_UPDATE !== undefined;

test("the rules reference is current", () => {
  if (updating) writeFileSync(page, reference(rules, exampleOf));
  expect(readFileSync(page, "utf8")).toBe(reference(rules, exampleOf));
});

test("the rules reference speaks of every rule", () => {
  const text = reference(rules, exampleOf);
  for (const rule of rules) {
    expect(text).toContain(`### ${rule.code}\n`);
    expect(text).toContain(rule.explanation);
    expect(text).toContain(exampleOf(rule.code)?.trimEnd() ?? "");
  }
});

test("the manifest has a setting for every rule, grouped by subject, current", () => {
  const text = JSON.parse(readFileSync(manifest, "utf8"));
  const sections: SettingSection[] = [text.contributes.configuration].flat();
  const isOfRules = ({ title }: SettingSection) => title.startsWith("%settings.rules.");
  const named = JSON.parse(readFileSync(words, "utf8"));
  const wanted = settingSections(rules, subjectOf);
  if (updating) {
    text.contributes.configuration = [...sections.filter((section) => !isOfRules(section)), ...wanted];
    writeFileSync(manifest, `${JSON.stringify(text, null, 2)}\n`);
    const kept = Object.entries(named).filter(
      ([key]) => !/^(renamed-rule|rule|rule-level|settings\.rules)\./.test(key),
    );
    const all = [...kept, ...Object.entries(settingWords(rules, subjectOf))].sort(([a], [b]) =>
      a < b ? -1 : 1,
    );
    writeFileSync(words, `${JSON.stringify(Object.fromEntries(all), null, 2)}\n`);
    return;
  }
  expect(sections.filter(isOfRules)).toEqual(wanted);
  const all = sections.flatMap(({ properties }) => Object.keys(properties));
  expect(all).toEqual([...new Set(all)]);
  expect(named).toMatchObject(settingWords(rules, subjectOf));
});

/** The folder that a rule's file is in; those of the language have none. */
function subjectOf(code: string): string {
  const folders = readdirSync(folder, { withFileTypes: true }).filter((entry) => entry.isDirectory());
  return folders.find(({ name }) => existsSync(new URL(`${name}/${code}.ts`, folder)))?.name ?? "language";
}
