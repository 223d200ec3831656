/**
 * What is said of worked-out values that the text asks for and that never came to be known.
 */
import { nearest } from "../../grammar/nearest.ts";
import type { Problem } from "../../grammar/problem.ts";
import type { AngleTerm, Design, PartRef } from "./design.ts";
import { readersOf } from "./evaluate.ts";
import { listedAs } from "./values.ts";

/**
 * Problems for what is still wanted once reckoning again changes nothing: a value that hangs on the very line that asks for it
 * is a circle, told with its members; a part's end that does not exist is an unknown name; anything else hangs on what is
 * missing elsewhere. `values` are the names that are known by then.
 */
export function wantedProblems(design: Design, values: Iterable<string>): Problem[] {
  const known = [...values];
  const needs = needsOf(design);
  const problems: Problem[] = [];
  for (const [name, at] of design.wanted) {
    const circle = circleOf(name, design, needs);
    if (circle !== undefined) {
      problems.push({
        code: "circular-value",
        severity: "error",
        message: `${name} is worked out from what this line gives, so it cannot be asked for here: ${circle.join(" → ")}; give a figure instead.`,
        start: at.start,
        end: at.end,
      });
      continue;
    }
    const near = nearest(name, known) ?? sameOfAnotherEnd(name, known);
    const exists = near !== undefined && namesNoEnd(name, known);
    problems.push({
      code: "unknown-name",
      severity: "error",
      message: exists
        ? `There is no value ${name}; did you mean ${near}?`
        : `${name} cannot be worked out, because something that it hangs on is missing or wrong.`,
      start: at.start,
      end: at.end,
      ...(exists
        ? { fixes: [{ title: `Change to ${near}`, edits: [{ start: at.start, end: at.end, text: near }] }] }
        : {}),
    });
  }
  return problems;
}

/** Values of the part are known, but none of the end that this name speaks of. */
function namesNoEnd(name: string, known: readonly string[]): boolean {
  const listed = listedAs(name);
  const part = `${name.split(".")[0]}.`;
  const ends = listed.map((each) => each.slice(0, each.lastIndexOf(".") + 1));
  return (
    known.some((each) => each.startsWith(part)) &&
    !known.some((each) => ends.some((end) => each.startsWith(end)))
  );
}

/** The same value at an end that the part does have. */
function sameOfAnotherEnd(name: string, known: readonly string[]): string | undefined {
  const part = `${name.split(".")[0]}.`;
  const last = name.slice(name.lastIndexOf("."));
  return known.find((each) => each.startsWith(part) && each.endsWith(last));
}

/** What a thing's place and shape hang on, by name. */
type Needs = ReadonlyMap<string, ReadonlySet<string>>;

/** For each part, seat, trim and whole value of a design: what it hangs on directly. */
export function needsOf(design: Design): Needs {
  const needs = new Map<string, Set<string>>();
  const add = (name: string, ...others: (PartRef | { name: string } | string | undefined)[]) => {
    const set = needs.get(name) ?? new Set<string>();
    for (const other of others)
      if (other !== undefined) set.add(typeof other === "string" ? other : other.name);
    needs.set(name, set);
  };
  for (const post of design.posts.values())
    add(post.name, post.standsOn?.value.rail, post.topInto?.value.rail, post.topInto?.value.joint);
  for (const rail of design.rails.values()) {
    const course = rail.course?.value;
    if (course?.is === "from-to") add(rail.name, course.from, course.to);
    else add(rail.name, course?.of);
    add(rail.name, rail.joined?.value, ...rail.ends.map((end) => end.joined?.value));
  }
  for (const slat of design.slats.values())
    add(slat.name, slat.from?.value, slat.to?.value, slat.joined?.value);
  for (const block of design.blocks.values()) add(block.name, block.in?.value);
  for (const angle of design.angles.values())
    add(angle.name, "trim", ...(angle.between?.value ?? []).map(termName));
  const everything = [
    ...design.posts.keys(),
    ...design.rails.keys(),
    ...design.slats.keys(),
    ...design.blocks.keys(),
    "seat",
    "trim",
  ];
  add("seat", "trim", ...(design.seat?.on ?? []).map((ref) => ref.value));
  add("trim", ...design.trims.flatMap((trim) => trim.posts.map((post) => post.value)));
  add("backrest", "seat", ...design.rails.keys(), ...design.slats.keys());
  for (const whole of ["height", "width", "depth", "weight", "joints", "tip"]) add(whole, ...everything);
  for (const [reader, lets] of readersOf(design).lets) add(reader, ...lets);
  return needs;
}

const termName = (term: AngleTerm): string | undefined =>
  term.is === "part" ? term.part.name : term.is === "seat" ? "seat" : undefined;

/** The way from a wanted value back to itself: value, the things it hangs on, the value wanted by one of them … */
function circleOf(name: string, design: Design, needs: Needs): string[] | undefined {
  const wanting = new Map<string, string[]>();
  for (const [value, readers] of readersOf(design).wantedBy) {
    for (const reader of readers) wanting.set(reader, [...(wanting.get(reader) ?? []), value]);
  }
  const seen = new Set<string>();
  const walk = (value: string, path: string[]): string[] | undefined => {
    const things = [value.split(".")[0] ?? value];
    const visited = new Set<string>();
    for (let thing = things.pop(); thing !== undefined; thing = things.pop()) {
      if (visited.has(thing)) continue;
      visited.add(thing);
      for (const next of wanting.get(thing) ?? []) {
        if (next === name) return [...path, thing, name];
        if (seen.has(next)) continue;
        seen.add(next);
        const found = walk(next, [...path, thing, next]);
        if (found !== undefined) return found;
      }
      things.push(...(needs.get(thing) ?? []));
    }
    return undefined;
  };
  return walk(name, [name]);
}
