/**
 * What the text says of a post.
 */

import { lengthIn } from "../../grammar/example.ts";
import { sentence } from "../../grammar/sentences/sentence.ts";
import { isSided } from "./course.ts";
import type { Given, Knee, Named, PartRef, PostDesign, PostFace, Taper } from "./design.ts";
import { leanWithWords } from "./lean-words.ts";
import { readLeg } from "./leg.ts";
import type { Item } from "./merge.ts";
import { checked, jointName } from "./names.ts";
import { postStation, railStation, section, timber } from "./places.ts";
import {
  allOf,
  angle,
  factOf,
  given,
  isWhole,
  lean,
  length,
  lineOf,
  linesOf,
  type Reading,
  report,
  spanOf,
} from "./reading.ts";
import { readSawn } from "./sawn.ts";

export function newPost(item: Item, named: Named): PostDesign {
  return { ...named, is: "post", pair: isPair(item), knees: [], tapers: [] };
}

/** Whether the header, or the header that it takes over from, says `pair`. */
export function isPair(item: Item): boolean {
  return [item, item.earlier].some((line) => line !== undefined && factOf(line, "pair") !== undefined);
}

export function readPost(reading: Reading, item: Item, post: PostDesign): void {
  readSection(reading, item, post);
  readPlace(reading, item, post);
  set(post, "height", length(reading, lineOf(item, "height"), "height", "positive"));
  set(post, "splay", leanWithWords(reading, lineOf(item, "splay")));
  readKnees(reading, item, post);
  post.tapers = linesOf(item, "taper").flatMap((line) => readTaper(reading, line) ?? []);
  set(post, "turn", angle(reading, lineOf(item, "turn"), "angle"));
  readShape(reading, item, post);
  readJoining(reading, item, post);
  set(post, "timber", timber(reading, lineOf(item, "timber")));
  readSawn(reading, item, post);
  readLeg(reading, item, post);
}

/** Sets a field when there is something to set. */
export function set<T, K extends keyof T>(target: T, key: K, value: T[K] | undefined): void {
  if (value !== undefined) target[key] = value;
}

function readSection(reading: Reading, item: Item, post: PostDesign): void {
  const line = lineOf(item, "section");
  if (line === undefined) return;
  if (factOf(line, "diameter") !== undefined)
    set(post, "round", length(reading, line, "diameter", "positive"));
  else set(post, "section", section(reading, line, ["width", "depth"]));
}

function readPlace(reading: Reading, item: Item, post: PostDesign): void {
  const line = lineOf(item, "place");
  const word = line?.statement.word?.text;
  if (line === undefined || word === undefined) return;
  const out = length(reading, line, "out");
  const back = length(reading, line, "back");
  const station =
    word === "foot" || word === "top" ? word : length(reading, line, "height", "not negative")?.value;
  if (out === undefined || back === undefined || station === undefined) return;
  const at = spanOf([factOf(line, "out"), factOf(line, "back")], line.statement);
  post.place = given(line, at, { station, out: out.value, back: back.value });
}

function readKnees(reading: Reading, item: Item, post: PostDesign): void {
  for (const line of item.items) {
    const word = line.statement.word?.text;
    if (word !== "rake" && word !== "kick" && word !== "bend") continue;
    const slope = word === "rake" ? leanWithWords(reading, line) : lean(reading, line, "angle");
    if (slope === undefined) continue;
    const heightFact = factOf(line, "height");
    if (word === "rake" && heightFact === undefined) {
      wholeRake(reading, line, post, slope);
      continue;
    }
    const height = length(reading, line, "height", "not negative");
    if (height === undefined) continue;
    const over = length(reading, line, "over", "not negative")?.value ?? 0;
    const stretch = word === "rake" || factOf(line, "stretch")?.name === "above" ? "above" : "below";
    const seen = factOf(line, "seen")?.name === "front" ? "front" : "side";
    const knee: Knee = {
      word,
      seen,
      height: height.value,
      stretch,
      slope: word === "kick" ? -slope.value : slope.value,
      over,
    };
    post.knees.push({ ...slope, value: knee });
  }
}

function wholeRake(reading: Reading, line: Item, post: PostDesign, slope: Given<number>): void {
  if (post.rake !== undefined) {
    report(reading, line.source, slope.at, {
      code: "given-twice",
      message: sentence("given-twice.rake"),
      related: [
        {
          ...post.rake.at,
          message: sentence("related.first-given"),
          ...(post.rake.file ? { file: post.rake.file } : {}),
        },
      ],
    });
    return;
  }
  if (factOf(line, "over") !== undefined && isWhole(line)) {
    report(reading, line.source, factOf(line, "over") ?? slope.at, {
      code: "nothing-to-curve",
      severity: "warning",
      message: sentence("curve-without-bend"),
    });
  }
  post.rake = slope;
}

function readTaper(reading: Reading, line: Item): Given<Taper> | undefined {
  const to = section(reading, line, ["width", "depth"], true);
  const from = postStation(reading, line, "from");
  const until = postStation(reading, line, "to");
  if (to === undefined || from === undefined || until === undefined) return undefined;
  if (from.value === until.value) {
    report(reading, line.source, spanOf([factOf(line, "from"), factOf(line, "to")], line.statement), {
      code: "impossible-size",
      message: sentence("impossible-size.taper"),
    });
    return undefined;
  }
  const keeping = allOf(line, "keeping").flatMap((fact) => (isFace(fact.name) ? [fact.name] : []));
  return given(line, to.at, { section: to.value, from: from.value, to: until.value, keeping });
}

const isFace = (name: string | undefined): name is PostFace =>
  name === "front" || name === "back" || name === "inside" || name === "outside";

function readShape(reading: Reading, item: Item, post: PostDesign): void {
  const lines = linesOf(item, "shape");
  const stations = lines.flatMap((line) => {
    const station = postStation(reading, line, "station");
    const round = length(reading, line, "diameter", "positive");
    const square = section(reading, line, ["width", "depth"]);
    if (station === undefined) return [];
    if (round !== undefined) return [{ station: station.value, first: round.value, second: round.value }];
    return square === undefined ? [] : [{ station: station.value, ...square.value }];
  });
  const [first] = lines;
  const last = lines.at(-1);
  if (first === undefined || last === undefined || stations.length === 0) return;
  const rank = ({ station }: { station: number | "foot" | "top" }) =>
    station === "foot" ? -Infinity : station === "top" ? Infinity : station;
  stations.sort((a, b) => (rank(a) === rank(b) ? 0 : rank(a) - rank(b)));
  const at =
    first.source === last.source
      ? { start: first.statement.start, end: last.statement.end }
      : first.statement;
  post.shape = given(first, at, stations);
}

function readJoining(reading: Reading, item: Item, post: PostDesign): void {
  const stand = item.items.find((line) => line.statement.word?.text === "stand");
  if (stand !== undefined && factOf(stand, "seat") !== undefined) {
    const [out, back] = [length(reading, stand, "out"), length(reading, stand, "back")];
    const at = spanOf([factOf(stand, "out"), factOf(stand, "back")], stand.statement);
    if (out && back) post.onSeat = given(stand, at, { out: out.value, back: back.value });
  } else if (stand !== undefined) {
    const rail = checked(reading, stand, factOf(stand, "rail"), ["rail"]);
    const station =
      railStation(reading, stand, factOf(stand, "station")) ?? given(stand, stand.statement, { share: 0.5 });
    const clear = rail !== undefined && (post.pair || isSided(reading, stand, "rail", rail));
    if (clear) post.standsOn = { ...rail, value: { rail: rail.value, station: station.value } };
  }
  const into = lineOf(item, "top-into");
  if (into !== undefined) {
    const rail = checked(reading, into, factOf(into, "rail"), ["rail", "bow"]);
    const joint = jointName(reading, into)?.value;
    if (rail && reading.names.get(rail.value.name)?.is === "bow")
      readTopBow(reading, into, post, rail, joint);
    else if (rail !== undefined && (post.pair || isSided(reading, into, "rail", rail)))
      post.topInto = {
        ...rail,
        value: joint === undefined ? { rail: rail.value } : { rail: rail.value, joint },
      };
  }
  const square = lineOf(item, "top-cut");
  const fact = square && factOf(square, "square");
  if (square !== undefined && fact !== undefined) post.topSquare = given(square, fact, true);
}

/** The post goes straight from its place on the seat to one in the bow: what says how it leans is told. */
function readTopBow(
  reading: Reading,
  into: Item,
  post: PostDesign,
  bow: Given<PartRef>,
  joint: string | undefined,
): void {
  const at = length(reading, into, "station", "not negative");
  if (!at) {
    if (!factOf(into, "station"))
      report(reading, into.source, bow.at, {
        code: "incomplete",
        message: sentence("incomplete.top-into-bow", { bow: bow.value.name, at: lengthIn(60, reading.unit) }),
      });
    return;
  }
  post.topBow = { ...bow, value: { bow: bow.value, at: at.value, ...(joint !== undefined && { joint }) } };
}
