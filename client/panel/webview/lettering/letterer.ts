/**
 * Letters a drawing anew for each scale it is seen at.
 */
import type { PartTold } from "../../../../server/editor/about/parts-told.ts";
import type { Fault } from "../../../../server/editor/faults.ts";
import type { Laid } from "../arrange.ts";
import { flaggedIn } from "../flag-places.ts";
import type { FlaggedPicture } from "../pictorial-words.ts";
import { letteringElements } from "./elements.ts";
import { lettered, type Named } from "./labels.ts";
import { namedIn } from "./named.ts";
import { pictureFlagged } from "./picture-letters.ts";
import type { Measure } from "./type-scale.ts";

interface Letterer {
  /** How wide words are in the page's own font. */
  measure: Measure;
  /** Another drawing is there. */
  show(laid: Laid, svg: SVGSVGElement, of: { faults: readonly Fault[]; named: readonly PartTold[] }): void;
  /** It is seen at so many pixels to the millimetre. */
  letter(scale: number): void;
}

/** The title's weight, as the style sheet has it. */
const TITLE_WEIGHT = "600";

/** The size at which words are measured, px. */
const MEASURED_AT = 100;

/** Nothing to letter yet. */
export function createLetterer(): Letterer {
  const canvas = document.createElement("canvas").getContext("2d");
  const widths = new Map<string, number>();
  let shown: { laid: Laid; svg: SVGSVGElement; flagged: Flags; named: Names } | undefined;
  let done: { svg: SVGSVGElement; scale: number } | undefined;
  let made: SVGElement[] = [];

  /** The font may be another when the theme or the zoom is. */
  function font(weight: string): string {
    return `${weight} ${MEASURED_AT}px ${getComputedStyle(document.body).fontFamily}`;
  }

  return {
    measure(words, size, weight) {
      const key = weight ? `${weight}: ${words}` : words;
      const known = widths.get(key);
      if (known !== undefined) return known * size;
      if (canvas) canvas.font = font(weight ? TITLE_WEIGHT : "normal");
      const wide = (canvas?.measureText(words).width ?? 0) / MEASURED_AT;
      if (widths.size > MOST_KNOWN) widths.clear();
      widths.set(key, wide);
      return wide * size;
    },
    show(laid, svg, { faults, named }) {
      const flagged = faults.length
        ? Object.fromEntries(laid.views.map(({ name, areas }) => [name, flaggedIn(areas, faults)]))
        : {};
      shown = { laid, svg, flagged, named: named.length ? namedIn(laid.views, named) : {} };
    },
    letter(scale) {
      if (!shown || (done?.svg === shown.svg && done.scale === scale)) return;
      const { laid, svg, flagged, named } = shown;
      for (const element of made) element.remove();
      made = letteringElements(lettered(laid, { scale, measure: this.measure, flagged, named }), scale);
      svg.append(...made);
      svg.style.fontSize = `${laid.figures / scale}px`;
      done = { svg, scale };
    },
  };
}

type Flags = Record<string, ReturnType<typeof flaggedIn>>;
type Names = Partial<Record<string, readonly Named[]>>;

/** Words whose width is kept. */
const MOST_KNOWN = 2000;

/** The flags of a picture that is not part of the sheet. */
export const pictureFlags = (of: FlaggedPicture): SVGElement[] =>
  letteringElements(pictureFlagged(of), of.scale);
