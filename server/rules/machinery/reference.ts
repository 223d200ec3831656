/**
 * What is made from the rule table for readers and editors: the reference page and the settings.
 */
import { capital } from "../../../grammar/wording.ts";
import type { Bound, Dimension } from "../../design/design.ts";
import { printAngle, printSlope } from "../../design/units.ts";
import type { Rule } from "./rule.ts";

/** The rules reference in Markdown; `exampleOf` gives a chair that breaks a rule, by its code. */
export function reference(rules: readonly Rule[], exampleOf: (code: string) => string | undefined): string {
  const chairRules = rules.filter((rule) => !isLanguage(rule));
  const language = rules.filter(isLanguage);
  const parts = [
    "# The rules, one by one",
    "This page is made from the rule table by `server/rules/reference.ts`; change the table, not the page.",
    'A finding stands on the narrowest text at fault. `limit RULE …` changes a rule\'s figure for one file; `accept RULE on PART because "…"` sets its findings on a part, a pair or a joint (`A to B`) aside, with a reason that stays in the file; the setting `seatwright.rules.RULE` silences a rule or changes how loudly it speaks. A calculation is not a test: local codes, testing and licensed practice come first.',
    "## About the chair",
    ...chairRules.map((rule) => section(rule, exampleOf(rule.code))),
    "## About the language",
    "Reading and the design stage find these. Those that are errors cannot be accepted.",
    ...language.map((rule) => section(rule, exampleOf(rule.code))),
  ];
  return `${parts.join("\n\n")}\n`;
}

const isLanguage = (rule: Rule): boolean => !rule.find && !rule.code.startsWith("accept-");

function section(rule: Rule, example: string | undefined): string {
  const figures = [rule.limit, rule.also].flatMap((figure) =>
    figure ? [inWords(figure, rule.limit?.of)] : [],
  );
  const lines = [
    `### ${rule.code}`,
    `${rule.title}. ${capital(articleOf(rule.severity))}.${figures.length > 0 ? ` Figure: ${figures.join("; ")}.` : ""}`,
    ...(rule.was ? [`Called ${rule.was.map((code) => `\`${code}\``).join(", ")} in earlier versions.`] : []),
    rule.explanation,
    ...(rule.source === "The language." ? [] : [`Source: ${rule.source}`]),
    ...(example === undefined ? [] : [`\`\`\`chair\n${example.trimEnd()}\n\`\`\``]),
  ];
  return lines.join("\n\n");
}

const articleOf = (severity: Rule["severity"]): string =>
  severity === "error" ? "an error" : severity === "information" ? "information" : `a ${severity}`;

function inWords(figure: Bound & { dimension: Dimension }, of: string | undefined): string {
  const print = (number: number): string => {
    if (of === "slope") return printSlope(figure.dimension === "angle" ? number : Math.atan(number));
    if (figure.dimension === "angle") return printAngle(number);
    if (figure.dimension === "number") return `${Math.round(number * 100) / 100} ${of ?? ""}`.trimEnd();
    if (figure.dimension === "share") return `${Math.round(number * 1000) / 10}% as ${of ?? "a share"}`;
    return `${Math.round(number * 100) / 100} mm`;
  };
  if (figure.low !== undefined && figure.high !== undefined)
    return `${print(figure.low)} to ${print(figure.high)}`;
  if (figure.low !== undefined) return `at least ${print(figure.low)}`;
  return `at most ${print(figure.high ?? 0)}`;
}

const levels = ["off", "hint", "information", "warning", "error"];

/** A group of the settings of rules. */
export interface SettingSection {
  title: string;
  properties: Record<string, object>;
}

/** What the groups are called, by the folders that the rules are in, in the order of the settings. */
const groups: Readonly<Record<string, string>> = {
  joints: "Rules: Joints",
  frame: "Rules: Frame",
  seat: "Rules: Seat",
  "solid-seat": "Rules: Solid Seat",
  sitter: "Rules: Sitter",
  stability: "Rules: Standing",
  strength: "Rules: Strength",
  moisture: "Rules: Moisture",
  boards: "Rules: Boards",
  file: "Rules: What a File Claims",
  language: "Rules: Reading the Text",
};

/** A setting for each rule, grouped by subject; `subjectOf` tells a rule's folder. */
export function settingSections(
  rules: readonly Rule[],
  subjectOf: (code: string) => string,
): SettingSection[] {
  const subjects = [...new Set([...Object.keys(groups), ...rules.map(({ code }) => subjectOf(code))])];
  return subjects.flatMap((subject) => {
    const of = rules.filter(({ code }) => subjectOf(code) === subject);
    const title = `%settings.rules.${subject}%`;
    return of.length > 0 ? [{ title, properties: settingsOf(of) }] : [];
  });
}

/** What each level does, in the words of VS Code's own lists. */
const levelDescriptions = [
  "Not reported.",
  "Reported as a hint: three dots under the text.",
  "Reported as information.",
  "Reported as a warning.",
  "Reported as an error.",
];

/** The words of those settings, for `package.nls.json`. */
export function settingWords(
  rules: readonly Rule[],
  subjectOf: (code: string) => string,
): Record<string, string> {
  const subjects = rules.map(({ code }) => subjectOf(code));
  return Object.fromEntries([
    ...levels.map((level, k) => [`rule-level.${level}`, levelDescriptions[k]!]),
    ...subjects.map((subject) => [
      `settings.rules.${subject}`,
      groups[subject] ?? `Rules: ${capital(subject)}`,
    ]),
    ...rules.flatMap(({ code, was = [], title, explanation }) => [
      [`rule.${code}`, `${title}. ${explanation}`],
      ...was.map((old) => [`renamed-rule.${old}`, `The rule is called ${code} today.`]),
    ]),
  ]);
}

function settingsOf(rules: readonly Rule[]): Record<string, object> {
  const enumDescriptions = levels.map((level) => `%rule-level.${level}%`);
  const settings = rules.flatMap(({ code, was = [], severity }): [string, object][] => {
    const setting = { type: "string", enum: levels, enumDescriptions };
    const description = `%rule.${code}%`;
    const today = { ...setting, default: severity, scope: "resource", description };
    const before = (old: string) => ({
      ...setting,
      scope: "resource",
      deprecationMessage: `%renamed-rule.${old}%`,
    });
    return [[code, today], ...was.map((old): [string, object] => [old, before(old)])];
  });
  return Object.fromEntries(
    settings
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([code, setting]) => [`seatwright.rules.${code}`, setting]),
  );
}
