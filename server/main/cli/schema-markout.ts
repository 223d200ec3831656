import * as z from "zod";

const figure = z.object({
  value: z
    .union([z.number(), z.string()])
    .describe("As printed: a length in `unit`, an angle in degrees, a count, or a word."),
  text: z.string().describe("As it stands on the sheet."),
});

const figures = z.record(z.string(), figure);

export const markoutOutput = z.object({
  unit: z.enum(["mm", "cm", "in"]).describe("Of every length."),
  step: z.number().describe("The smallest step of a printed length, in `unit`."),
  parts: z
    .array(
      z.object({
        name: z
          .string()
          .describe("Full names of all the parts made to this sheet as it is drawn, with commas between."),
        number: z.number().int().min(1).describe("How many that is."),
        stock: figures.describe(
          "What it is cut from: planed, before it is shaped, its tenons in its length.",
        ),
        marks: z
          .array(
            z.object({
              kind: z
                .string()
                .describe(
                  "`datum`, `station` (of an outline), `axis`, `arch`, `bow`, `end`, `line` (round an end), `tenon`, `round-tenon`, `dowels`, `fork`, `haunch`, `sloped-haunch`, `mitre`, `wedges`, `peg`, `mortise`, `through-mortise`, `exit`, `socket`, `sloped-socket` (of a haunch), `hole`, `through-hole`, `peg-hole`, `notch`, `rebate`, `groove`, `strip`, `corner`, `opening`, `hollow`, `bore`, `through-bore` (in plan), `bend`, `form`, `foot`, `bow-bore`, `through-bow-bore` (of a bow), `levelling`, or `mirror` (a mirror image of the part it names).",
                ),
              face: z
                .string()
                .describe(
                  "The face it is marked on, or the end it belongs to; empty where neither is meant.",
                ),
              datum: z.string().describe("What its distances run from; empty where nothing is."),
              figures,
            }),
          )
          .describe("Everything that is marked or cut, in the order of the sheet."),
      }),
    )
    .describe("Parts as drawn, each followed by its mirror images."),
});

export type MarkoutOutput = z.infer<typeof markoutOutput>;
