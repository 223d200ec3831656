/**
 * What depends on what in a design, by name.
 */

import { valueRow } from "../../grammar/vocabulary/values.ts";
import type { AngleTerm, Design, PartRef } from "./design.ts";
import { readersOf } from "./evaluate.ts";
import { stemOf } from "./identity.ts";

/** What a thing's place and shape depend on directly, by name. */
export type Dependencies = ReadonlyMap<string, ReadonlySet<string>>;

/** What each part, let, angle, the seat, the backrest, the trimming and `everything` of a design depends on directly. */
export function dependenciesOf(design: Design): Dependencies {
  const needs = new Map<string, Set<string>>();
  const add = (name: string, ...others: (PartRef | { name: string } | string | undefined)[]) => {
    const set = needs.get(name) ?? new Set<string>();
    for (const other of others)
      if (other !== undefined) set.add(typeof other === "string" ? other : other.name);
    needs.set(name, set);
  };
  for (const post of design.posts.values())
    add(
      post.name,
      post.standsOn?.value.rail,
      post.topInto?.value.rail,
      post.topInto?.value.joint,
      post.topBow?.value.bow,
      post.topBow?.value.joint,
      post.joined?.value,
      (post.intoSeat ?? post.onSeat) && "seat",
    );
  for (const rail of design.rails.values()) {
    const course = rail.course?.value;
    if (course?.is === "from-to") add(rail.name, course.from, course.to);
    else add(rail.name, course?.of);
    add(rail.name, rail.onOne?.value, rail.joined?.value, ...rail.ends.map((end) => end.joined?.value));
  }
  for (const slat of design.slats.values())
    add(slat.name, slat.from?.value, slat.to?.value, slat.joined?.value);
  for (const stick of design.sticks.values())
    add(stick.name, "seat", stick.to?.value, stick.through?.value.bow, stick.joined?.value);
  for (const bow of design.bows.values()) add(bow.name, bow.feet && "seat", bow.joined?.value);
  for (const block of design.blocks.values()) add(block.name, block.in?.value);
  for (const angle of design.angles.values())
    add(angle.name, "trim", ...(angle.between?.value ?? []).map(termName));
  add("seat", "trim", ...(design.seat?.on ?? []).map((ref) => ref.value));
  add("trim", ...design.trims.flatMap((trim) => trim.posts.map((post) => post.value)));
  add("backrest", "seat", ...design.rails.keys(), ...design.slats.keys(), ...design.sticks.keys());
  const { posts, rails, slats, sticks, bows, blocks } = design;
  add(
    "everything",
    ...[posts, rails, slats, sticks, bows, blocks].flatMap((parts) => [...parts.keys()]),
    "seat",
    "trim",
  );
  for (const [reader, lets] of readersOf(design).lets) add(reader, ...lets);
  return needs;
}

const termName = (term: AngleTerm): string | undefined =>
  term.is === "part" ? term.part.name : term.is === "seat" ? "seat" : undefined;

/** The things that a worked-out value depends on directly, the nearest first: what its row in the table says. */
export function rootsOf(value: string): string[] {
  const first = stemOf(value);
  // A declared angle has no row and is a thing itself.
  return valueRow(value)?.dependsOn.map((thing) => (thing === "part" ? first : thing)) ?? [first];
}

/** Everything that some things depend on, themselves among it, each with how many steps away it is from the nearest root. */
export function reachedFrom(
  roots: readonly (readonly [string, number])[],
  dependencies: Dependencies,
): Map<string, number> {
  const steps = new Map(roots);
  for (const [thing, step] of steps)
    for (const next of dependencies.get(thing) ?? []) if (!steps.has(next)) steps.set(next, step + 1);
  return steps;
}
