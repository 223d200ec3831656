/**
 * What strength is judged by, as a page: loads, joint tests with predicted over measured, and the grounds of each figure.
 */
import type { Joint } from "../chair/chair.ts";
import tests from "./joint-tests.json" with { type: "json" };
import loads from "./loads.json" with { type: "json" };
import { jointStrength } from "./resistance.ts";
import wood from "./wood.json" with { type: "json" };

/** What `jointStrength` says of a test's joint over what the test found. */
export function predictedOverMeasured({ species, size, mean }: (typeof tests.sized)[number]): number {
  const { thick, wide, long } = size;
  const joint: Pick<Joint, "kind" | "shape" | "long" | "sections" | "glueArea" | "facts"> = {
    kind: "rectangular",
    shape: "rectangular",
    sections: [{ thick: [-thick / 2, thick / 2], wide: [-wide / 2, wide / 2] }],
    long,
    glueArea: 2 * wide * long,
    facts: {},
  };
  return (jointStrength(joint, species)?.momentWide ?? Number.NaN) / 1000 / mean;
}

export const sizedTests = tests.sized;

/** What `jointStrength` says of a dowel drawn out, MPa over its whole skin, over what the test found. */
export function drawnOverMeasured({ species, diameter, mean }: (typeof tests.drawn)[number]): number {
  const long = 30;
  const half = diameter / 2;
  const joint: Parameters<typeof jointStrength>[0] = {
    kind: "round",
    shape: "round",
    sections: [{ thick: [-half, half], wide: [-half, half] }],
    long,
    glueArea: (Math.PI * diameter * long) / 2,
    facts: {},
  };
  const withdrawal = jointStrength(joint, species)?.withdrawal ?? Number.NaN;
  return withdrawal / (Math.PI * diameter * long) / mean;
}

export const drawnTests = tests.drawn;

const table = (head: readonly string[], rows: readonly (readonly (string | number)[])[]): string =>
  [head, head.map(() => "---"), ...rows].map((row) => `| ${row.join(" | ")} |`).join("\n");

const geometricMean = (values: readonly number[]): number =>
  Math.exp(values.reduce((sum, value) => sum + Math.log(value), 0) / values.length);

const FRAME = [
  "Members are beams along their centre lines, curved ones in short pieces, each with its own section less what mortises take; sticks are such beams, and bows too. Joints are springs at their shoulders, worked through at a low, a middle and a high stiffness. Feet push on the floor and never pull; the stops of a load case keep them from sliding, and where it names none friction does, as far as it goes.",
  "A drop-in, woven or upholstered seat passes its load on to its rails and ties nothing. A board seat is screwed to its rails and ties them to each other. A solid seat is stiff arms from its middle to each socket; it is not judged itself.",
  "How this was looked at: forces at every node and on the whole add up to 1e-9 of the loads; ml-matrix moves every node alike to 1e-9, Z88 to 2e-5; a back that stands on its seat alone passes on the push and its moment, by statics; the side rails take a share of the moment front to back near the published one; a chair without its stretchers bears less and sways more. Every sample bears what is asked of it.",
].join("\n\n");

/** The page in Markdown. */
export function strengthReference(): string {
  const ratios = tests.sized.map(predictedOverMeasured);
  const drawn = tests.drawn.map(drawnOverMeasured);
  const levels = Object.entries(loads.levels);
  const figures = Object.keys(loads.levels.domestic).filter((name) => !["edition", "seen"].includes(name));
  return `${[
    "# What strength is judged by",
    "This page is made from the data files by `server/strength/reference.ts`; change the data, not the page. A calculation is not a test: a standard's test is made by a competent laboratory, and local codes and licensed practice come first.",
    "## The frame",
    FRAME,
    "## Loads",
    `${loads.source} Newtons; \`cycles\` is how often. Figures marked * were seen in print, the others are from memory.`,
    table(
      ["load", ...levels.map(([name, { edition }]) => `\`${name}\` (${edition})`)],
      figures.map((figure) => [
        figure,
        ...levels.map(([, level]) => {
          const seen = (level.seen as string[]).includes(figure);
          return `${(level as Record<string, unknown>)[figure]}${seen ? " *" : ""}`;
        }),
      ]),
    ),
    `Places: ${loads.places.source}. A sitter of ${loads.sitter.mass} kg: ${loads.sitter.source}. Friction ${loads.floor.friction}: ${loads.floor.source}.`,
    "## Joints against published tests",
    "Moment that a joint bears, once, on the mean: predicted from tenon, species and shoulder, over what was measured.",
    table(
      [
        "joint",
        "tenon, mm",
        "tests",
        "measured, N·m",
        "deviation",
        "95 in 100 bear",
        "predicted / measured",
        "source",
      ],
      tests.sized.map((test, k) => [
        `${test.species}, ${test.joint}, rail ${test.rail}`,
        `${test.size.thick} x ${test.size.wide} x ${test.size.long}`,
        test.count,
        test.mean,
        test.deviation,
        test.lower,
        (ratios[k] ?? 0).toFixed(2),
        test.source,
      ]),
    ),
    `Predicted over measured spans ${Math.min(...ratios).toFixed(2)} to ${Math.max(...ratios).toFixed(2)}. One test of the red-oak series is within ${Math.round((100 * 48) / 353)} % of its mean two times in three, so no prediction is better than that.`,
    "Dowels drawn out, on the mean, over the whole of their skin. They are as far apart as the tests are from each other, by the dowel's surface and the damp.",
    table(
      ["joint", "diameter, mm", "measured, MPa", "predicted / measured", "source"],
      tests.drawn.map((test, k) => [
        `${test.species}, ${test.joint}`,
        test.diameter,
        test.mean,
        (drawn[k] ?? 0).toFixed(2),
        test.source,
      ]),
    ),
    `Predicted over measured spans ${Math.min(...drawn).toFixed(2)} to ${Math.max(...drawn).toFixed(2)}, and has a geometric mean of ${geometricMean(drawn).toFixed(2)}.`,
    tests.note,
    table(
      ["joint", "found", "source"],
      tests.unsized.map(({ joint, found, source }) => [joint, found, source]),
    ),
    "## Grounds",
    table(
      ["figure", "value", "grounds"],
      groundsIn(wood).map(({ name, value, grounds }) => [name, value, grounds]),
    ),
  ].join("\n\n")}\n`;
}

/** Figures with the sentence beside them that says where they come from: `momentFactor` with `momentSource`. */
function groundsIn(given: object): { name: string; value: string; grounds: string }[] {
  return Object.entries(given).flatMap(([group, figures]: [string, Record<string, unknown>]) => {
    const sources = Object.entries(figures).filter(([key]) => /source$/i.test(key));
    return sources.map(([key, grounds]) => {
      const stem = key.replace(/source$/i, "");
      const own = Object.entries(figures).filter(
        ([name, value]) => typeof value !== "string" && (stem === "" || name.startsWith(stem)),
      );
      const said = own.map(([name, value]) => `${name} ${printed(value)}`).join("; ");
      return { name: stem === "" ? group : `${group}, ${stem}`, value: said, grounds: String(grounds) };
    });
  });
}

const printed = (value: unknown): string =>
  typeof value === "number"
    ? String(Number(value.toPrecision(4)))
    : Array.isArray(value)
      ? value.join(", ")
      : Object.entries(value as object)
          .map(([name, each]) => `${name} ${each}`)
          .join(", ");
