import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { shareName, shareOf, time } from "../../share.ts";
import { askAt, askOfFile } from "./every-feature.ts";
import { plainView } from "./view.ts";

/** Of all beginnings and tokens one in so many is tried in `npm test`, and all features asked at so many places of each. */
const BEGINNINGS = 1000;
const TOKENS = 200;
const PLACES = 18;

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
    const step = Math.max(1, Math.ceil(text.length / PLACES));
    for (let offset = brokenAt % step; offset <= text.length; offset += step) askAt(view, offset);
    for (const offset of [brokenAt - 1, brokenAt, brokenAt + 1]) askAt(view, Math.max(0, offset));
  } catch (error) {
    throw new Error(`a feature failed in ${name} broken at ${brokenAt}`, { cause: error });
  }
}

describe.each(samples)("every feature in %s", { timeout: time }, (name, text) => {
  it("answers in the whole text", () => {
    ask(name, text, 0);
    expect(text.length).toBeGreaterThan(0);
  });

  it(`answers in its beginnings, ${shareName(BEGINNINGS)}`, () => {
    for (const length of shareOf([...Array(text.length).keys()], BEGINNINGS))
      ask(name, text.slice(0, length), length);
  });

  it(`answers with a word or sign taken out, ${shareName(TOKENS)}`, () => {
    const tokens = [...text.matchAll(/[\w.-]+|"[^"\n]*"|[^\s\w]/g)];
    for (const { 0: token, index } of shareOf(tokens, TOKENS)) {
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
