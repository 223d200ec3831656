/**
 * Worked-out figures shown at the ends of the lines they follow from, each behind a sign that no text of the language begins with, so that
 * none is taken for text. Each kind is a setting.
 */
import type { InlayHint } from "vscode-languageserver-types";
import type { Span } from "../../grammar/problem.ts";
import type { Statement, Value } from "../../grammar/tree.ts";
import { everyStatement } from "../../grammar/walk.ts";
import type { Rail } from "../chair/chair.ts";
import { printWorked } from "../chair/values/print.ts";
import { workedValue } from "../chair/values/values.ts";
import { printBareLength, printBevel, printLength, printMargin, printQuantity } from "../design/units.ts";
import { rulingOf } from "./about/about-strength.ts";
import { comesTo, lengthOf } from "./about/about-value.ts";
import { railsOf, withoutTwins } from "./names/chair-parts.ts";
import { everyValue, headEnd } from "./names/place.ts";
import type { Settings } from "./settings.ts";
import { meet, type View } from "./view.ts";

/** Before what something comes to, and before a length between shoulders. */
const COMES_TO = "→ ";
const BETWEEN = "↔ ";

/** The blocks whose members are told between shoulders. */
const barred = new Set(["rail", "slat", "stick"]);
/** The words that say where a rail or slat runs. */
const courses = new Set(["across", "from", "over"]);

/** The hints in a stretch of text. */
export function inlayHints(view: View, stretch: Span, { inlayHints: wanted }: Settings): InlayHint[] {
  const hints: InlayHint[] = [];
  for (const statement of everyStatement(view.tree.statements)) {
    if (!meet({ start: statement.start, end: headEnd(statement) }, stretch)) continue;
    const rails = courses.has(statement.word?.text ?? "") ? railsAround(view, statement) : [];
    if (wanted.lengths && rails.length) hints.push(lengths(view, statement, rails));
    if (wanted.bevels && rails[0] && !rails[0].round) hints.push(...bevels(view, statement, rails[0]));
    if (wanted.strength && (courses.has(statement.word?.text ?? "") || statement.word?.text === "joined"))
      hints.push(...strength(view, statement));
    if (wanted.values) hints.push(...values(view, statement));
  }
  return hints;
}

function railsAround(view: View, { owner }: Statement): Rail[] {
  const name = owner?.match?.facts.find(({ slot }) => slot === "name")?.name;
  return name === undefined || !barred.has(owner?.word?.text ?? "")
    ? []
    : withoutTwins(railsOf(view.study.chair, name));
}

function lengths(view: View, statement: Statement, rails: Rail[]): InlayHint {
  const unit = view.study.design.units;
  const found = rails.map(({ length }) => length);
  const [least, most] = [Math.min(...found), Math.max(...found)];
  const [low, high] = [printLength(least, unit), printLength(most, unit)];
  const label = low === high ? low : `${printBareLength(least, unit)} to ${high}`;
  return hint(
    view,
    headEnd(statement),
    BETWEEN + label,
    "Between shoulders, along the top edge of the outside face",
  );
}

function bevels(view: View, statement: Statement, rail: Rail): InlayHint[] {
  const said = rail.ends.flatMap(({ name, entered, faceBevel, edgeBevel }) =>
    entered ? [`${name}: face ${printBevel(faceBevel)}, edge ${printBevel(edgeBevel)}`] : [],
  );
  return said.length
    ? [
        hint(
          view,
          headEnd(statement),
          COMES_TO + said.join("; "),
          "Bevels of the shoulder lines, measured inside the rail",
        ),
      ]
    : [];
}

/** How hard the joints of a part work, at the line that names their joint, and the part itself where its course is given. */
function strength(view: View, statement: Statement): InlayHint[] {
  const { study } = view;
  const { word, match } = statement;
  const joined = word?.text === "joined";
  const rulings = joined
    ? withoutTwins(
        [...study.chair.joints.values()].filter(({ at }) =>
          (match?.facts ?? []).some(({ start, end }) => start <= at.start && at.end <= end),
        ),
      ).flatMap(({ name }) => rulingOf(study, "joints", name) ?? [])
    : railsAround(view, statement).flatMap(({ name }) => rulingOf(study, "members", name) ?? []);
  const [hardest] = [...rulings].sort((a, b) => b.demand - a.demand);
  if (!hardest) return [];
  return [hint(view, headEnd(statement), `works at ${printMargin(hardest.demand)}`, hardest.title)];
}

/** What each expression of a line comes to, where its text does not say so already. */
function values(view: View, statement: Statement): InlayHint[] {
  const unit = view.study.design.units;
  if (statement.word?.text === "angle") {
    const fact = statement.match?.facts.find(({ slot }) => slot === "name");
    const worked = fact?.name === undefined ? undefined : workedValue(view.study.chair, fact.name);
    return fact && worked ? [hint(view, fact.end, COMES_TO + printWorked(worked, unit), worked.meaning)] : [];
  }
  return (statement.match?.facts ?? []).flatMap(({ value, slot }) => {
    if (!value || saysItself(value)) return [];
    const quantity = slot === "length" ? lengthOf(view.study, value) : comesTo(view.study, value);
    return quantity
      ? [hint(view, value.end, COMES_TO + printQuantity(quantity, unit), "What this comes to")]
      : [];
  });
}

/** A plain number, with or without a unit, needs no hint; a share of something has no single size. */
function saysItself(value: Value): boolean {
  for (const inside of everyValue(value)) {
    if (inside.is === "share" || inside.is === "unreadable") return true;
  }
  for (const inside of everyValue(value)) {
    if (inside.is === "name" || inside.is === "binary" || inside.is === "call") return false;
  }
  return true;
}

function hint(view: View, offset: number, label: string, tooltip?: string): InlayHint {
  const text = view.document.getText();
  let end = offset;
  while (end > 0 && (text[end - 1] === " " || text[end - 1] === "\t")) end--;
  return { position: view.document.positionAt(end), label, paddingLeft: true, ...(tooltip && { tooltip }) };
}
