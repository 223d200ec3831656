/**
 * The search for an edge asks only the rules whose findings differ between the two places it lies between.
 */
import { rules } from "../rules/index.ts";
import type { Rule } from "../rules/machinery/rule.ts";
import type { Known } from "./findings.ts";

/** What is found at a place. */
type Found = ReadonlyMap<string, Known>;

/** The rules of what is found at one of two places alone; nothing where all of them have to be asked, since their findings depend on each other. */
export function rulesThatDiffer(a: Found, b: Found): Rule[] | undefined {
  const codes = new Set([...onlyIn(a, b), ...onlyIn(b, a)].map(({ code }) => code));
  const some = rules.filter(({ code }) => codes.has(code));
  const byThemselves = some.length === codes.size && some.every(({ find, late }) => find && late !== "only");
  return byThemselves && !hasAlone(a) && !hasAlone(b) ? some : undefined;
}

const onlyIn = (a: Found, b: Found): Known[] => [...a].flatMap(([key, known]) => (b.has(key) ? [] : [known]));

/** A finding that silences all others. */
const hasAlone = (found: Found): boolean =>
  [...found.values()].some(({ code }) => rules.some((rule) => rule.alone && rule.code === code));

/** What is found at a place between the two where only some rules were asked; what others find is found at both. */
export function foundBetween(a: Found, b: Found, asked: readonly Rule[], judged: Found): Map<string, Known> {
  const codes = new Set(asked.map(({ code }) => code));
  const found = new Map([...a].filter(([key, { code }]) => b.has(key) && !codes.has(code)));
  for (const [key, known] of judged) if (codes.has(known.code)) found.set(key, known);
  return found;
}
