/**
 * The one table of worked-out values: what each is called, its dimension, its meaning and what it depends on. How each is worked out
 * stands in `server/chair/values/` and, for weight and tipping, in `server/floor/tips.ts`, in tables that the type checker holds against
 * this one. The vocabulary, completion, `reckon`, settling and the lines that matter read it.
 */
import type { WordMeaning } from "../row.ts";

/**
 * What a value depends on: the part that it is a value of; the seat; the backrest; the trimming of the feet, which turns the whole chair;
 * or all of these.
 */
type Dependency = "part" | "seat" | "backrest" | "trim" | "everything";

export interface ValueRow {
  dimension: "length" | "angle" | "area" | "mass" | "number";
  meaning: string;
  dependsOn: readonly Dependency[];
  /** It depends on how the ends are cut too, not only on where things lie. */
  jointed?: true;
  /** The angle of a saw cut, shown with its rise in a run too. */
  bevel?: true;
  /** Worked out after everything else: known to `require` and to whoever shows values, never while the text is read. */
  late?: true;
}

const jointed = true;
const bevel = true;
const late = true;

/**
 * By name, in the order to list them. `PART`, `POST`, `RAIL`, `STICK`, `BOW` and `END` stand for names in the text, as in `seat-side.left.front.tenon-long`
 * for `PART.END.tenon-long`.
 */
export const valueTable = {
  height: {
    dimension: "length",
    dependsOn: ["everything"],
    meaning: "Height of the whole chair as it stands.",
  },
  width: { dimension: "length", dependsOn: ["everything"], meaning: "Width of the whole chair." },
  depth: {
    dimension: "length",
    dependsOn: ["everything"],
    meaning: "Depth of the whole chair, front to back.",
  },
  joints: {
    dimension: "number",
    dependsOn: ["everything"],
    jointed,
    meaning: "How many joints the chair has.",
  },
  weight: { dimension: "mass", dependsOn: ["everything"], jointed, meaning: "Weight of the whole chair." },
  "tip.back": {
    dimension: "angle",
    dependsOn: ["everything"],
    jointed,
    meaning: "How far the empty chair can be tilted backwards before it goes over.",
  },
  "tip.front": {
    dimension: "angle",
    dependsOn: ["everything"],
    jointed,
    meaning: "How far the empty chair can be tilted forwards before it goes over.",
  },
  "tip.side": {
    dimension: "angle",
    dependsOn: ["everything"],
    jointed,
    meaning: "How far the empty chair can be tilted sideways before it goes over.",
  },
  "tip.leaning": {
    dimension: "angle",
    dependsOn: ["everything"],
    jointed,
    meaning: "How far chair and sitter together can be tilted backwards before they go over.",
  },
  "tip.back-margin": {
    dimension: "number",
    dependsOn: ["everything"],
    jointed,
    meaning: "Margin against tipping backwards under the standard loads.",
  },
  "tip.front-margin": {
    dimension: "number",
    dependsOn: ["everything"],
    jointed,
    meaning: "Margin against tipping forwards under the standard loads.",
  },
  "tip.side-margin": {
    dimension: "number",
    dependsOn: ["everything"],
    jointed,
    meaning: "Margin against tipping sideways under the standard loads.",
  },
  "tip.leaning-margin": {
    dimension: "number",
    dependsOn: ["everything"],
    jointed,
    meaning:
      "Margin with a sitter rocking on the back legs: how far they can be tilted over how far people tilt.",
  },
  "tip.child-margin": {
    dimension: "number",
    dependsOn: ["everything"],
    jointed,
    meaning: "Margin with a child kneeling on the seat and leaning over the back.",
  },
  "strength.margin": {
    dimension: "number",
    dependsOn: ["everything"],
    jointed,
    late,
    meaning:
      "What the weakest joint or part bears over what the loads of `strength` and `load` ask of it; too little under 1. A calculation is not a test.",
  },
  "seat.height": {
    dimension: "length",
    dependsOn: ["seat"],
    meaning: "Height of the sitting surface at the middle of its front edge, unloaded, as it stands.",
  },
  "seat.loaded-height": { dimension: "length", dependsOn: ["seat"], meaning: "The same under a sitter." },
  "seat.slope": {
    dimension: "angle",
    dependsOn: ["seat"],
    meaning: "Slope of the sitting surface, positive when it falls to the back.",
  },
  "seat.depth": {
    dimension: "length",
    dependsOn: ["seat"],
    meaning: "Depth of the sitting surface along the middle.",
  },
  "seat.front-width": {
    dimension: "length",
    dependsOn: ["seat"],
    meaning: "Width of the sitting surface at its front edge.",
  },
  "seat.back-width": {
    dimension: "length",
    dependsOn: ["seat"],
    meaning: "Width of the sitting surface at its back edge.",
  },
  "seat.width": {
    dimension: "length",
    dependsOn: ["seat"],
    meaning: "Width of a solid seat where it is widest.",
  },
  "seat.low": {
    dimension: "length",
    dependsOn: ["seat"],
    meaning: "Height of the lowest place of a solid seat's hollow, as it stands.",
  },
  "backrest.rake": {
    dimension: "angle",
    dependsOn: ["backrest"],
    meaning: "Lean of the backrest, from square to the seat.",
  },
  "backrest.top": {
    dimension: "length",
    dependsOn: ["backrest"],
    meaning: "Height of the top of the backrest.",
  },
  "PART.length": {
    dimension: "length",
    dependsOn: ["part"],
    meaning:
      "Of a post, along its line; of a rail, between its shoulders along the top edge of the outside face.",
  },
  "POST.foot-bevel": {
    dimension: "angle",
    dependsOn: ["part", "trim"],
    bevel,
    meaning: "The cut of the foot, 90° when square.",
  },
  "PART.lean": {
    dimension: "angle",
    dependsOn: ["part"],
    meaning:
      "Of what is let into a solid seat (of a hoop its left foot), the angle between its line and square to the seat: a bevel is set to 90° less this and held along the sight line.",
  },
  "PART.sight-line": {
    dimension: "angle",
    dependsOn: ["part"],
    meaning:
      "Of what is let into a solid seat, the direction in the seat's face in which its far end leans: 0° straight back, 90° out to its own side, 180° straight forward.",
  },
  "PART.bore-depth": {
    dimension: "length",
    dependsOn: ["part"],
    jointed,
    meaning: "Of what is let into a solid seat, how deep its socket is along the bore, on the middle.",
  },
  "PART.edge-wood": {
    dimension: "length",
    dependsOn: ["part"],
    jointed,
    meaning:
      "Of what is let into a solid seat, the least wood between its socket and the seat's edge, a bevel taken off.",
  },
  "PART.hollow-wood": {
    dimension: "length",
    dependsOn: ["part", "seat"],
    jointed,
    meaning: "The least wood between a blind socket from below and the hollow of a solid seat.",
  },
  "STICK.over-all": {
    dimension: "length",
    dependsOn: ["part"],
    jointed,
    meaning: "Length of a stick with both its tenons, along its line.",
  },
  "STICK.off-middle": {
    dimension: "length",
    dependsOn: ["part"],
    meaning: "Of a stick that goes through a bow, how far its line passes from the bow's centre line.",
  },
  "BOW.strip-length": {
    dimension: "length",
    dependsOn: ["part"],
    jointed,
    meaning: "Length of the strip that a bow is bent from: along its centre line, with both its tenons.",
  },
  "BOW.radius": {
    dimension: "length",
    dependsOn: ["part"],
    meaning: "The tightest radius of a bow's inside face.",
  },
  "POST.grain-slope": {
    dimension: "angle",
    dependsOn: ["part"],
    meaning:
      "Of a curved post, the steepest its line runs to the grain, its outline turned in the board so that this is least.",
  },
  "RAIL.round-length": {
    dimension: "length",
    dependsOn: ["part"],
    meaning: "Along the curve of a bowed rail.",
  },
  "RAIL.END.face-bevel": {
    dimension: "angle",
    dependsOn: ["part"],
    bevel,
    meaning:
      "On the outside face, between the top edge and the shoulder line, inside the rail; 90° when square. Round rails and sticks have none.",
  },
  "RAIL.END.edge-bevel": {
    dimension: "angle",
    dependsOn: ["part"],
    bevel,
    meaning:
      "On the top edge, between the outside face and the shoulder line, inside the rail; 90° when square. Round rails and sticks have none.",
  },
  "PART.demand": {
    dimension: "number",
    dependsOn: ["everything"],
    jointed,
    late,
    meaning:
      "How hard a post, rail or slat works under the load that asks most of it: load over what it bears, too much from 1.",
  },
  "PART.END.demand": {
    dimension: "number",
    dependsOn: ["everything"],
    jointed,
    late,
    meaning:
      "How hard a part, or the joint at its end, works under the load that asks most of it: load over what it bears, too much from 1.",
  },
  "PART.END.tenon-thick": {
    dimension: "length",
    dependsOn: ["part"],
    jointed,
    meaning: "Thickness of the tenon as cut.",
  },
  "PART.END.tenon-wide": {
    dimension: "length",
    dependsOn: ["part"],
    jointed,
    meaning: "Width of the tenon as cut.",
  },
  "PART.END.tenon-long": {
    dimension: "length",
    dependsOn: ["part"],
    jointed,
    meaning:
      "How deep the tenon goes as cut, square to the face it enters; its end is parallel to that face, or mitred: then it is the longest.",
  },
  "PART.END.mortise-wall": {
    dimension: "length",
    dependsOn: ["part"],
    jointed,
    meaning:
      "The least wood left beside the mortise, to the faces at its sides; in turned stuff where the mortise comes nearest the axis.",
  },
  "PART.END.glue-area": {
    dimension: "area",
    dependsOn: ["part"],
    jointed,
    meaning: "Long grain to long grain in the joint: the cheeks as a rule, half the skin of a round tenon.",
  },
} as const satisfies Record<string, ValueRow>;

/** A name in the table. */
export type ValueName = keyof typeof valueTable;

/** Those that are worked out after everything else, in `server/strength/values.ts`. */
export type LateName = "strength.margin" | "PART.demand" | "PART.END.demand";

const entries = Object.entries(valueTable) as [ValueName, ValueRow][];
const ofPart = /^(?:PART|POST|RAIL|STICK|BOW)\.(?:END\.)?/;

/** The values of the chair as a whole, its seat, its backrest and how it tips, by their whole names. */
export const wholeValues: ReadonlyMap<string, ValueRow> = new Map(
  entries.filter(([name]) => !ofPart.test(name)),
);

/** The values of parts and their ends, by the last word of their names. */
export const partValues: ReadonlyMap<string, ValueRow> = new Map(
  entries.flatMap(([name, row]) => (ofPart.test(name) ? [[name.replace(ofPart, ""), row]] : [])),
);

const prefixOf = { post: "POST", rail: "RAIL", slat: "RAIL", stick: "STICK", bow: "BOW" } as const;

/** A kind of part that has values of its own. */
export type ValuedKind = keyof typeof prefixOf;

export const isValuedKind = (kind: string): kind is ValuedKind => Object.hasOwn(prefixOf, kind);

/** The last words of the values that a kind of part may have: its own, and those of each of its ends. */
export function valuesOf(kind: ValuedKind): { own: string[]; ofEnds: string[] } {
  const words = (prefix: string) =>
    entries.flatMap(([name]) => {
      const rest = name.slice(prefix.length);
      return name.startsWith(prefix) && !rest.includes(".") ? [rest] : [];
    });
  const both = (rest: string) => [...words(`PART.${rest}`), ...words(`${prefixOf[kind]}.${rest}`)];
  return { own: both(""), ofEnds: both("END.") };
}

/** The row of a value by its name in the text, such as `seat.height` or `front.left.length`; nothing for a declared angle. */
export const valueRow = (name: string): ValueRow | undefined =>
  wholeValues.get(name) ??
  (name.includes(".") ? partValues.get(name.slice(name.lastIndexOf(".") + 1)) : undefined);

export const valueWords: WordMeaning[] = [...wholeValues, ...partValues].map(([word, { meaning }]) => ({
  word,
  sort: "value",
  meaning,
}));
