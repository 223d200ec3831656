import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { askAt, askOfFile } from "./every-feature.ts";
import { plainView } from "./view.ts";

/** Of all prefixes and deletions one in this many is tried, and of the places in each one in so many more; 1 tries everything. */
const ONE_IN = Number(process.env.SEATWRIGHT_ONE_IN ?? 23);

const folder = new URL("../../../samples/", import.meta.url);
const files = Object.fromEntries(
  readdirSync(folder).map((name) => [name, readFileSync(new URL(name, folder), "utf8")]),
);
const samples = Object.entries(files).filter(([name]) => name.endsWith(".chair"));

/** Asks every feature of a text, at places spread over it and where it was broken. */
function ask(name: string, text: string, brokenAt: number) {
  const view = plainView(text, `file:///samples/${name}`, files);
  try {
    askOfFile(view);
    const step = Math.max(1, Math.ceil((text.length * ONE_IN) / 400));
    for (let offset = brokenAt % step; offset <= text.length; offset += step) askAt(view, offset);
    for (const offset of [brokenAt - 1, brokenAt, brokenAt + 1]) askAt(view, Math.max(0, offset));
  } catch (error) {
    throw new Error(`a feature failed in ${name} broken at ${brokenAt}`, { cause: error });
  }
}

describe.each(samples)("every feature in %s", (name, text) => {
  it("answers in the whole text", () => {
    ask(name, text, 0);
    expect(text.length).toBeGreaterThan(0);
  });

  it("answers in its beginnings", () => {
    for (let length = 0; length < text.length; length += ONE_IN * 7) ask(name, text.slice(0, length), length);
  });

  it("answers with one word or sign taken out", () => {
    const tokens = [...text.matchAll(/[\w.-]+|"[^"\n]*"|[^\s\w]/g)];
    for (let k = 0; k < tokens.length; k += ONE_IN) {
      const { 0: token, index } = tokens[k] as RegExpExecArray;
      ask(name, text.slice(0, index) + text.slice(index + token.length), index);
    }
  });
});

describe("every feature", () => {
  it.each([
    ["nothing", ""],
    ["a mark of byte order", "\ufeffunits mm\npost a {\n}"],
    ["lines ended by CR alone", "units mm\rpost a {\r  section 40 x 40\r}\r"],
    [
      "marks of a merge",
      "post a {\n<<<<<<< ours\n  section 40 x 40\n=======\n  section 38 x 38\n>>>>>>> theirs\n}\n",
    ],
    ["characters outside the basic plane", 'chair "🪑🪑"\n🪑 🪑\npost 🪑 {\n  section 🪑 x 40\n}\n'],
    ["many open parentheses", `let a = ${"(".repeat(10_000)}1`],
    [
      "names of the machine's own",
      "post constructor pair {\n  section 1 x 1\n}\nrail __proto__ {\n  across constructor\n}\nlet toString = 3\nrequire hasOwnProperty < 2\n",
    ],
    ["blocks in blocks", "rail r { ".repeat(300)],
  ])("answers in a text of %s", (_, text) => {
    ask("made-up.chair", text, Math.min(text.length, 40));
    expect(plainView(text, "file:///made-up.chair").tree.text).toBe(text);
  });
});
