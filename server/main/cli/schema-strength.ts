/**
 * What `strength` gives as JSON.
 */
import * as z from "zod";

const vector = z.array(z.number());
const ruling = z.object({
  name: z.string(),
  demand: z
    .number()
    .describe("Load over resistance with joints at their middle stiffness; overworked from 1."),
  low: z.number().describe("The least of it between the stiffnesses."),
  high: z.number().describe("The most of it between the stiffnesses."),
  ruledBy: z.string().describe("The load case that asks most."),
});

export const strengthOutput = z.object({
  chair: z.string(),
  level: z.enum(["domestic", "public", "severe"]),
  edition: z.string(),
  margin: z.number().nullable().describe("One over the largest demand; null where nothing could be judged."),
  lasting: z
    .object({
      name: z.string(),
      fewest: z.number(),
      most: z.number(),
      pushed: z
        .number()
        .describe("Share of the push on the back that it stands; under 1 where all of it would tip it over."),
    })
    .nullable()
    .describe("Sittings until something gives out: a range by stiffness and scatter, no promise."),
  unknownTimber: z.array(z.string()),
  rulings: z.object({ joints: z.array(ruling), members: z.array(ruling) }),
  cases: z.array(
    z.object({
      name: z.string(),
      stiffness: z.enum(["low", "middle", "high"]).describe("Of the joints."),
      state: z.enum(["solved", "tips", "slides", "loose"]),
      why: z.string().optional().describe("In words, why it was not solved."),
      pushed: z
        .number()
        .describe("Share of the level pushes it was loaded with; under 1 where all would tip it over."),
      fromMemory: z.boolean().describe("Some of its loads were not seen in print."),
      joints: z.array(z.object({ name: z.string(), demand: z.number() })),
      members: z.array(z.object({ part: z.string(), demand: z.number() })),
      k: z
        .record(z.string(), vector)
        .optional()
        .describe("Stiffness of each spring along and about its axes: N/mm, N·mm/rad."),
      supports: z
        .array(
          z.object({
            node: z.string(),
            held: z.array(z.boolean()),
            friction: z
              .number()
              .optional()
              .describe("What keeps it from sliding, as a share of its push; absent where a stop does."),
            state: z.enum(["held", "lifted", "slides"]),
          }),
        )
        .optional()
        .describe(
          "`held` is what holds in the end: nothing of a lifted foot, of one that slides its height alone; friction is then in its reaction.",
        ),
      loads: z.array(z.object({ node: z.string(), v: vector })).optional(),
      displacements: z.array(z.object({ node: z.string(), v: vector })).optional(),
      reactions: z.array(z.object({ node: z.string(), v: vector })).optional(),
      ends: z
        .array(z.object({ member: z.string(), from: vector, to: vector }))
        .optional()
        .describe("What acts on each member at its two ends, in its own axes."),
    }),
  ),
  moisture: z
    .object({
      climate: z.object({
        of: z.enum(["humidity", "moisture"]),
        low: z.number(),
        high: z.number(),
        assumed: z.boolean(),
      }),
      wood: z.object({ dry: z.number(), damp: z.number() }).describe("Moisture at the two ends."),
      parts: z.array(
        z.object({
          part: z.string(),
          width: z.number(),
          sawn: z.enum(["quarter", "flat", "rift"]),
          made: z.number(),
          toDry: z.number(),
          toDamp: z.number(),
        }),
      ),
      joints: z.array(
        z.object({
          name: z.string(),
          wide: z.number(),
          across: z.number(),
          shoulderGap: z.number(),
          tightness: z.object({ dry: z.number(), damp: z.number() }),
        }),
      ),
      panel: z
        .object({
          part: z.string(),
          width: z.number(),
          swells: z.number(),
          room: z.number(),
          clearance: z.object({ damp: z.number(), dry: z.number() }),
        })
        .optional(),
    })
    .describe("How the wood moves across the grain: mm, moisture and humidity as shares of one."),
  model: z
    .object({
      nodes: z.array(z.object({ id: z.string(), at: vector })),
      members: z.array(
        z.object({
          id: z.string(),
          part: z.string(),
          from: z.string(),
          to: z.string(),
          yAxis: vector,
          E: z.number(),
          G: z.number(),
          A: z.number(),
          Ay: z.number(),
          Az: z.number(),
          Iy: z.number(),
          Iz: z.number(),
          J: z.number(),
        }),
      ),
      springs: z.array(
        z.object({
          id: z.string(),
          joint: z.string(),
          from: z.string(),
          to: z.string(),
          axes: z.array(vector),
        }),
      ),
    })
    .optional()
    .describe("x to the sitter's left, y back, z up; N, mm, rad. With --model."),
  caution: z.string(),
});

export type StrengthOutput = z.infer<typeof strengthOutput>;
