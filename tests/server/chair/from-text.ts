import { parse } from "../../../grammar/parser.ts";
import { vocabulary } from "../../../grammar/vocabulary/index.ts";
import type { Chair } from "../../../server/chair/chair.ts";
import { workedValue } from "../../../server/chair/values/values.ts";
import { type Settled, settle } from "../../../server/settle.ts";

/** A file that names no other. */
export const noFiles = { resolve: (_from: string, path: string) => path, read: () => undefined };

/** The chair a text describes, gone round until its values are known. */
export function settled(text: string): Settled {
  return settle({ tree: parse(text, vocabulary), address: "test.chair", files: noFiles });
}

/** The chair of a text without faults in the reading; throws when there are any, so that a test never measures half a chair. */
export function chairOf(text: string): Chair {
  const tree = parse(text, vocabulary);
  const { design, chair, problems } = settle({ tree, address: "test.chair", files: noFiles });
  const wrong = [...tree.problems, ...design.problems, ...problems].filter((p) => p.severity === "error");
  if (wrong.length > 0)
    throw new Error(wrong.map((p) => `${p.message} (${text.slice(p.start, p.end)})`).join("\n"));
  return chair;
}

/** A worked-out value; throws when there is none. Millimetres, square millimetres or degrees. */
export function value(chair: Chair, name: string): number {
  const worked = workedValue(chair, name);
  if (!worked) throw new Error(`no value ${name}; there is ${[...chair.values.keys()].join(", ")}`);
  return worked.dimension === "angle" ? (worked.number * 180) / Math.PI : worked.number;
}

export const DEGREES = 180 / Math.PI;
