/**
 * What is made from the rule table is current; with SEATWRIGHT_UPDATE set in the environment it is written anew.
 */
import { readFileSync, writeFileSync } from "node:fs";
import { expect, test } from "vitest";
import { rules } from "../../../server/rules/index.ts";
import { reference, settingsOf } from "../../../server/rules/machinery/reference.ts";
import { exampleOf } from "../../rule-examples.ts";

const manifest = new URL("../../../package.json", import.meta.url);
const page = new URL("../../../server/rules/reference.md", import.meta.url);
const updating = process.env.SEATWRIGHT_UPDATE !== undefined;

interface Section {
  title: string;
  properties: Record<string, object>;
}

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

test("the manifest has a setting for every rule, current", () => {
  const text = JSON.parse(readFileSync(manifest, "utf8"));
  const sections: Section[] = [text.contributes.configuration].flat();
  const wanted = { title: "Rules", properties: settingsOf(rules) };
  if (updating) {
    text.contributes.configuration = [...sections.filter(({ title }) => title !== "Rules"), wanted];
    writeFileSync(manifest, `${JSON.stringify(text, null, 2)}\n`);
    return;
  }
  expect(sections.find(({ title }) => title === "Rules")).toEqual(wanted);
});
