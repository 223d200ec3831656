/**
 * What a part lacks that only the whole chair tells: after `like` has been merged, or because no other part gives it.
 */

import { exampleOf } from "../../grammar/example.ts";
import type { Kind } from "../../grammar/kind.ts";
import type { Row } from "../../grammar/row.ts";
import { sentence } from "../../grammar/sentences/sentence.ts";
import { vocabulary } from "../../grammar/vocabulary/index.ts";
import { orList } from "../../grammar/wording.ts";
import type { Design, RailCourse, RailDesign, StickDesign } from "./design.ts";
import { stemOf } from "./identity.ts";
import type { Item } from "./merge.ts";
import { facetOf, factOf, lineOf, type Reading, report } from "./reading.ts";
import { checkTops } from "./tops.ts";

export function checkLacking(reading: Reading, items: Item[], design: Design): void {
  const merged = design.links.some((link) => link.kind === "like");
  const whole = design.links.every((link) => link.found);
  const crowned = postsUnderRails(design);
  checkTops(reading, items, design, crowned);
  // One seat is missing, however many legs there are.
  let seatTold = false;
  for (const item of items) {
    if (item.statement.block === undefined || !wellRead(item)) continue;
    if (merged && whole && item.source.file === undefined)
      checkRequired(reading, item, item.statement.block.kind);
    const name = item.key.startsWith("name ") ? item.key.slice("name ".length) : "";
    const rail = design.rails.get(name);
    if (rail?.statement === item.statement) checkUp(reading, item, rail, design);
    const stick = design.sticks.get(name);
    if (stick?.statement === item.statement) checkStick(reading, item, stick);
    const post = design.posts.get(name);
    if (
      (post ?? stick ?? design.bows.get(name))?.statement === item.statement &&
      (post?.intoSeat ?? post?.onSeat ?? stick ?? design.bows.get(name)?.feet) &&
      !design.seat?.solid &&
      !seatTold
    ) {
      tellNoSeat(reading, item);
      seatTold = true;
    }
    if (item.statement === design.seat?.statement && design.seat.solid) checkSolidSeat(reading, item);
    if (
      post?.statement === item.statement &&
      !crowned.has(name) &&
      post.topInto === undefined &&
      post.topBow === undefined &&
      post.intoSeat === undefined &&
      lacks(item, "into") &&
      lacks(item, "height")
    ) {
      tell(reading, item, name, sentence("missing-property.height"), exampleNamed("post", "height"));
    }
  }
}

/** No line of its blocks was too broken to know what it says. */
const wellRead = (item: Item): boolean =>
  [item, item.earlier].every(
    (line) => line?.statement.block?.statements.every(({ row }) => row !== undefined) ?? true,
  );

const lacks = (item: Item, facet: string): boolean => lineOf(item, facet) === undefined;

/** Posts whose tops a rail lies over, whose height may follow from it. */
function postsUnderRails(design: Design): ReadonlySet<string> {
  const names = new Set<string>();
  for (const { course, ends } of design.rails.values()) {
    if (course?.value.is === "over") names.add(course.value.of.name);
    for (const end of ends) {
      if (end.over === undefined) continue;
      if (course?.value.is === "across" && /^(left|right)$/.test(end.which.value))
        names.add(course.value.of.name);
      names.add(stemOf(end.which.value));
    }
  }
  return names;
}

const coursesOver = (course: RailCourse): string[] =>
  course.is === "from-to" ? [course.from.name, course.to.name] : [course.of.name];

function checkUp(reading: Reading, item: Item, rail: RailDesign, design: Design): void {
  if (rail.carried) {
    for (const facet of ["up", "back", "long"])
      if (lacks(item, facet)) tell(reading, item, rail.name, `\`${facet}\``, exampleNamed("rail", facet));
    return;
  }
  if (rail.onOne || rail.course === undefined || rail.course.value.is === "over") return;
  if (rail.ends.some((end) => end.over !== undefined) || !lacks(item, "up")) return;
  // A cross rail let into two others lies in the middle of them.
  if (coursesOver(rail.course.value).every((name) => design.rails.has(name))) return;
  tell(reading, item, rail.name, sentence("missing-property.up"), exampleNamed("rail", "up"));
}

function tellNoSeat(reading: Reading, item: Item): void {
  const line =
    item.items.find((each) => factOf(each, "seat") !== undefined) ??
    item.items.find((each) => each.statement.word?.text === "from");
  if (line)
    report(reading, line.source, factOf(line, "seat") ?? line.statement, {
      code: "unknown-name",
      message: sentence("unknown-name.solid-seat"),
    });
}

/** A stick stands somewhere, and its head is somewhere; a crest on sticks has a place of its own. */
function checkStick(reading: Reading, item: Item, stick: StickDesign): void {
  const lines = stick.through?.value.row !== undefined;
  if (!lines && lacks(item, "feet"))
    tell(reading, item, stick.name, sentence("missing-property.feet"), exampleNamed("stick", "feet"));
  const alone = stick.place?.value.out === 0 && !stick.pair;
  if (lacks(item, "heads") && !alone)
    tell(reading, item, stick.name, "`heads`", exampleNamed("stick", "heads"));
}

/** How deep a seat is follows from nothing but its own line, unless it is round. */
function checkSolidSeat(reading: Reading, item: Item): void {
  if (lacks(item, "round") && lacks(item, "deep"))
    tell(reading, item, sentence("missing-property.the-seat"), "`deep`", exampleNamed("solid-seat", "deep"));
}

function checkRequired(reading: Reading, item: Item, kind: Kind): void {
  const given = new Set(
    item.items.flatMap((line) => [facetOf(line), ...(line.statement.row?.insteadOf ?? [])]),
  );
  const told = new Set<string>();
  for (const row of vocabulary.rows) {
    const facet = row.facet ?? row.word;
    if (row.owner !== kind || !row.required || given.has(facet) || told.has(facet)) continue;
    told.add(facet);
    const words = new Set(
      vocabulary.rows
        .filter((one) => one.owner === kind && (one.facet ?? one.word) === facet)
        .map(({ word }) => word),
    );
    const name = item.key.startsWith("name ")
      ? item.key.slice("name ".length)
      : (item.statement.word?.text ?? sentence("missing-property.this-block"));
    tell(reading, item, name, orList([...words].map((word) => `\`${word}\``)), row);
  }
}

/** The row whose example shows what is missing. */
const exampleNamed = (owner: Kind, word: string): Row =>
  vocabulary.rows.find((row) => row.owner === owner && row.word === word)!;

function tell(reading: Reading, item: Item, name: string, what: string, row: Row): void {
  report(reading, item.source, item.statement.word ?? item.statement, {
    code: "missing-property",
    message: sentence("missing-property.needs", { Part: name, what, example: exampleOf(row, reading.unit) }),
    ...(item.key.startsWith("name ") ? { subject: name } : {}),
  });
}
