/**
 * What is said about whatever stands under the pointer.
 */
import type { Hover, MarkupContent } from "vscode-languageserver-types";
import type { Span } from "../../grammar/problem.ts";
import type { Fact, Part, Statement, Value } from "../../grammar/tree.ts";
import { lineAt } from "../../grammar/walk.ts";
import type { Joint } from "../chair/chair.ts";
import { workedValue } from "../chair/values/values.ts";
import { printQuantity, printSlope } from "../design/units.ts";
import { jointPicture } from "../drawing/joint-picture.ts";
import { goesBy } from "../rules/machinery/rule.ts";
import { aboutName } from "./about/about.ts";
import { aboutJoint } from "./about/about-joint.ts";
import { aboutWorked, comesTo, lengthOf } from "./about/about-value.ts";
import { aboutRow, aboutRule, aboutWord } from "./about/about-word.ts";
import { bullets, code, paragraphs, plain } from "./about/markdown.ts";
import { shortened } from "./about/short.ts";
import { jointsCalled, nameOfPart, withoutTwins } from "./names/chair-parts.ts";
import { commentAt, factsAt, partAt, refSlot, valueAt, valuesAt, within } from "./names/place.ts";
import { rangeOf, type View } from "./view.ts";

interface Told extends Span {
  says: string;
}

/** The hover at a place in a dozen lines or fewer, or nothing where there is nothing to tell. */
export function hover(view: View, offset: number, given: { pictures?: boolean } = {}): Hover | null {
  const told = wholeHover(view, offset, given);
  return told && withText(told, shortened(textOf(told)));
}

/** What a hover says, and the same hover saying something else. */
export const textOf = ({ contents }: Hover): string => (contents as MarkupContent).value;
export const withText = (told: Hover, value: string): Hover => ({
  ...told,
  contents: { kind: "markdown", value },
});

/** The same, however long it is. Joints are shown in section where the editor can show `pictures`. */
export function wholeHover(view: View, offset: number, { pictures = false } = {}): Hover | null {
  if (commentAt(view.tree, offset)) return null;
  const statement = lineAt(view.tree, offset);
  const told = statement && tellOf(view, statement, offset, pictures);
  const findings = findingsAt(view, offset);
  if (!told && !findings) return null;
  const value = [told?.says, findings].filter(Boolean).join("\n\n---\n\n");
  return { contents: { kind: "markdown", value }, ...(told && { range: rangeOf(view.document, told) }) };
}

function tellOf(view: View, statement: Statement, offset: number, pictures: boolean): Told | undefined {
  const { word, row } = statement;
  if (word && within(word, offset) && offset < word.end)
    return row && { ...spanOf(word), says: aboutRow(row, view.study.design.units) };
  const part = partAt(statement, offset);
  if (!part)
    return word && within(word, offset) && row
      ? { ...spanOf(word), says: aboutRow(row, view.study.design.units) }
      : undefined;
  const value = valueAt(statement, offset);
  if (value) return ofValue(view, statement, value, offset);
  const fact = factsAt(statement, offset).find(
    ({ slot }) => slot === "name" || slot === "ref" || slot === "word",
  );
  return (fact && ofFact(view, statement, fact, pictures)) ?? ofWord(view, part);
}

function ofFact(view: View, statement: Statement, fact: Fact, pictures: boolean): Told | undefined {
  if (!fact.name) return undefined;
  const { study } = view;
  if (fact.slot === "word") {
    const says = aboutWord(view.vocabulary, fact.name, "choice");
    return says === undefined ? undefined : { ...spanOf(fact), says };
  }
  const slot = statement.row && refSlot(statement.row, fact.label);
  if (slot?.ref === "rule") {
    const rule = view.rules.find((each) => fact.name !== undefined && goesBy(each, fact.name));
    return rule && { ...spanOf(fact), says: aboutRule(rule) };
  }
  if (slot?.words.includes(fact.name)) {
    const says = aboutWord(view.vocabulary, fact.name);
    if (says) return { ...spanOf(fact), says };
  }
  const made = fact.label === "joint" ? jointsMade(view, fact) : [];
  const says = made.length ? aboutUse(view, fact.name, made) : aboutName(study, nameOfPart(fact.name));
  const shown = pictures && picturesOf(view, made.length ? made : jointsCalled(study.chair, fact.name));
  if (!says) return undefined;
  // Right under the title: hovers are short, and what comes last has to be scrolled to.
  const [title, ...rest] = says.split("\n\n");
  return { ...spanOf(fact), says: paragraphs(title, shown, ...rest) };
}

/** The joints that a line makes, right-hand twins left out. */
function jointsMade(view: View, at: Span): Joint[] {
  const joints = [...view.study.chair.joints.values()];
  return withoutTwins(joints.filter((joint) => joint.at.start <= at.end && at.start <= joint.at.end));
}

/** Most joints shown in section in one hover. */
const MOST_PICTURES = 2;

/** Joints in section, as images within the text: nothing is fetched. */
function picturesOf({ study: { chair } }: View, joints: readonly Joint[]): string {
  return joints
    .slice(0, MOST_PICTURES)
    .flatMap((joint) => {
      const picture = jointPicture(chair, joint);
      const address =
        picture && `data:image/svg+xml,${encodeURIComponent(picture).replace(/[()]/g, percent)}`;
      return address ? `![${plain(joint.name)} in section](${address})` : [];
    })
    .join("\n\n");
}

const percent = (sign: string): string => `%${sign.charCodeAt(0).toString(16)}`;

/** A joint where it is used: its sizes there, as cut, against the rules. */
function aboutUse(view: View, name: string, made: Joint[]): string {
  const description = view.study.design.joints.get(name)?.description;
  return paragraphs(
    `**${plain(`joint ${name}`)}**`,
    ...made.map((joint) => bullets(aboutJoint(joint, view.rules, view.study))),
    description && plain(description),
  );
}

function ofValue(view: View, statement: Statement, value: Value, offset: number): Told | undefined {
  const path = valuesAt(value, offset);
  const narrow = path.at(-1);
  if (!narrow) return undefined;
  if (narrow.is === "call" && within(narrow.fn, offset)) {
    return {
      ...spanOf(narrow.fn),
      says: paragraphs(
        aboutWord(view.vocabulary, narrow.fn.text, "function"),
        amount(view, statement, narrow),
      ),
    };
  }
  if (narrow.is === "share" && within(narrow.of, offset)) {
    const says = aboutWord(view.vocabulary, narrow.of.text, "marker");
    return says === undefined ? undefined : { ...spanOf(narrow.of), says };
  }
  if (narrow.is === "name") return ofName(view, narrow);
  if (narrow.is === "quantity" && offset > narrow.unitSpan.start) {
    return {
      ...spanOf(narrow),
      says: paragraphs(amount(view, statement, value), aboutWord(view.vocabulary, narrow.unit, "unit")),
    };
  }
  const says = amount(view, statement, value);
  return says === undefined ? undefined : { ...spanOf(value), says };
}

function ofName(view: View, value: Value & { is: "name" }): Told | undefined {
  const { study } = view;
  const worked = workedValue(study.chair, value.name);
  const about = worked
    ? paragraphs(`**${plain(value.name)}**`, aboutWorked(worked, study.design.units))
    : (aboutName(study, nameOfPart(value.name)) ?? aboutWord(view.vocabulary, value.name, "value"));
  return about === undefined ? undefined : { ...spanOf(value), says: about };
}

/** What an expression comes to; slots that take a length take bare numbers for one. */
function amount(view: View, statement: Statement, value: Value): string | undefined {
  const slot = statement.match?.facts.find((fact) => fact.value && within(fact, value.start))?.slot;
  const quantity = slot === "length" ? lengthOf(view.study, value) : comesTo(view.study, value);
  if (!quantity) return undefined;
  const run = quantity.dimension === "angle" ? ` (${printSlope(quantity.number)})` : "";
  return `Comes to ${printQuantity(quantity, view.study.design.units)}${run}`;
}

function ofWord(view: View, part: Part): Told | undefined {
  if (part.is !== "word") return undefined;
  const says = aboutWord(view.vocabulary, part.text) ?? aboutName(view.study, nameOfPart(part.text));
  return says === undefined ? undefined : { ...spanOf(part), says };
}

/** The rules whose findings lie here, explained. */
function findingsAt(view: View, offset: number): string | undefined {
  const codes = new Set(
    view.study.problems.filter((problem) => within(problem, offset)).map((problem) => problem.code),
  );
  const rules = view.rules.filter((rule) => codes.has(rule.code));
  return rules.length
    ? rules.map((rule) => `${code(rule.code)} ${rule.explanation}`).join("\n\n")
    : undefined;
}

function spanOf({ start, end }: Span): Span {
  return { start, end };
}
