/**
 * One scale of type and spacing for all that is lettered on the drawing. Pixels of the screen, whatever the drawing's own scale is.
 */

/**
 * VS Code's own text is 13 px, read from near. Figures are read from arm's length: capitals of 14 px letters are about 2.6 mm high on a usual
 * screen (96 px to the inch), the least that drawings on paper have; where there is room they grow to those of a large sheet.
 */
const LEAST = 14;
const MOST = 18;
/** A room whose shorter side is this many times the figures has figures of that height. */
const SHARE = 46;

/** Height of figures in a room of this size. */
export const figureSize = ({ width, height }: { width: number; height: number }): number =>
  Math.round(Math.min(MOST, Math.max(LEAST, Math.min(width, height) / SHARE)));

/** Sizes of other words against the figures: notes and names are quieter, the title is the one thing larger. */
export const NOTE = 12 / 13;
export const TITLE = 17 / 13;
/** From line to line, by the height of the letters. */
export const LINE = 1.25;
/** How far letters reach above and below their foot, by their height. */
export const ASCENT = 0.8;
export const DESCENT = 0.22;

/** One step of the spacing; everything stands a whole number of them apart. */
export const STEP = 4;
/** From a line to the words on it, and how far extension lines run past the measured one. */
export const OFF_LINE = STEP;
export const PAST_LINE = 1.5 * STEP;
/** Half the reach of a tick along each axis. */
export const TICK = STEP;
/** Around the sheet, and between views. */
export const EDGE = 3 * STEP;
export const BETWEEN = 6 * STEP;
/** Thickness of the scale bar. */
export const BAR = 1.5 * STEP;

/** From the lowest thing in a view to the foot of its caption, pixels. */
export const captionDrop = (figures: number): number => figures * LINE + 2 * STEP;

/** As many lines a pictorial view's caption may have. */
export const CAPTION_LINES = 3;

/** How wide words are at a height, in the weight of the title or of all else. */
export type Measure = (words: string, size: number, weight?: "title") => number;

/** Widths of letters by their height, on the wide side of the fonts that VS Code is shown in, where nothing measures them. */
const narrow = /[\s.,:;'’!|()[\]iljtfrI1/·…°-]/;
const broad = /[mwMW@%—×]/;
const large = /[A-Z+=<>–]/;

export const estimate: Measure = (words, size, weight) => {
  let sum = 0;
  for (const letter of words)
    sum +=
      narrow.test(letter) && letter !== "1"
        ? 0.4
        : broad.test(letter)
          ? 0.93
          : large.test(letter)
            ? 0.72
            : 0.6;
  return sum * size * (weight === "title" ? HEAVIER : 1);
};

/** How much wider semibold letters are. */
const HEAVIER = 1.08;
