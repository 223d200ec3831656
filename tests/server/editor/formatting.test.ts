import { describe, expect, it } from "vitest";
import {
  formatting,
  onTypeFormatting,
  rangeFormatting,
  rangesFormatting,
} from "../../../server/editor/formatting.ts";
import { edited } from "./frame.ts";
import { viewOf } from "./view.ts";

const two = { insertSpaces: true, tabSize: 2 };
const untidy = "post   a {\nsection 40 x   40\n   foot out 205 , back 20 # stands\n}\n";
const tidy = "post a {\n  section 40 x 40\n  foot out 205, back 20  # stands\n}\n";

describe("formatting", () => {
  it("lays the file out", () => {
    const { view } = viewOf(untidy);
    expect(edited(view, formatting(view, two))).toBe(tidy);
  });

  it("indents as the editor is set", () => {
    const { view } = viewOf(untidy);
    expect(edited(view, formatting(view, { insertSpaces: false, tabSize: 4 }))).toContain(
      "\n\tsection 40 x 40\n",
    );
  });

  it("keeps CRLF and characters outside the basic plane", () => {
    const { view } = viewOf(
      'chair   "🪑"\r\npost a {\r\nsection 40 x   40\r\nfoot out 205, back 20\r\n}\r\n',
    );
    expect(edited(view, formatting(view, two))).toBe(
      'chair "🪑"\r\npost a {\r\n  section 40 x 40\r\n  foot out 205, back 20\r\n}\r\n',
    );
  });

  it("changes nothing in a file with errors of reading", () => {
    const { view } = viewOf("post   a {\nsectoin 40\n");
    expect(formatting(view, two)).toEqual([]);
  });
});

describe("formatting a stretch", () => {
  it("lays out those lines alone", () => {
    const { view } = viewOf(untidy);
    expect(edited(view, rangeFormatting(view, 1, 1, two))).toBe(
      untidy.replace("section 40 x   40", "  section 40 x 40"),
    );
  });
});

describe("formatting several stretches", () => {
  it("lays out each once", () => {
    const { view } = viewOf(untidy);
    const line = (at: number) => ({ start: { line: at, character: 0 }, end: { line: at, character: 1 } });
    expect(edited(view, rangesFormatting(view, [line(1), line(0), line(1)], two))).toBe(
      untidy.replace("post   a", "post a").replace("section 40 x   40", "  section 40 x 40"),
    );
  });
});

describe("formatting while typing", () => {
  it("lays out the line just ended and leaves the new one to the editor", () => {
    const { view } = viewOf("post a {\nsection 40 x   40\n    \n  foot out 205, back 20\n}\n");
    expect(edited(view, onTypeFormatting(view, 2, "\n", two))).toBe(
      "post a {\n  section 40 x 40\n    \n  foot out 205, back 20\n}\n",
    );
  });

  it("lays out the line of a closing brace", () => {
    const { view } = viewOf("post a {\n  section 40 x 40\n  foot out 205, back 20\n     }\n");
    expect(edited(view, onTypeFormatting(view, 3, "}", two))).toBe(
      "post a {\n  section 40 x 40\n  foot out 205, back 20\n}\n",
    );
  });

  it("does nothing on the first line or in broken text", () => {
    expect(onTypeFormatting(viewOf(untidy).view, 0, "\n", two)).toEqual([]);
    expect(onTypeFormatting(viewOf("post   a {\n((\n").view, 1, "\n", two)).toEqual([]);
  });
});
