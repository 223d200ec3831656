/**
 * What `seatwright boards --format json` gives.
 */
import * as z from "zod";

const mm = z.number().describe("mm");
const size = { thick: mm, wide: mm, long: mm };

const piece = z
  .object({
    part: z.string().describe("Name of its entry in `parts`."),
    x: z.number().describe("From the board's first end, mm."),
    y: z.number().describe("From the board's first edge, mm."),
    z: z.number().describe("From the board's lower face, mm; more than 0 where the board is resawn."),
    long: mm,
    wide: mm,
    thick: mm,
    turned: z.boolean().describe("A nested outline that is turned or turned over against its neighbour."),
    outline: z
      .array(z.tuple([z.number(), z.number()]))
      .optional()
      .describe("What it is sawn to, as x and y on the board, mm, where outlines are nested."),
    under: z
      .array(
        z.object({
          what: z.string().nullable(),
          x: mm,
          y: mm,
          long: mm,
          wide: mm,
          face: z.string().describe("The hidden face of the part that the defect is turned to."),
          deepest: mm
            .nullable()
            .describe(
              "Where that face lies flat in the board: how deep the defect may go into the finished part. The text does not say how deep it does: look.",
            ),
          firstEnd: z
            .string()
            .nullable()
            .describe(
              "The end of the part that lies towards the board's first end; null where its outline says.",
            ),
        }),
      )
      .optional()
      .describe("Defects of the board that stay in the piece, under its `hidden` faces."),
  })
  .describe("A piece as cut, before planing.");

const cut = z
  .object({
    is: z.enum(["crosscut", "rip", "resaw", "outline"]),
    at: z
      .number()
      .describe(
        "Near side of the kerf: along the board for a crosscut, across for a rip, through for a resaw; of an outline its first end.",
      ),
    from: mm,
    to: mm,
  })
  .describe("`from` and `to`: across the board for a crosscut and an outline, along it for the others.");

export const boardsOutput = z.object({
  parts: z
    .array(
      z.object({
        name: z.string(),
        number: z.number().int().describe("For all the chairs that `make` says."),
        timber: z.string().nullable(),
        finished: z.object(size),
        blank: z.object(size).describe("What it is planed from."),
      }),
    )
    .describe("The stock list, by the thickness it is sawn from."),
  plan: z.object({
    boards: z.array(
      z.object({
        name: z.string(),
        ...size,
        pieces: z.array(piece),
        cuts: z.array(cut).describe("In the order to make them."),
      }),
    ),
    offcuts: z
      .array(z.object({ board: z.string(), x: mm, y: mm, ...size }))
      .describe("What is left and worth keeping."),
    lacking: z.array(z.object({ part: z.string(), number: z.number().int() })),
    used: z.number().describe("m³: the boards less the offcuts."),
    bound: z.number().describe("m³: no plan of this kind can use less."),
  }),
});

export type BoardsOutput = z.infer<typeof boardsOutput>;
