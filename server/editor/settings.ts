/**
 * What a maker can set, per folder. Settings come from outside, so each is checked, and one bad value costs that value alone.
 */
import * as z from "zod";

const level = z.enum(["off", "hint", "information", "warning", "error"]);
export type Level = z.infer<typeof level>;

export interface Settings {
  /** A rule's code → how loudly it speaks in place of its own severity. */
  rules: Record<string, Level>;
  inlayHints: { lengths: boolean; bevels: boolean; values: boolean };
  codeLens: boolean;
  /** Most problems shown for one file. */
  problemLimit: number;
}

export const defaultSettings: Settings = {
  rules: {},
  inlayHints: { lengths: true, bevels: false, values: true },
  codeLens: true,
  problemLimit: 200,
};

const hints = defaultSettings.inlayHints;
const schema = z.object({
  rules: z
    .record(z.string(), z.unknown())
    .catch({})
    .transform((rules) =>
      Object.fromEntries(
        Object.entries(rules).flatMap(([code, value]) => {
          const read = level.safeParse(value);
          return read.success ? [[code, read.data] as const] : [];
        }),
      ),
    ),
  inlayHints: z
    .object({
      lengths: z.boolean().catch(hints.lengths),
      bevels: z.boolean().catch(hints.bevels),
      values: z.boolean().catch(hints.values),
    })
    .catch(hints),
  codeLens: z.boolean().catch(defaultSettings.codeLens),
  problemLimit: z.number().int().min(1).max(100_000).catch(defaultSettings.problemLimit),
});

/** Settings from whatever the client gave; what is missing or wrong takes its default. */
export function readSettings(given: unknown): Settings {
  const read = schema.safeParse(given ?? {});
  return read.success ? read.data : defaultSettings;
}
