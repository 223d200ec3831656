/**
 * What `range` and `reach` give as JSON.
 */
import * as z from "zod";

const known = z.object({
  code: z.string(),
  subject: z.string().describe("Full name of the part or joint; empty where the finding has none."),
  severity: z.enum(["error", "warning"]),
  message: z.string(),
});

const choice = {
  name: z.string().describe("A `let`, or where the figure stands: `back.height`, `trim.back`."),
  unit: z
    .enum(["mm", "cm", "in", "deg", "1"])
    .describe("Of all figures of the choice: the file's own for lengths."),
};

const axis = {
  ...choice,
  low: z.number(),
  high: z.number(),
  now: z.number(),
  step: z.number().describe("What a maker would move it by at least."),
};

const valueUnit = z.enum(["mm", "mm²", "mm³", "deg", "kg", "N", "%", "1"]);

const one = z.object({
  ...axis,
  tried: z.number().int().describe("Places tried, evenly from low to high, both among them."),
  free: z.array(z.tuple([z.number(), z.number()])).describe("Stretches where nothing is found."),
  bands: z
    .array(z.object({ ...known.shape, from: z.number(), to: z.number() }))
    .describe("Each finding's stretches, with the message of the place nearest to where the file is now."),
  values: z
    .array(z.object({ name: z.string(), unit: valueUnit, at: z.array(z.number().nullable()) }))
    .describe("Worked-out values at each place tried; null where one cannot be worked out."),
});

export const rangeOutput = z.union([
  one.describe("With --value NAME."),
  z
    .object({ chair: z.string(), ranges: z.array(one) })
    .describe("Without --value: every value of the file with `within`."),
]);

export const rangeMapOutput = z.object({
  chair: z.string(),
  across: z.object({ ...axis, places: z.array(z.number()) }),
  up: z.object({ ...axis, places: z.array(z.number()) }),
  findings: z.array(known),
  rows: z
    .array(z.array(z.array(z.number().int())))
    .describe("For each place up, for each place across, which of the findings there are, by index."),
});

const edit = z.object({
  line: z.number().int().min(1),
  column: z.number().int().min(1),
  endLine: z.number().int().min(1),
  endColumn: z.number().int().min(1),
  newText: z.string(),
});

const change = {
  ...choice,
  from: z.number(),
  to: z.number(),
  written: z.string().describe("As the text then has it."),
};

export const reachOutput = z.object({
  chair: z.string(),
  value: z.string(),
  unit: valueUnit.describe("Of now and got."),
  asked: z.string(),
  now: z.number().nullable(),
  ways: z
    .array(
      z.object({
        ...change,
        got: z.number(),
        met: z
          .boolean()
          .describe("Whether it is as asked; else the best this choice can do within its range."),
        comes: z.array(known).describe("Findings that come with it."),
        goes: z.array(known).describe("Findings that go with it."),
        edits: z.array(edit),
      }),
    )
    .describe("Single choices that move it, the best first."),
});

export const reachAllOutput = z.object({
  chair: z.string(),
  met: z.boolean(),
  requirements: z.array(
    z.object({
      value: z.string(),
      unit: valueUnit.describe("Of was and got."),
      asked: z.string(),
      was: z.number().nullable(),
      got: z.number().nullable(),
      met: z.boolean(),
    }),
  ),
  changes: z.array(z.object(change)),
  edits: z.array(edit),
  comes: z.array(known),
  goes: z.array(known),
  against: z.array(z.string()).describe("Requirements that no figures within the ranges meet together."),
});

export type OneRange = z.infer<typeof one>;
export type RangeOutput = z.infer<typeof rangeOutput>;
export type RangeMapOutput = z.infer<typeof rangeMapOutput>;
export type ReachOutput = z.infer<typeof reachOutput>;
export type ReachAllOutput = z.infer<typeof reachAllOutput>;
