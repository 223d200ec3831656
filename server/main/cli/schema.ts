/**
 * What the command line gives as JSON. The published schemas in `schema/` are made from these.
 */
import * as z from "zod";

const finding = z
  .object({
    code: z.string().describe("The rule's code, as `seatwright explain` takes it."),
    severity: z.enum(["error", "warning", "information", "hint"]),
    message: z.string(),
    line: z.number().int().min(1),
    column: z.number().int().min(1).describe("In UTF-16 code units, from 1."),
    endLine: z.number().int().min(1),
    endColumn: z.number().int().min(1),
    subject: z.string().optional().describe("Full name of the part or joint at fault."),
    found: z.string().optional().describe("The figure found, with its unit."),
    allowed: z.string().optional().describe("The figure allowed, with its unit."),
    because: z.string().optional().describe("Why the file accepts it; only among the accepted."),
  })
  .describe("One thing found in a file.");

export const checkOutput = z.object({
  files: z.array(
    z.object({
      file: z.string().describe("As named on the command line."),
      refused: z.string().optional().describe("Why the file could not be read; then it has no findings."),
      findings: z.array(finding),
      accepted: z.array(finding).describe("What the file accepts with a reason."),
    }),
  ),
  errors: z.number().int().min(0),
  warnings: z.number().int().min(0),
});

export const reckonOutput = z.object({
  chair: z.string().describe("The chair's title, or its file's name if it has none."),
  values: z
    .record(
      z.string(),
      z.object({
        value: z.number(),
        unit: z
          .enum(["mm", "mm²", "mm³", "deg", "kg", "N", "%", "1"])
          .describe("`1` for plain numbers, such as counts and margins."),
      }),
    )
    .describe("Every worked-out value by its dotted name, as the chair stands."),
});

export type Finding = z.infer<typeof finding>;
export type CheckOutput = z.infer<typeof checkOutput>;
export type ReckonOutput = z.infer<typeof reckonOutput>;

/** The published schemas by file name. */
export const schemas = { "check.schema.json": checkOutput, "reckon.schema.json": reckonOutput };

/** A schema as it is published: JSON Schema, as text. */
export function published(name: keyof typeof schemas): string {
  return `${JSON.stringify(z.toJSONSchema(schemas[name]), null, 2)}\n`;
}
