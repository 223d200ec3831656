import { expect, test } from "vitest";
import { parse } from "../../grammar/parser.ts";
import type { Row } from "../../grammar/row.ts";
import { vocabulary } from "../../grammar/vocabulary/index.ts";

/** A word with two rows of one shape, of which one opens a block. */
const trim = vocabulary.rows.find(({ word, opens }) => word === "trim" && !opens);
const post = vocabulary.rows.find(({ word }) => word === "post");
if (!trim || !post?.opens) throw new Error("the vocabulary has lost its trim or its post");
const opening: Row = { ...trim, opens: post.opens };

test.each([
  ["first", [opening, trim]],
  ["last", [trim, opening]],
])(
  "of two rows that fit alike, the one that opens a block is meant where a block follows; it comes %s",
  (_, pair) => {
    const words = { ...vocabulary, rows: [...vocabulary.rows.filter((row) => row !== trim), ...pair] };
    const rowOf = (text: string) => parse(text, words).statements[0]?.row;
    expect(rowOf("trim back 8")).toBe(trim);
    expect(rowOf("trim back 8 {\n  height 430\n}")).toBe(opening);
  },
);
