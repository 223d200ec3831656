/**
 * What the command line gives as JSON. The published schemas in `schema/` are made from these.
 */
import * as z from "zod";
import { boardsOutput } from "./schema-boards.ts";
import { markoutOutput } from "./schema-markout.ts";
import { rangeMapOutput, rangeOutput, reachAllOutput, reachOutput } from "./schema-range.ts";
import { strengthOutput } from "./schema-strength.ts";

export type { BoardsOutput } from "./schema-boards.ts";

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
    mends: z
      .array(
        z.object({
          title: z.string(),
          edits: z.array(
            z.object({
              file: z.string().optional().describe("The file to change, where it is another one than this."),
              line: z.number().int().min(1),
              column: z.number().int().min(1),
              endLine: z.number().int().min(1),
              endColumn: z.number().int().min(1),
              newText: z.string(),
            }),
          ),
        }),
      )
      .describe(
        "Changes that were tried: with one, the finding is gone and nothing new is found. Edits stand in the order of the text as checked, none over another. Empty when none was found, and among the accepted.",
      ),
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

const tipping = {
  name: z.string(),
  margin: z.number().nullable().describe("Holding over lifting; over at 1; null when nothing lifts."),
  short: z.number().describe("mm by which the feet would have to stand further that way; 0 when it holds."),
};

export const standOutput = z.object({
  chair: z.string(),
  edition: z.string().describe("Whose loads were used."),
  fromMemory: z.array(z.string()).describe("Figures of the edition that were not seen in print."),
  rocks: z.array(z.object({ foot: z.string(), gap: z.number().describe("mm") })),
  weight: z.number().nullable().describe("kg; null while a part's timber is not known."),
  centre: z
    .array(z.number())
    .nullable()
    .describe("Centre of gravity as it stands: mm to the sitter's left, back, up."),
  parts: z.array(z.object({ name: z.string(), weight: z.number().describe("kg") })),
  unknownTimber: z.array(z.string()),
  tilt: z.record(z.string(), z.number()).describe("Degrees to which the empty chair can be tilted, by way."),
  cases: z.array(z.object({ way: z.enum(["front", "back", "side"]), ...tipping })),
  beyond: z
    .array(
      z.object({
        kind: z.enum(["standard", "child", "leaning"]),
        ...tipping,
        tilt: z.number().optional().describe("Degrees to which chair and sitter can be tilted."),
      }),
    )
    .describe("Loads that no standard asks for: a child kneeling, somebody rocking on the back legs."),
  caution: z.string(),
});

const share = z.number().min(0).max(1);

export const fitOutput = z.object({
  chair: z.string(),
  sizes: z.record(z.string(), z.number()).describe("What meets the sitter, mm."),
  leans: z
    .object({ seat: z.number().optional(), back: z.number().optional() })
    .describe("Degrees: the seat's fall to the back, the back's lean from square to the seat."),
  loins: z
    .boolean()
    .nullable()
    .describe("Whether the back meets the small of the back; null without a back."),
  groups: z.array(
    z.object({
      group: z.enum(["women", "men"]),
      share: share.describe("Of people whom all checks suit at once."),
      checks: z.array(z.object({ check: z.string(), meaning: z.string(), share })),
      excludesMost: z.object({ check: z.string(), without: share }).optional(),
    }),
  ),
  together: share.nullable().describe("Of women and men, half and half."),
  assumed: z
    .array(
      z.object({
        name: z.string(),
        mm: z.array(z.number()).describe("Of shoes women's and men's."),
        seen: z.string().describe("Where the figure comes from."),
        shareWithout: share.describe("Of the same people, without this allowance."),
      }),
    )
    .describe("What the shares take for granted, and what each does to them."),
  schoolMarks: z.array(
    z.object({
      mark: z.number().int(),
      seatHeight: z.number(),
      popliteal: z.array(z.number()),
      stature: z.array(z.number()),
    }),
  ),
  sitter: z.array(
    z.object({
      check: z.string(),
      meaning: z.string(),
      own: z.number(),
      low: z.number().optional(),
      high: z.number().optional(),
      fits: z.boolean(),
    }),
  ),
  caution: z.string(),
});

export type StandOutput = z.infer<typeof standOutput>;
export type FitOutput = z.infer<typeof fitOutput>;
const measure = z.object({ from: z.string(), to: z.string(), mm: z.number() });

export const assembleOutput = z.object({
  chair: z.string().describe("The chair's title, or its file's name if it has none."),
  glueUps: z
    .array(
      z.object({
        name: z.string(),
        brings: z.array(z.string()).describe("What is brought together, in order along the line."),
        parts: z.array(z.string()).describe("Full names of all its parts."),
        closes: z.array(z.string()).describe("Full names of the joints it closes."),
        way: z.string().describe("The line of closing, in words."),
        first: z
          .array(
            z.object({
              part: z.string(),
              into: z.array(z.string()),
              way: z.string(),
              closes: z.array(z.string()),
            }),
          )
          .describe("What is put in alone before the rest closes, each along its own tenons."),
        sprung: z
          .array(
            z.object({
              joint: z.string(),
              part: z.string(),
              mm: z.number().describe("How far its end is sprung."),
              towards: z.string().describe("To which side, as the sitter has it."),
            }),
          )
          .describe("Tenons that do not lie along the line of closing and whose part must be sprung."),
        direction: z
          .tuple([z.number(), z.number(), z.number()])
          .describe("The line of closing as drawn: to the sitter's left, back, up."),
        diagonals: z.array(z.tuple([measure, measure])),
        checks: z.array(measure),
        glue: z.array(z.object({ kind: z.string(), joints: z.number().int() })),
        cautions: z.array(z.string()),
      }),
    )
    .describe("In the order to do them."),
  locked: z
    .array(
      z.object({
        parts: z.array(z.string()),
        joints: z.array(
          z.object({ name: z.string(), deg: z.number(), straysMm: z.number(), slackMm: z.number() }),
        ),
      }),
    )
    .describe("Joints that no order closes; empty when the chair can be put together."),
});

const amount = z.number().nullable().describe("In `unit`; null where that chair has no such value.");
const written = z.string().nullable().describe("As written; null where there is none.");

export const compareOutput = z.object({
  chosen: z
    .array(
      z.object({
        part: z
          .string()
          .describe("The part as it is called now, or was if it is gone; empty for the file itself."),
        property: z.string(),
        old: written,
        new: written,
        was: z.string().optional().describe("What the part was called before, when it is another name now."),
      }),
    )
    .describe("Facts that the texts give differently."),
  follows: z
    .array(
      z.object({
        name: z.string().describe("Dotted name, as the new chair calls it."),
        old: amount,
        new: amount,
        unit: z.enum(["mm", "mm²", "mm³", "deg", "kg", "N", "%", "1"]),
      }),
    )
    .describe("Worked-out values that print differently, the largest move of each kind first."),
  found: z.object({
    new: z.array(finding),
    gone: z.array(finding).describe("With their places in the old file."),
    changed: z.array(z.object({ old: finding, new: finding, worse: z.boolean() })),
  }),
  anew: z
    .array(z.object({ part: z.string().describe("Empty for what the whole chair needs."), why: z.string() }))
    .describe("What has to be made anew, and what only moved."),
});

const choice = compareOutput.shape.chosen.element;

export const historyOutput = z.object({
  file: z.string().describe("As named on the command line."),
  git: z.boolean().describe("Whether there are versions; otherwise the file's notes are all there is."),
  versions: z
    .array(
      z.object({
        commit: z.string().nullable().describe("Null for what is not committed."),
        date: z.string().nullable().describe("ISO 8601, of the commit."),
        subject: z.string().nullable(),
        path: z.string().describe("Where the file was then."),
        errors: z.number().int().min(0).describe("Errors that keep the text from being read whole."),
        notes: z
          .array(z.object({ date: z.string().nullable(), text: z.string() }))
          .describe("Remarks that this version brings."),
        chosen: z
          .array(choice)
          .describe("What it says otherwise than the version before; of the first nothing."),
        values: reckonOutput.shape.values.describe("The values asked for, as far as they can be worked out."),
      }),
    )
    .describe("From the oldest."),
});

export type HistoryOutput = z.infer<typeof historyOutput>;
export type CompareOutput = z.infer<typeof compareOutput>;
export type Finding = z.infer<typeof finding>;
export type CheckOutput = z.infer<typeof checkOutput>;
export type ReckonOutput = z.infer<typeof reckonOutput>;
export type AssembleOutput = z.infer<typeof assembleOutput>;

/** The published schemas by file name. */
export const schemas = {
  "check.schema.json": checkOutput,
  "reckon.schema.json": reckonOutput,
  "assemble.schema.json": assembleOutput,
  "stand.schema.json": standOutput,
  "fit.schema.json": fitOutput,
  "markout.schema.json": markoutOutput,
  "compare.schema.json": compareOutput,
  "history.schema.json": historyOutput,
  "strength.schema.json": strengthOutput,
  "range.schema.json": rangeOutput,
  "range-map.schema.json": rangeMapOutput,
  "reach.schema.json": reachOutput,
  "reach-all.schema.json": reachAllOutput,
  "boards.schema.json": boardsOutput,
};

/** A schema as it is published: JSON Schema, as text. */
export function published(name: keyof typeof schemas): string {
  return `${JSON.stringify(z.toJSONSchema(schemas[name]), null, 2)}\n`;
}
