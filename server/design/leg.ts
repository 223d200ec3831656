/**
 * What the text says of a post that is a leg let into a solid seat: its place there, and the way it goes to the floor.
 */

import type { Fix } from "../../grammar/problem.ts";
import { type SentenceKey, sentence } from "../../grammar/sentences/sentence.ts";
import type { PostDesign } from "./design.ts";
import type { Given } from "./given.ts";
import type { LegWay } from "./leg-design.ts";
import type { Item, Line } from "./merge.ts";
import { jointName } from "./names.ts";
import {
  angle,
  facetOf,
  factOf,
  given,
  lean,
  length,
  lineOf,
  linesOf,
  type Reading,
  report,
  spanOf,
} from "./reading.ts";

/** Lines that have no place in a leg, and what stands there instead. */
const elsewhere: Readonly<Record<string, SentenceKey>> = {
  height: "leg.height",
  "top-into": "leg.top-into",
  "top-cut": "leg.top-cut",
};

/** The facts of a leg; to be read after the rest of the post. */
export function readLeg(reading: Reading, item: Item, post: PostDesign): void {
  const joined = jointName(reading, lineOf(item, "joined"));
  if (joined) post.joined = joined;
  const into = lineOf(item, "into");
  const leanLine = lineOf(item, "lean");
  if (!into) {
    tellStraight(reading, item, post);
    if (leanLine) tell(reading, leanLine, "wrong-kind", sentence("wrong-kind.lean"));
    return;
  }
  const out = length(reading, into, "out");
  const back = length(reading, into, "back");
  if (out && back) {
    const at = spanOf([factOf(into, "out"), factOf(into, "back")], into.statement);
    const above = factOf(into, "above") !== undefined;
    post.intoSeat = given(into, at, { out: out.value, back: back.value, above });
  }
  for (const line of item.items) {
    const facet = facetOf(line) ?? "";
    const why = elsewhere[facet] ?? (line.statement.word?.text === "stand" ? "leg.stands" : undefined);
    if (why) tell(reading, line, "given-twice", sentence("given-twice.leg", { why: sentence(why) }));
  }
  delete post.height;
  delete post.topInto;
  delete post.topBow;
  delete post.topSquare;
  delete post.standsOn;
  delete post.onSeat;
  readWay(reading, item, post, leanLine);
  tellBareRakes(reading, item);
}

function readWay(reading: Reading, item: Item, post: PostDesign, leanLine: Line | undefined): void {
  const placed = lineOf(item, "place");
  const place = post.place;
  delete post.place;
  let ways: { line: Line; way?: Given<LegWay> }[] = [];
  for (const facet of ["splay", "rake", "kick", "bend"]) {
    const line = lineOf(item, facet);
    if (line) ways.push({ line });
  }
  if (placed && place?.value.station === "foot") {
    const { out, back } = place.value;
    ways.push({ line: placed, way: { ...place, value: { is: "foot", out, back } } });
  } else if (placed && placed.statement.word?.text !== "stand") {
    tell(reading, placed, "given-twice", sentence("given-twice.leg-placed"));
  }
  const leaning = leanLine && readLean(reading, leanLine);
  if (leaning) ways.push({ line: leanLine, way: leaning });
  // What this file says replaces what the one that it starts from says of the same.
  const own = ways.filter(({ line }) => line.source.file === undefined);
  if (own.length > 0) ways = own;
  const kinds = [...new Set(ways.map(({ way }) => way?.value.is ?? "angles"))];
  if (kinds.length > 1) {
    const [first] = ways;
    for (const { line, way } of ways) {
      if ((way?.value.is ?? "angles") === kinds[0]) continue;
      tell(
        reading,
        line,
        "given-twice",
        sentence("given-twice.leg-way", { word: first!.line.statement.word?.text }),
      );
    }
  }
  const chosen = ways[0]?.way;
  if (!chosen) return;
  post.way = chosen;
  post.knees = [];
}

function readLean(reading: Reading, line: Line): Given<LegWay> | undefined {
  const found = lean(reading, line, "lean");
  const sight = angle(reading, line, "sight-line");
  if (!found) return undefined;
  if (!sight) {
    if (!factOf(line, "sight-line"))
      tell(reading, line, "incomplete", sentence("missing-property.lean-direction"));
    return undefined;
  }
  return { ...found, value: { is: "lean", lean: found.value, sightLine: sight.value } };
}

/** A leg leans both ways about as often, so its rake says which end goes where. */
function tellBareRakes(reading: Reading, item: Item): void {
  for (const line of item.items) {
    const fact = factOf(line, "angle");
    if (line.statement.word?.text !== "rake" || !fact || factOf(line, "end")) continue;
    const fixes = ["foot forward", "foot back"].map(
      (words): Fix => ({
        title: sentence("fix.write", { text: words }),
        edits: [{ start: fact.end, end: fact.end, text: ` ${words}` }],
      }),
    );
    report(reading, line.source, fact, {
      code: "which-end",
      message: sentence("rake-without-end"),
      fixes,
    });
  }
}

function tell(reading: Reading, line: Line, code: string, message: string): void {
  report(reading, line.source, line.statement.word ?? line.statement, { code, message });
}

/** A post that goes into a bow goes straight there: its lean and its height follow. */
function tellStraight(reading: Reading, item: Item, post: PostDesign): void {
  if (!post.topBow) return;
  for (const facet of ["splay", "rake", "kick", "bend", "height"]) {
    for (const line of linesOf(item, facet))
      tell(
        reading,
        line,
        "given-twice",
        sentence("given-twice.straight-post", {
          bow: post.topBow.value.bow.name,
          word: line.statement.word?.text ?? facet,
        }),
      );
  }
  delete post.splay;
  delete post.rake;
  delete post.height;
  post.knees = [];
}
