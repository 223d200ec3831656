/**
 * A line over each post, rail and slat: its length, its joints and the worst that is found of it.
 */

import type { CodeLens } from "vscode-languageserver-types";
import type { Problem, Severity } from "../../grammar/problem.ts";
import { partsNamed, stemOf } from "../design/identity.ts";
import { printBareLength, printLength } from "../design/units.ts";
import { problemsShown } from "./diagnostics.ts";
import { jointsAt, postsOf, railsOf, withoutTwins } from "./names/chair-parts.ts";
import { declarations } from "./names/mentions.ts";
import type { Settings } from "./settings.ts";
import { rangeOf, type View } from "./view.ts";

const order: Severity[] = ["error", "warning", "information", "hint"];

/** The lenses of a file; none when the setting turns them off. */
export function codeLenses(view: View, settings: Settings): CodeLens[] {
  if (!settings.codeLens) return [];
  const problems = problemsShown(view, settings);
  return [...declarations(view.tree).values()].flatMap(({ name, statement, start, end }) => {
    const title = titleOf(view, statement.word?.text, name, problems);
    return title ? [{ range: rangeOf(view.document, { start, end }), command: { title, command: "" } }] : [];
  });
}

function titleOf(
  view: View,
  word: string | undefined,
  name: string,
  problems: Problem[],
): string | undefined {
  const { chair, design } = view.study;
  const built: readonly { name: string; length: number }[] =
    word === "post" ? postsOf(chair, name) : word === "rail" || word === "slat" ? railsOf(chair, name) : [];
  const members = withoutTwins(built);
  if (!members.length) return undefined;
  const found = members.map(({ length }) => length);
  const [least, most] = [Math.min(...found), Math.max(...found)];
  const [low, high] = [printLength(least, design.units), printLength(most, design.units)];
  const joints = jointsAt(chair, members[0]?.name ?? "").length;
  const worst = worstOf(problems.filter(({ subject }) => subject !== undefined && speaksOf(subject, name)));
  return [
    built.length > 1 ? `${built.length} off` : "",
    low === high ? low : `${printBareLength(least, design.units)} to ${high}`,
    `${joints} ${joints === 1 ? "joint" : "joints"}${members.length > 1 ? " each" : ""}`,
    worst ? `${worst.severity}: ${worst.code}${worst.found ? ` (${worst.found})` : ""}` : "",
  ]
    .filter(Boolean)
    .join(" · ");
}

function speaksOf(subject: string, name: string): boolean {
  return partsNamed(subject).some((part) => stemOf(part) === name);
}

function worstOf(problems: Problem[]): Problem | undefined {
  return [...problems].sort((a, b) => order.indexOf(a.severity) - order.indexOf(b.severity))[0];
}
