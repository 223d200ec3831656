/**
 * The words beside a lean: which end of a post goes which way.
 */

import type { Fix } from "../../grammar/problem.ts";
import { sentence } from "../../grammar/sentences/sentence.ts";
import type { Given } from "./design.ts";
import type { Line } from "./merge.ts";
import { factOf, lean, type Reading, report, spanOf } from "./reading.ts";

/** What leans as a bare angle does: the foot out, or the top back. Every pair of words and what it is worth. */
const signs: Record<string, 1 | -1> = {
  "foot out": 1,
  "top in": 1,
  "foot in": -1,
  "top out": -1,
  "top back": 1,
  "foot forward": 1,
  "top forward": -1,
  "foot back": -1,
};

const opposites: Record<string, string> = { out: "in", in: "out", forward: "back", back: "forward" };

/** A rake or splay, radians, positive as a bare angle is; a negative angle beside words is reported with the plain form. */
export function leanWithWords(reading: Reading, line: Line | undefined): Given<number> | undefined {
  const found = lean(reading, line, "angle");
  const end = line && factOf(line, "end");
  const towards = line && factOf(line, "towards");
  if (!line || !found || !end?.name || !towards?.name) return found;
  const sign = signs[`${end.name} ${towards.name}`] ?? 1;
  if (found.value < 0) {
    const angle = factOf(line, "angle");
    const other = opposites[towards.name] ?? towards.name;
    const minus =
      angle?.value?.is === "negate" ? { start: angle.value.start, end: angle.value.of.start } : undefined;
    const fixes: Fix[] = minus
      ? [
          {
            title: sentence("fix.without-minus", { end: end.name, way: other }),
            edits: [
              { ...minus, text: "" },
              { start: towards.start, end: towards.end, text: other },
            ],
          },
        ]
      : [];
    report(reading, line.source, spanOf([angle, towards], line.statement), {
      code: "sign-beside-words",
      message: sentence("sign-beside-words", { end: end.name, way: towards.name, other }),
      ...(fixes.length > 0 && { fixes }),
    });
  }
  return { ...found, value: sign * found.value };
}
