/**
 * What the text says of a bow: a bent member in one plane.
 */
import { lengthIn } from "../../grammar/example.ts";
import { sentence } from "../../grammar/sentences/sentence.ts";
import type { BowDesign } from "./bow-design.ts";
import type { Given, Named, Section } from "./design.ts";
import { leanWithWords } from "./lean-words.ts";
import type { Item, Line } from "./merge.ts";
import { jointName } from "./names.ts";
import { section, timber } from "./places.ts";
import { set } from "./post.ts";
import { readBarSection } from "./rail.ts";
import { factOf, given, length, lineOf, linesOf, type Reading, report, spanOf } from "./reading.ts";
import { readSawn } from "./sawn.ts";

export const newBow = (_item: Item, named: Named): BowDesign => ({ ...named, is: "bow", tapers: [] });

export function readBow(reading: Reading, item: Item, bow: BowDesign): void {
  const ends = lineOf(item, "ends");
  const [out, back] = [length(reading, ends, "out", "positive"), length(reading, ends, "back")];
  if (ends && out && back) {
    const at = spanOf([factOf(ends, "out"), factOf(ends, "back")], ends.statement);
    const place = given(ends, at, { out: out.value, back: back.value });
    if (ends.statement.word?.text === "hands") bow.hands = place;
    else bow.feet = place;
  }
  set(bow, "rake", leanWithWords(reading, lineOf(item, "rake")));
  readLie(reading, item, bow);
  const wide = lineOf(item, "wide");
  const [width, at] = [
    length(reading, wide, "wide", "positive"),
    length(reading, wide, "station", "positive"),
  ];
  if (wide && width && at)
    bow.wide = given(wide, spanOf([factOf(wide, "wide"), factOf(wide, "station")], wide.statement), {
      wide: width.value,
      at: at.value,
    });
  set(bow, "rise", length(reading, lineOf(item, "rise"), "rise", "positive"));
  readBarSection(reading, item, bow);
  bow.tapers = linesOf(item, "taper").flatMap((line) => readTaper(reading, line) ?? []);
  set(bow, "joined", jointName(reading, lineOf(item, "joined")));
  set(bow, "timber", timber(reading, lineOf(item, "timber")));
  readSawn(reading, item, bow);
  if (ends) tellWays(reading, item, ends, bow);
}

function readLie(reading: Reading, item: Item, bow: BowDesign): void {
  const line = lineOf(item, "lie");
  const up = length(reading, line, "up", "positive");
  const fall = length(reading, line, "fall");
  if (line && up)
    bow.lie = given(line, spanOf([factOf(line, "up"), factOf(line, "fall")], line.statement), {
      up: up.value,
      fall: fall?.value ?? 0,
    });
}

function readTaper(reading: Reading, line: Item): Given<Section> | undefined {
  const round = length(reading, line, "diameter", "positive");
  if (round) return { ...round, value: { first: round.value, second: round.value } };
  return section(reading, line, ["thickness", "width"]);
}

/** A hoop stands and leans, an arm bow lies: what belongs to the other is told. */
function tellWays(reading: Reading, item: Item, ends: Line, bow: BowDesign): void {
  const tell = (facet: string, message: string) => {
    const line = lineOf(item, facet);
    if (line)
      report(reading, line.source, line.statement.word ?? line.statement, { code: "given-twice", message });
  };
  if (bow.hands) {
    tell("rake", sentence("given-twice.rake-of-arm-bow"));
    delete bow.rake;
    if (!lineOf(item, "lie"))
      report(reading, ends.source, ends.statement.word ?? ends.statement, {
        code: "incomplete",
        message: sentence("incomplete.arm-bow", { up: lengthIn(660, reading.unit) }),
      });
  } else {
    tell("lie", sentence("given-twice.lie-of-hoop"));
    delete bow.lie;
  }
}
