/**
 * What a maker can set, per folder. Settings come from outside, so each is checked, and one bad value costs that value alone.
 */
const levels = ["off", "hint", "information", "warning", "error"] as const;
export type Level = (typeof levels)[number];

export interface Settings {
  /** A rule's code → how loudly it speaks in place of its own severity. */
  rules: Record<string, Level>;
  inlayHints: { lengths: boolean; bevels: boolean; values: boolean; strength: boolean };
  codeLens: boolean;
  /** How hard each part works, in the line above it. */
  codeLensStrength: boolean;
  /** Most problems shown for one file. */
  problemLimit: number;
}

export const defaultSettings: Settings = {
  rules: {},
  inlayHints: { lengths: true, bevels: false, values: true, strength: false },
  codeLens: true,
  codeLensStrength: false,
  problemLimit: 200,
};

/** Settings from whatever the client gave; what is missing or wrong takes its default. */
export function readSettings(given: unknown): Settings {
  const { rules, inlayHints, codeLens, codeLensStrength, problemLimit } = record(given);
  const hints = record(inlayHints);
  const { inlayHints: usual } = defaultSettings;
  return {
    rules: Object.fromEntries(
      Object.entries(record(rules)).filter((rule): rule is [string, Level] => isLevel(rule[1])),
    ),
    inlayHints: {
      lengths: flag(hints.lengths, usual.lengths),
      bevels: flag(hints.bevels, usual.bevels),
      values: flag(hints.values, usual.values),
      strength: flag(hints.strength, usual.strength),
    },
    codeLens: flag(codeLens, defaultSettings.codeLens),
    codeLensStrength: flag(codeLensStrength, defaultSettings.codeLensStrength),
    problemLimit: count(problemLimit, defaultSettings.problemLimit),
  };
}

/** By hand: a library for it would be a tenth of the server's bundle. */
function record(given: unknown): Record<string, unknown> {
  return typeof given === "object" && given !== null && !Array.isArray(given) ? { ...given } : {};
}

const flag = (given: unknown, usual: boolean): boolean => (typeof given === "boolean" ? given : usual);

const isLevel = (given: unknown): given is Level => levels.includes(given as Level);

/** The most that the limit can be set to. */
const MOST = 100_000;

function count(given: unknown, usual: number): number {
  return Number.isInteger(given) && (given as number) >= 1 && (given as number) <= MOST
    ? (given as number)
    : usual;
}
