/**
 * The names that may stand in a place, by what the place may point at.
 */
import { type CompletionItem, CompletionItemKind } from "vscode-languageserver-types";
import type { RefKind } from "../../../grammar/row.ts";
import { printWorked } from "../../chair/values/print.ts";
import type { Declared } from "../../design/design.ts";
import { functionNames } from "../../design/expressions.ts";
import { printQuantity } from "../../design/units.ts";
import { aboutRules } from "../../rules/file/about-rules.ts";
import { speciesList } from "../../timber/species.ts";
import { aboutName } from "../about/about.ts";
import { aboutRule, aboutWord } from "../about/about-word.ts";
import type { Known } from "../view.ts";

/** Which declared things each kind of reference may point at, the likeliest first. */
const kinds: Partial<Record<RefKind, readonly Declared["is"][]>> = {
  post: ["post"],
  rail: ["rail", "slat"],
  slat: ["slat"],
  member: ["post", "rail", "slat", "stick", "bow"],
  stick: ["stick"],
  bow: ["bow"],
  head: ["rail", "bow"],
  joint: ["joint"],
  part: ["post", "rail", "slat", "stick", "bow", "block"],
  let: ["let"],
  angle: ["angle"],
  board: ["board"],
  target: ["post", "rail", "slat", "stick", "bow", "block"],
  any: ["post", "rail", "slat", "stick", "bow", "block", "joint", "angle", "let", "board", "yard", "load"],
};

const icons: Record<Declared["is"], CompletionItemKind> = {
  post: CompletionItemKind.Struct,
  rail: CompletionItemKind.Struct,
  slat: CompletionItemKind.Struct,
  stick: CompletionItemKind.Struct,
  bow: CompletionItemKind.Struct,
  block: CompletionItemKind.Struct,
  joint: CompletionItemKind.Interface,
  angle: CompletionItemKind.Constant,
  let: CompletionItemKind.Variable,
  board: CompletionItemKind.Struct,
  yard: CompletionItemKind.Struct,
  load: CompletionItemKind.Event,
};

/** Names for a reference, without the thing the line itself belongs to. */
export function namesFor(view: Known, ref: RefKind, not?: string): CompletionItem[] {
  if (ref === "rule")
    return view.rules
      .filter(({ code }) => !aboutRules.has(code))
      .map((rule) => item(rule.code, CompletionItemKind.EnumMember, rule.title, aboutRule(rule)));
  if (ref === "species")
    return speciesList.map(({ key, name, botanical }) =>
      item(key, CompletionItemKind.EnumMember, name, botanical),
    );
  const wanted = kinds[ref] ?? [];
  return [...view.study.design.names.values()].flatMap((declared) => {
    if (!wanted.includes(declared.is) || declared.name === not) return [];
    const detail = "pair" in declared && declared.pair ? `${declared.is}, a pair` : declared.is;
    const about = aboutName(view.study, { name: declared.name });
    const sortText = `${wanted.indexOf(declared.is)}${declared.name}`;
    return [{ ...item(declared.name, icons[declared.is], detail, about), sortText }];
  });
}

interface Wanted {
  worked: boolean;
  /** Worked-out values are what the line is about: those of the whole chair come first, then lets, then those of parts. */
  required?: boolean;
  snippets: boolean;
  /** The thing that the line itself declares. */
  not: string | undefined;
  /** What the place takes; values of it come first, those of another dimension last. */
  dimension?: "length" | "angle";
}

/** What an expression may hold, each with what it comes to: lets and functions, and where asked for the worked-out values. */
export function valueNames(
  view: Known,
  { worked, required = false, snippets, not, dimension }: Wanted,
): CompletionItem[] {
  const { design, chair } = view.study;
  const lets = [...design.lets.values()].flatMap(({ name, value, description }) =>
    name === not
      ? []
      : [
          {
            ...valued(item(name, CompletionItemKind.Variable, undefined, description), {
              printed: value && printQuantity(value.value, design.units),
            }),
            sortText: `${required ? "1" : fits(value?.value.dimension, dimension) ? "0" : "5"}${name}`,
          },
        ],
  );
  const calls = functionNames.map((name) => ({
    ...item(name, CompletionItemKind.Function, undefined, aboutWord(view.vocabulary, name, "function")),
    ...(snippets
      ? { insertText: `${name}($1)$0`, insertTextFormat: 2 as const }
      : { insertText: `${name}(` }),
    sortText: `y${name}`,
  }));
  const values = worked
    ? [...chair.values.values()].map((each) => ({
        ...valued(item(each.name, CompletionItemKind.Property, undefined, each.meaning), {
          printed: printWorked(each, design.units),
        }),
        ...(required && { sortText: `${each.part === undefined ? "0" : "2"}${each.name}` }),
      }))
    : [];
  return [...lets, ...values, ...calls];
}

/** A plain number may stand for a length or an angle. */
const fits = (own: string | undefined, wanted: string | undefined): boolean =>
  wanted === undefined || own === wanted || own === "number";

/** The item with its value beside its name, in every line of the list. */
const valued = (made: CompletionItem, { printed }: { printed: string | undefined }): CompletionItem =>
  printed === undefined ? made : { ...made, detail: printed, labelDetails: { description: printed } };

export function item(
  label: string,
  kind: CompletionItemKind,
  detail?: string,
  documentation?: string,
): CompletionItem {
  return {
    label,
    kind,
    ...(detail && { detail }),
    ...(documentation && { documentation: { kind: "markdown", value: documentation } }),
  };
}
