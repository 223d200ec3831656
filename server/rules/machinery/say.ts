/**
 * How rules speak: one plain sentence with figures in the file's units.
 */
import type { Fix, Insert, Problem, Related } from "../../../grammar/problem.ts";
import { andList } from "../../../grammar/wording.ts";
import type { LengthUnit } from "../../design/design.ts";
import { millimetresIn, printLength } from "../../design/units.ts";
import type { Place } from "./place.ts";
import type { Rule } from "./rule.ts";

export interface Finding extends Problem {
  /** Of findings on one place with one code the worst is told. */
  badness: number;
}

interface Said {
  message: string;
  subject: string;
  found?: string;
  allowed?: string;
  fixes?: Fix[];
  related?: Related[];
  badness?: number;
  inserts?: Insert[];
  /** What would have to change, for when no mend works. */
  otherwise?: string;
}

/** A finding of a rule. */
export function tell(rule: Pick<Rule, "code" | "severity">, place: Place, said: Said): Finding {
  const { start, end } = place;
  const finding: Finding = {
    code: rule.code,
    severity: rule.severity,
    message: said.message,
    start,
    end,
    subject: said.subject,
    badness: said.badness ?? 0,
  };
  if (said.found !== undefined) finding.found = said.found;
  if (said.allowed !== undefined) finding.allowed = said.allowed;
  if (place.deciders && place.deciders.length > 0) finding.deciders = place.deciders;
  if (said.inserts && said.inserts.length > 0) finding.inserts = said.inserts;
  if (said.otherwise !== undefined) finding.otherwise = said.otherwise;
  if (place.own && said.fixes && said.fixes.length > 0) finding.fixes = said.fixes;
  const related = [...(place.related ?? []), ...(said.related ?? [])];
  if (related.length > 0) finding.related = related;
  return finding;
}

/** Parts to the inch that findings are printed to: figures near a limit must differ in print. */
const PARTS = 64;
/** Lengths nearer to a limit than this are on it, mm: no saw or plane tells them apart. */
export const SAME_LENGTH = 0.05;
/** Angles nearer to a limit than this are on it. */
export const SAME_ANGLE = (0.05 * Math.PI) / 180;

/** A length of the chair in the file's units. */
export const length = (mm: number, unit: LengthUnit): string => printLength(mm, unit, PARTS);

/** The shortest printed length that is not under this one. */
export const lengthOrMore = (mm: number, unit: LengthUnit): string => length(stepped(mm, unit, 1), unit);
/** The longest printed length that is not over this one. */
export const lengthOrLess = (mm: number, unit: LengthUnit): string => length(stepped(mm, unit, -1), unit);

/** No less than so much as a maker writes it in the text, in inches by sixteenths: a figure that mends what is found. */
export const setOutOrMore = (mm: number, unit: LengthUnit): string =>
  written(unit === "in" ? length(sixteenths(mm, 1), unit) : lengthOrMore(mm, unit));
/** The same of no more than so much; up to a quarter of an inch sixteenths would be too coarse. */
export const setOutOrLess = (mm: number, unit: LengthUnit): string =>
  written(unit === "in" && mm > SIXTEENTH * 4 ? length(sixteenths(mm, -1), unit) : lengthOrLess(mm, unit));

const SIXTEENTH = millimetresIn("in") / 16;

const sixteenths = (mm: number, way: 1 | -1): number =>
  way * Math.ceil((way * mm - SAME_LENGTH) / SIXTEENTH) * SIXTEENTH;

function stepped(mm: number, unit: LengthUnit, way: 1 | -1): number {
  const step = unit === "in" ? millimetresIn("in") / PARTS : 0.1;
  const steps = (mm - way * SAME_LENGTH) / step;
  return (way > 0 ? Math.ceil(steps) : Math.floor(steps)) * step;
}

/** Degrees to a tenth, as the language writes them. */
export const degrees = (radians: number): number => Math.round((radians * 1800) / Math.PI) / 10;

/** Several names as a maker would say them: `a, b and c`. */
export const listed = andList;

/** A printed figure as the language writes it: its unit touches. */
export const written = (printed: string): string => printed.replace(/ (?=[a-z]+$)/, "");
