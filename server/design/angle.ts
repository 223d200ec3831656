/**
 * What the text says of an angle that the designer cares about.
 */
import { sentence } from "../../grammar/sentences/sentence.ts";
import type { Fact } from "../../grammar/tree.ts";
import type { AngleDesign, AngleTerm, Named } from "./design.ts";
import type { Item } from "./merge.ts";
import { checked } from "./names.ts";
import {
  angle,
  factOf,
  factsOf,
  given,
  isWhole,
  lengthAt,
  lineOf,
  type Reading,
  report,
  spanOf,
} from "./reading.ts";

export function newAngle(named: Named): AngleDesign {
  return { ...named, is: "angle" };
}

export function readAngle(reading: Reading, item: Item, design: AngleDesign): void {
  const line = lineOf(item, "between");
  if (line !== undefined) readBetween(reading, line, design);
  const limit = lineOf(item, "limit");
  if (limit === undefined) return;
  const low = angle(reading, limit, "low");
  const high = angle(reading, limit, "high");
  if (low === undefined && high === undefined) return;
  const at = spanOf([factOf(limit, "low"), factOf(limit, "high")], limit.statement);
  if (low !== undefined && high !== undefined && low.value > high.value) {
    report(reading, limit.source, at, {
      code: "impossible-size",
      message: sentence("impossible-size.limit"),
    });
    return;
  }
  design.limit = given(limit, at, {
    ...(low ? { low: low.value } : {}),
    ...(high ? { high: high.value } : {}),
  });
}

function readBetween(reading: Reading, line: Item, design: AngleDesign): void {
  const seen = factOf(line, "seen");
  if (seen?.name === "side" || seen?.name === "front" || seen?.name === "above")
    design.seenFrom = given(line, seen, seen.name);
  const facts = factsOf(line).filter(
    (fact) => fact.label === "term" || fact.label === "above" || fact.label === "below",
  );
  const terms: AngleTerm[] = [];
  let broken = false;
  for (const fact of facts) {
    const last = terms.at(-1);
    if (fact.label === "term") {
      const term = termOf(reading, line, fact);
      if (term === undefined) broken = true;
      else terms.push(term);
    } else if (last?.is === "part" && !broken) {
      const height = lengthAt(reading, line, fact);
      if (height === undefined) broken = true;
      else last[fact.label === "above" ? "above" : "below"] = height.value;
    }
  }
  const count = facts.filter((fact) => fact.label === "term").length;
  const [first, second] = terms;
  const at = spanOf(facts, line.statement);
  if (count > 0 && count !== 2) {
    if (!isWhole(line)) return;
    report(reading, line.source, at, {
      code: "needs-two",
      message: sentence(count === 1 ? "angle-of-two.one" : "angle-of-two", { count }),
    });
  } else if (!broken && first !== undefined && second !== undefined) {
    design.between = given(line, at, [first, second]);
  }
}

function termOf(reading: Reading, line: Item, fact: Fact): AngleTerm | undefined {
  if (fact.name === "seat" || fact.name === "floor") return { is: fact.name };
  const part = checked(reading, line, fact, ["post", "rail"]);
  return part && { is: "part", part: part.value };
}
