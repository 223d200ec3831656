/**
 * Loads that no standard asks for and every chair meets: a child kneeling on the seat and leaning on the back, and somebody rocking
 * on the back legs. Calculated as a rigid chair on a level floor; not a test.
 */
import type { Chair } from "../chair/chair.ts";
import type { Vec3 } from "../geometry/solid.ts";
import { bodyOf, oldestChild } from "../sitter/body.ts";
import { childWeight } from "../sitter/child-weight.ts";
import { type Loaded, type TipCase, tipCase } from "./load-cases.ts";
import { gravity } from "./loaded.ts";
import data from "./loads.json" with { type: "json" };
import { insideBy, type Load, type TippingLine } from "./support.ts";

/** The age of the child that kneels: as the text says, else the oldest the chair is for, else the usual one. */
function kneelingAge({ design }: Pick<Chair, "design">): number {
  return (
    design.stability?.value.childAge ?? oldestChild(design.sitter.value) ?? data.kneelingChild.usualAge.value
  );
}

/** The cases beyond the standards of a chair with a back, each about the back tipping line that goes over first. */
export function beyondCases(chair: Chair, lines: readonly TippingLine[], loaded: Loaded): TipCase[] {
  const { back } = loaded;
  if (!back) return [];
  const behind = lines.filter(({ way }) => way === "back");
  return [
    ...worst(behind.map((line) => childCase(line, loaded, back, kneelingAge(chair)))),
    ...worst(behind.map((line) => leaningCase(line, loaded, back, chair))),
  ];
}

const worst = (cases: TipCase[]): TipCase[] =>
  cases.length === 0 ? [] : [cases.reduce((a, b) => (b.margin < a.margin ? b : a))];

type Back = NonNullable<Loaded["back"]>;

/**
 * A child on its knees, facing the back, leaning over it: part of its weight comes down on the top of the back, which it also pushes
 * away; its knees push the seat the other way by as much, so that nothing moves.
 */
function childCase(line: TippingLine, loaded: Loaded, back: Back, age: number): TipCase {
  const { crestShare, push, kneesAhead } = data.kneelingChild;
  const weight = childWeight(age)[2] * gravity;
  const crest: Vec3 = [0, back.topAt, back.top];
  const knees: Vec3 = [0, back.junction - kneesAhead.value, loaded.seatHeight];
  return tipCase(
    line,
    `a child of ${age} kneeling on it and leaning over the back`,
    [
      loaded.weight,
      { at: knees, force: [0, -push.value * weight, -(1 - crestShare.value) * weight] },
      { at: crest, force: [0, push.value * weight, -crestShare.value * weight] },
    ],
    "child",
  );
}

/**
 * A sitter rocking on the back legs: how far chair and sitter together can be tilted before they go over, against how far people tilt.
 */
function leaningCase(line: TippingLine, loaded: Loaded, back: Back, chair: Chair): TipCase {
  const { tilt, centreAhead, centreUp, ofStature } = data.leaningBack;
  const { measures, whom } = bodyOf(chair.design.sitter.value);
  const size = measures.stature / ofStature.value;
  const sitter: Load = {
    at: [0, back.junction - centreAhead.value * size, loaded.seatHeight + centreUp.value * size],
    force: [0, 0, -measures.weight * gravity],
  };
  const loads = [loaded.weight, sitter];
  const down = loads.reduce((sum, { force }) => sum - force[2], 0);
  const mean = (of: (at: Vec3) => number) =>
    loads.reduce((sum, { at, force }) => sum - force[2] * of(at), 0) / down;
  const inside = mean((at) => insideBy(line, [at[0], at[1]]));
  const up = mean((at) => at[2]);
  const goesOver = Math.atan2(inside, up);
  const people = (tilt.value * Math.PI) / 180;
  const outFor = (low: number) => Math.max(0, up * Math.tan(Math.min(low * people, 1.5)) - inside);
  return {
    way: "back",
    kind: "leaning",
    name: `${whom} rocking on the back legs`,
    line,
    loads,
    margin: Math.max(0, goesOver / people),
    short: outFor(1),
    outFor,
    tilt: goesOver,
  };
}

/** What is assumed of the child and of whoever rocks, in a sentence each. */
export const beyondAssumed = { child: data.kneelingChild.said, leaning: data.leaningBack.said };
