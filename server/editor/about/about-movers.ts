/**
 * Which lines of the text matter for a value: the few figures it depends on and how much each moves it, as Markdown.
 */
import type { Chair } from "../../chair/chair.ts";
import { printWorked } from "../../chair/values/print.ts";
import { workedValue } from "../../chair/values/values.ts";
import type { LengthUnit } from "../../design/design.ts";
import { printChange, printLength } from "../../design/units.ts";
import type { Mover, Movers } from "../../sensitivity/sensitivity.ts";
import { bullets, code, paragraphs } from "./markdown.ts";

/** How many figures are reported one value by itself, and of each of several. */
const MOST_ALONE = 6;
const MOST_EACH = 3;

/** The strongest movers of each value; nothing where no value has any. `whole` when every figure was tried. */
export function aboutMovers(
  movers: Movers,
  { chair, unit, whole }: { chair: Pick<Chair, "values">; unit: LengthUnit; whole: boolean },
): string | undefined {
  const told = [...movers].flatMap(([name, some]) => {
    const worked = workedValue(chair, name);
    const most = movers.size > 1 ? MOST_EACH : MOST_ALONE;
    const lines = some.flatMap((mover) => lineOf(mover, worked, unit) ?? []).slice(0, most);
    return worked && lines.length > 0 ? [{ worked, lines }] : [];
  });
  if (told.length === 0) return undefined;
  const [only] = told;
  return paragraphs(
    movers.size === 1 && only
      ? paragraphs("What it depends on most:", bullets(only.lines))
      : bullets(
          told.map(
            ({ worked, lines }) => `${code(worked.name)} ${printWorked(worked, unit)}; ${lines.join("; ")}`,
          ),
        ),
    !whole && "Only the nearest figures could be tried in the time there was.",
  );
}

/** ``1 mm on `foot back` of `front`: +0.13°``. */
function lineOf(
  { what, of, step, moves }: Mover,
  worked: { dimension: Parameters<typeof printChange>[0]["dimension"] } | undefined,
  unit: LengthUnit,
): string | undefined {
  const change = worked && printChange({ number: moves, dimension: worked.dimension }, unit);
  if (!change) return undefined;
  const size =
    step.dimension === "length" ? printLength(step.number, unit) : step.dimension === "angle" ? "1°" : "1";
  return `${size} on ${code(what)}${of === undefined ? "" : ` of ${code(of)}`}: ${change}`;
}
