/**
 * Two chairs beside each other: what was chosen otherwise, what follows, what is found, and what has to be made anew.
 */
import { finish } from "../../grammar/steps.ts";
import { gatheredSteps } from "../design/evaluate.ts";
import type { OtherFiles, Study } from "../study.ts";
import { type Anew, anewBetween } from "./anew.ts";
import { type Choice, chosenBetween } from "./chosen.ts";
import { followsFrom, type Moved } from "./follows.ts";
import { type Found, foundBetween } from "./found.ts";
import type { Called } from "./spelled.ts";
import { type Thing, thingsOf } from "./things.ts";

/** A chair to compare: all that is known of it, and where its other files are. */
export interface Side {
  study: Study;
  files: OtherFiles;
}

export interface Comparison {
  chosen: Choice[];
  follows: Moved[];
  found: Found;
  anew: Anew[];
  /** Nothing of the chair differs, however differently the texts are written. */
  same: boolean;
  /** Which sides have errors, so that they are compared only as far as they go. */
  faulty: { old: boolean; new: boolean };
  /** Old names of things by which they are called now. */
  renamed: ReadonlyMap<string, string>;
}

/** Compares two chairs. Whatever the texts; what is not known of one side is absent. */
export function compare(before: Side, after: Side): Comparison {
  const [old, now] = alikeIn(before, after);
  const { choices: chosen, renamed } = chosenBetween(thingsIn(old), thingsIn(now));
  const called: Called = (name) => renamed.get(name) ?? name;
  const follows = followsFrom(old.study.chair, now.study.chair, called);
  const found = foundBetween(old.study.problems, now.study.problems, called);
  const anew = anewBetween(old.study.chair, now.study.chair, called);
  const told = found.new.length + found.gone.length + found.changed.length;
  return {
    chosen,
    follows,
    found,
    anew,
    same: chosen.length + follows.length + anew.length + told === 0,
    faulty: { old: hasErrors(old.study), new: hasErrors(now.study) },
    renamed,
  };
}

/** Both with what is worked out late, or both without. */
function alikeIn(...sides: [Side, Side]): readonly [Side, Side] {
  if (sides.every(({ study }) => study.late)) return sides;
  const [old, now] = sides.map((side) => ({ ...side, study: side.study.quick ?? side.study }));
  return [old ?? sides[0], now ?? sides[1]];
}

const hasErrors = ({ problems }: Study): boolean => problems.some(({ severity }) => severity === "error");

/** The things of a side, with what it starts from and uses. */
export function thingsIn({ study: { tree, address }, files }: Side): Thing[] {
  return thingsOf(finish(gatheredSteps({ tree, address, files })).items);
}
