/**
 * What the text says of the whole chair: its sitter, timber and trims.
 */
import { sentence } from "../../grammar/sentences/sentence.ts";
import type { Given, SitterDesign, StabilityDesign, TrimDesign } from "./design.ts";
import type { Item } from "./merge.ts";
import { checked } from "./names.ts";
import { allOf, count, factOf, figure, given, length, type Reading, report, spanOf } from "./reading.ts";

/** Whom the chair is for; adults when nothing says otherwise. */
export function readSitter(
  reading: Reading,
  item: Item | undefined,
  fallback: Given<SitterDesign>["at"],
): Given<SitterDesign> {
  const adult: Given<SitterDesign> = { value: { is: "adult" }, at: fallback, assumed: true };
  if (item === undefined) return adult;
  if (item.items.length > 0) return given(item, item.statement.word ?? fallback, ownMeasures(reading, item));
  const kind = factOf(item, "adult");
  if (kind !== undefined) {
    const group = factOf(item, "group")?.name;
    return given(item, kind, group === "women" || group === "men" ? { is: "adult", group } : { is: "adult" });
  }
  const mark = count(reading, item, "mark", 20, 0);
  if (mark !== undefined) return { ...mark, value: { is: "school-mark", mark: mark.value } };
  const from = count(reading, item, "from", 18, 0);
  const to = count(reading, item, "to", 18, 0);
  if (from === undefined || to === undefined) return adult;
  const at = spanOf([factOf(item, "from"), factOf(item, "to")], item.statement);
  if (from.value > to.value) {
    report(reading, item.source, at, {
      code: "impossible-size",
      message: sentence("impossible-size.ages"),
    });
    return adult;
  }
  return given(item, at, { is: "child", from: from.value, to: to.value });
}

/** By which loads the chair is to stay up; nothing when the text leaves it. */
export function readStability(reading: Reading, item: Item | undefined): Given<StabilityDesign> | undefined {
  if (item === undefined) return undefined;
  const edition = factOf(item, "edition");
  const age = count(reading, item, "age", 18, 1);
  if (edition?.name === undefined && age === undefined) return undefined;
  return given(item, spanOf([edition, factOf(item, "age")], item.statement), {
    ...(edition?.name !== undefined && { edition: edition.name }),
    ...(age && { childAge: age.value }),
  });
}

function ownMeasures(reading: Reading, item: Item): SitterDesign {
  const measures = new Map<string, Given<number>>();
  for (const line of item.items) {
    const name = line.statement.word?.text;
    if (name === undefined || measures.has(name)) continue;
    const found =
      name === "weight"
        ? figure(reading, line, "measure", "mass")
        : length(reading, line, "measure", "positive");
    if (found !== undefined) measures.set(name, found);
  }
  return { is: "named", measures };
}

/** One `trim` line: posts that the chair's own file trims anew are left out of a line it starts from. */
export function readTrim(reading: Reading, item: Item): TrimDesign | undefined {
  const facts = allOf(item, "post").filter(
    (fact) => fact.name === undefined || !item.dropped?.has(fact.name),
  );
  const posts = facts.flatMap((fact) => checked(reading, item, fact, ["post"]) ?? []);
  const cut = length(reading, item, "length", "not negative");
  if (posts.length === 0 || cut === undefined) return undefined;
  const trim: TrimDesign = { posts, length: cut, statement: item.statement };
  if (item.source.file !== undefined) trim.file = item.source.file;
  return trim;
}
