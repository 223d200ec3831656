import { readdirSync, readFileSync } from "node:fs";
import type { Study } from "../../server/study.ts";
import { studied } from "../check.ts";

const folder = new URL("../../samples/", import.meta.url);
const texts = Object.fromEntries(
  readdirSync(folder).map((file) => [file, readFileSync(new URL(file, folder), "utf8")]),
);

/** The sample chairs by name; the file of joints that they share is not a chair. */
export const sampleNames = Object.keys(texts)
  .map((file) => file.replace(/\.chair$/, ""))
  .filter((name) => name !== "boathouse-joints");

export const sampleText = (name: string): string => texts[`${name}.chair`] ?? "";

/** A sample studied, with the files that it names. */
export const studiedSample = (name: string): Study => studied(sampleText(name), texts);
