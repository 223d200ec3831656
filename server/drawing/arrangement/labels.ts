/**
 * How parts are named beside the views: by their names, or where those leave the views no room by numbers in brackets, with a key.
 */
import { partId, stemOf } from "../../design/identity.ts";
import type { Piece } from "../../joinery/pieces/piece.ts";
import type { Figures } from "../markout/figures.ts";
import type { Of, Said } from "./set-out.ts";

export interface Labels {
  of: (of: readonly Of[]) => string;
  said: (said: Said) => string;
  /** One sentence: each part with its number, if it has one, its section and how many there are. */
  key: string;
}

/** Said by where a label stands, so that a number does without it: tops over a view and feet under it, what is in front on that side. */
const PLAIN = new Set([
  "foot",
  "top",
  "face",
  "axis",
  "front axis",
  "front",
  "back",
  "front corner",
  "back corner",
]);

export const namedLabels = (pieces: readonly Piece[], figures: Figures): Labels => ({
  of: (all) => all.map(({ part, what }) => (what ? `${part} ${what}` : part)).join(", "),
  said: ({ part, says }) => `${part} ${says}`,
  key: `Sections at their thickest: ${stemsOf(pieces)
    .map((stem) => described(stem, pieces, figures))
    .join("; ")}.`,
});

export function numberedLabels(pieces: readonly Piece[], figures: Figures): Labels {
  const stems = stemsOf(pieces);
  const number = (name: string): string => {
    const { stem, row } = partId(name);
    const at = stems.indexOf(stem);
    // What is no piece, such as a woven seat, keeps its name.
    return at < 0 ? name : `${at + 1}${row === undefined ? "" : `.${row}`}`;
  };
  return {
    of: (all) => {
      const whats = [...new Set(all.map(({ what }) => what).filter((what) => what && !PLAIN.has(what)))];
      return [`(${all.map(({ part }) => number(part)).join(", ")})`, ...whats].join(" ");
    },
    said: ({ part, short }) => `(${number(part)}) ${short}`,
    key: `Parts, with their sections at their thickest: ${stems
      .map((stem, k) => `(${k + 1}) ${described(stem, pieces, figures)}`)
      .join("; ")}.`,
  };
}

const stemsOf = (pieces: readonly Piece[]): string[] => [
  ...new Set(pieces.flatMap(({ parts }) => parts.map(({ name }) => stemOf(name)))),
];

/** `seat-side 22 × 70, 2 off`. */
function described(stem: string, pieces: readonly Piece[], figures: Figures): string {
  const own = pieces.filter(({ parts }) => parts.some(({ name }) => stemOf(name) === stem));
  const { size, plan } = own[0]!;
  const count = own.reduce((sum, { parts }) => sum + parts.length, 0);
  const section = size.round
    ? `Ø ${figures.print(size.round)}`
    : [size.thick, ...(plan ? [] : [size.wide])].map((mm) => figures.print(mm)).join(" × ");
  return `${stem} ${section}${plan ? " thick" : ""}, ${count} off`;
}
