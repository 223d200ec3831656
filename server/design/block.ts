/**
 * What the text says of a corner block.
 */
import type { BlockDesign, Named } from "./design.ts";
import type { Item } from "./merge.ts";
import { checked } from "./names.ts";
import { timber } from "./places.ts";
import { set } from "./post.ts";
import { factOf, given, length, lineOf, type Reading } from "./reading.ts";
import { readSawn } from "./sawn.ts";

export function newBlock(named: Named): BlockDesign {
  return { ...named, is: "block" };
}

export function readBlock(reading: Reading, item: Item, block: BlockDesign): void {
  const corner = lineOf(item, "in");
  if (corner !== undefined) set(block, "in", checked(reading, corner, factOf(corner, "post"), ["post"]));
  set(block, "along", length(reading, lineOf(item, "along"), "length", "positive"));
  set(block, "thick", length(reading, lineOf(item, "thick"), "length", "positive"));
  set(block, "up", length(reading, lineOf(item, "up"), "height", "positive"));
  const fixing = lineOf(item, "fixing");
  const word = fixing?.statement.word;
  if (fixing !== undefined && (word?.text === "screwed" || word?.text === "glued"))
    block.fixing = given(fixing, word, word.text);
  set(block, "timber", timber(reading, lineOf(item, "timber")));
  readSawn(reading, item, block);
}
