/**
 * Where a finding lands: on the narrowest text of the file at hand.
 */

import type { Related, Span } from "../../../grammar/problem.ts";
import { sentence } from "../../../grammar/sentences/sentence.ts";
import type { Chair } from "../../chair/chair.ts";
import type { Declared, Design, PartDesign, SeatDesign } from "../../design/design.ts";
import { partName, SEAT, stemOf } from "../../design/identity.ts";
import { plain } from "./names.ts";

/** A place that may stand in another file, or that nobody wrote. */
export interface Candidate {
  at: Span;
  file?: string;
  assumed?: true;
}

export interface Place extends Span {
  /** The fact itself stands in this file and was written, so that a fix may change it. */
  own: boolean;
  /** The fact's own place, when it stands in another file. */
  related?: Related[];
  /** Where all the facts of this file stand that decide it, the nearest first. */
  deciders?: Span[];
}

/**
 * The first candidate that somebody wrote decides: its own place when it stands in this file; otherwise the next one that does, else the
 * line that names the other file.
 */
export function placeOf(design: Design, candidates: readonly (Candidate | undefined)[]): Place {
  const given = candidates.filter((each) => each !== undefined);
  const written = given.filter((each) => !each.assumed);
  const first = written[0] ?? given[0];
  if (first === undefined) return { ...design.titleAt, own: false };
  const deciders = written.filter(({ file }) => file === undefined).map(({ at }) => spanOf(at));
  if (first.file === undefined) return { ...spanOf(first.at), own: first.assumed !== true, deciders };
  const related: Related[] = [
    { ...spanOf(first.at), message: sentence("related.figure-here"), file: first.file },
  ];
  const local = given.find((each) => each.file === undefined);
  return { ...spanOf(local?.at ?? linkTo(design, first.file)), own: false, related, deciders };
}

const spanOf = ({ start, end }: Span): Span => ({ start, end });

/** Where this file names another one, by whatever way it came in. */
function linkTo(design: Design, address: string): Span {
  const name = (path: string) => path.slice(path.lastIndexOf("/") + 1);
  const links = design.links.filter((each) => each.found);
  return (links.find((each) => name(each.path) === name(address)) ?? links[0])?.at ?? design.titleAt;
}

/** A part as a sentence begins with it: `The rail seat-side`. */
export function named(chair: Pick<Chair, "design">, part: string): string {
  if (part === partName(SEAT)) return sentence("named.seat");
  return sentence(`named.${designOf(chair, part)?.is ?? "part"}`, { part: plain(part) });
}

/** What the text says of a part, by its full name. */
export function designOf({ design }: Pick<Chair, "design">, part: string): PartDesign | undefined {
  const stem = stemOf(part);
  return (
    design.posts.get(stem) ??
    design.rails.get(stem) ??
    design.slats.get(stem) ??
    design.sticks.get(stem) ??
    design.bows.get(stem) ??
    design.blocks.get(stem)
  );
}

/**
 * The candidate for a place that the chair took from a part's design without its file: the fact of that part which has this very span,
 * else the part's name.
 */
export function candidateOf(part: Declared | SeatDesign | undefined, at: Span): Candidate {
  const found = part && factAt(part, at, 3);
  if (found) return found;
  return part?.file === undefined ? { at } : { at: part.at, file: part.file };
}

function factAt(thing: object, at: Span, depth: number): Candidate | undefined {
  if ("at" in thing && thing.at === at) return thing as Candidate;
  if (depth === 0) return undefined;
  for (const [key, value] of Object.entries(thing)) {
    if (key === "statement" || typeof value !== "object" || value === null) continue;
    const found = factAt(value, at, depth - 1);
    if (found) return found;
  }
  return undefined;
}
