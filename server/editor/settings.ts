/**
 * What a maker can set, per folder. Settings come from outside, so each is checked, and one bad value costs that value alone.
 */
import * as z from "zod/mini";

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
  rules: z.pipe(
    z.catch(z.record(z.string(), z.unknown()), {}),
    z.transform((rules) =>
      Object.fromEntries(
        Object.entries(rules).flatMap(([code, value]) => {
          const read = level.safeParse(value);
          return read.success ? [[code, read.data] as const] : [];
        }),
      ),
    ),
  ),
  inlayHints: z.catch(
    z.object({
      lengths: z.catch(z.boolean(), hints.lengths),
      bevels: z.catch(z.boolean(), hints.bevels),
      values: z.catch(z.boolean(), hints.values),
    }),
    hints,
  ),
  codeLens: z.catch(z.boolean(), defaultSettings.codeLens),
  problemLimit: z.catch(z.int().check(z.minimum(1), z.maximum(100_000)), defaultSettings.problemLimit),
});

/** Settings from whatever the client gave; what is missing or wrong takes its default. */
export function readSettings(given: unknown): Settings {
  const read = schema.safeParse(given ?? {});
  return read.success ? read.data : defaultSettings;
}
