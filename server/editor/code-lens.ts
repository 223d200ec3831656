/**
 * A line over each post, rail, slat, stick and bow: its length, its joints and the worst that is found of it.
 */

import type { CodeLens } from "vscode-languageserver-types";
import type { Problem, Severity } from "../../grammar/problem.ts";
import type { Chair } from "../chair/chair.ts";
import { partsNamed, stemOf } from "../design/identity.ts";
import { printBareLength, printLength, printMargin } from "../design/units.ts";
import { rulingOf } from "./about/about-strength.ts";
import { problemsShown } from "./diagnostics.ts";
import { jointsAt, postsOf, railsOf, withoutTwins } from "./names/chair-parts.ts";
import { declarations } from "./names/mentions.ts";
import type { Settings } from "./settings.ts";
import { rangeOf, type View } from "./view.ts";

const order: Severity[] = ["error", "warning", "information", "hint"];

/** Commands of our own client that lenses run: a part on the drawing, a finding in the text. */
export const SHOW_PART = "seatwright.showPart";
export const SHOW_FINDING = "seatwright.showFinding";

/** The lenses of a file; none when the setting turns them off. Those of a client that runs our `commands` can be clicked. */
export function codeLenses(view: View, settings: Settings, { commands = false } = {}): CodeLens[] {
  if (!settings.codeLens) return [];
  const problems = problemsShown(view, settings);
  return [...declarations(view.tree).values()].flatMap(({ name, statement, start, end }) => {
    const range = rangeOf(view.document, { start, end });
    const figures = figuresOf(view, statement.word?.text, name, settings.codeLensStrength);
    if (!figures) return [];
    const worst = worstOf(problems.filter(({ subject }) => subject !== undefined && speaksOf(subject, name)));
    const finding = worst && `${worst.severity}: ${worst.code}${worst.found ? ` (${worst.found})` : ""}`;
    if (!commands)
      return [{ range, command: { title: [figures, finding].filter(Boolean).join(" · "), command: "" } }];
    const lens = (title: string, command: string, tooltip: string, at: number) => ({
      range,
      command: { title, command, tooltip, arguments: [view.uri, view.document.positionAt(at)] },
    });
    return [
      lens(figures, SHOW_PART, "Show on the drawing", start),
      ...(worst && finding ? [lens(finding, SHOW_FINDING, "Go to the finding", worst.start)] : []),
    ];
  });
}

function figuresOf(
  view: View,
  word: string | undefined,
  name: string,
  strength: boolean,
): string | undefined {
  const { chair, design } = view.study;
  const built: readonly { name: string; length: number }[] =
    word === "post" ? postsOf(chair, name) : word === "bow" ? bowOf(chair, name) : railsOf(chair, name);
  const members = withoutTwins(built);
  if (!members.length) return undefined;
  const found = members.map(({ length }) => length);
  const [least, most] = [Math.min(...found), Math.max(...found)];
  const [low, high] = [printLength(least, design.units), printLength(most, design.units)];
  const joints = jointsAt(chair, members[0]?.name ?? "").length;
  return [
    built.length > 1 ? `${built.length} off` : "",
    low === high ? low : `${printBareLength(least, design.units)} to ${high}`,
    `${joints} ${joints === 1 ? "joint" : "joints"}${members.length > 1 ? " each" : ""}`,
    strength ? works(view, members) : "",
  ]
    .filter(Boolean)
    .join(" · ");
}

/** How hard the hardest of some parts works, once that is known. */
function works({ study }: View, members: readonly { name: string }[]): string {
  const most = Math.max(-1, ...members.map(({ name }) => rulingOf(study, "members", name)?.demand ?? -1));
  return most < 0 ? "" : `works at ${printMargin(most)}`;
}

function speaksOf(subject: string, name: string): boolean {
  return partsNamed(subject).some((part) => stemOf(part) === name);
}

function worstOf(problems: Problem[]): Problem | undefined {
  return [...problems].sort((a, b) => order.indexOf(a.severity) - order.indexOf(b.severity))[0];
}

/** A bow and its length along the curve; nothing where none of that name is built. */
function bowOf(chair: Chair, name: string): { name: string; length: number }[] {
  const bow = chair.bows.get(name);
  return bow ? [{ name, length: bow.path.length }] : [];
}
