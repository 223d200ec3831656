/**
 * A chair's versions one after another: what each chose otherwise, its new notes, and how values moved.
 */
import { isSyntax } from "../../grammar/format.ts";
import { parse } from "../../grammar/parser.ts";
import type { Steps } from "../../grammar/steps.ts";
import { vocabulary } from "../../grammar/vocabulary/index.ts";
import type { Chair, Worked } from "../chair/chair.ts";
import { workedValue } from "../chair/values/values.ts";
import type { NoteDesign } from "../design/design.ts";
import { settleSteps } from "../settle.ts";
import type { OtherFiles } from "../study.ts";
import { type Choice, chosenBetween } from "./chosen.ts";
import { ownThings, type Thing } from "./things.ts";

export interface Version {
  text: string;
  address: string;
  files: OtherFiles;
  /** The text it was made from, where that is another than the version before it, as on two branches side by side. */
  from?: string;
}

export interface VersionChange {
  /** How many errors keep the text from being read; 0 when it reads whole. */
  errors: number;
  /** Remarks that this version brings, in the order of their dates. */
  notes: { date: string | null; text: string }[];
  /** What it says otherwise than the version it was made from; of the first everything is new, so nothing is listed. */
  chosen: Choice[];
  /** The values asked for, by name; those that cannot be worked out are absent. */
  values: Map<string, Worked>;
}

/** Goes through versions from the oldest; gives what is said about each as soon as it is known. */
export function* historySteps(
  versions: Iterable<Version>,
  names: readonly string[],
): Generator<VersionChange> {
  let last: string | undefined;
  const known = new Map<string, Thing[]>();
  for (const { text, address, files, from = last } of versions) {
    const tree = parse(text, vocabulary);
    const things = ownThings(tree);
    known.set(text, things);
    const before = from === undefined ? undefined : (known.get(from) ?? ownThings(parse(from, vocabulary)));
    const { choices } = chosenBetween(before ?? [], things);
    const chair = names.length > 0 ? settled(settleSteps({ tree, address, files })) : undefined;
    yield {
      errors: tree.problems.filter(({ code, severity }) => severity === "error" && isSyntax(code)).length,
      notes: choices.flatMap(noteOf).sort((a, b) => compareText(a.date ?? "", b.date ?? "")),
      chosen: before === undefined ? [] : choices.filter((choice) => noteOf(choice).length === 0),
      values: chair === undefined ? new Map() : valuesOf(chair, names),
    };
    last = text;
  }
}

const compareText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

function settled(steps: Steps<{ chair: Chair }>): Chair {
  for (let step = steps.next(); ; step = steps.next()) if (step.done) return step.value.chair;
}

function valuesOf(chair: Chair, names: readonly string[]): Map<string, Worked> {
  return new Map(
    names.flatMap((name): [string, Worked][] => {
      const worked = workedValue(chair, name);
      return worked === undefined ? [] : [[name, worked]];
    }),
  );
}

/** A remark that is new, with its date. */
function noteOf({ property, new: text }: Choice): VersionChange["notes"] {
  const [word, date = null] = property.split(" ");
  return word === "note" && text !== null ? [{ date, text }] : [];
}

/** All remarks of a text by date: what there is to tell where no versions are kept. */
export function notesOf(notes: readonly NoteDesign[]): VersionChange["notes"] {
  return notes
    .map(({ date, text }) => ({ date: date?.value ?? null, text: text?.value ?? "" }))
    .sort((a, b) => compareText(a.date ?? "", b.date ?? ""));
}
