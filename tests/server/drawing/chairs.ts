import { readFileSync } from "node:fs";
import type { Chair } from "../../../server/chair/chair.ts";
import { resolveNamed } from "../../../server/main/named-files.ts";
import { study } from "../../../server/study.ts";

const samples = new URL("../../../samples/", import.meta.url);

export const sampleNames = [
  "boathouse-mess-chair",
  "harbour-chair",
  "joined-stool",
  "ladder-back",
  "landing-bench",
  "mess-armchair",
  "small-mess-chair",
];

export const sampleText = (name: string): string => readFileSync(new URL(`${name}.chair`, samples), "utf8");

const read = (address: string): string | undefined => {
  try {
    return readFileSync(new URL(address), "utf8");
  } catch {
    return undefined;
  }
};

/** The chair of some text that stands among the samples. */
export function chairOf(text: string): Chair {
  const address = new URL("here.chair", samples).href;
  return study({ text, address, files: { resolve: resolveNamed, read } }).chair;
}

export const sampleChair = (name: string): Chair => chairOf(sampleText(name));
