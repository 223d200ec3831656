/**
 * Writes moved values into the text: each replaces the figure where it stands now, one at a time, and a whole drag is one step to undo.
 * A move that comes while the text and what is known of it differ waits for the next drawing.
 */
import type { Span } from "../../grammar/problem.ts";
import { type Adjustable, written } from "../../server/editor/adjustable.ts";

interface Move {
  name: string;
  /** In the value's own unit. */
  value: number;
  /** It was let go: what comes after is another step to undo. */
  done: boolean;
}

interface Adjusting {
  move(move: Move): void;
  /** The values of one version of the text. */
  drawn(drawing: { version: number; adjustables?: Adjustable[] | undefined }): void;
  /** Versions are counted anew. */
  reset(): void;
}

/** The text as it is now. */
export interface OpenText {
  readonly version: number;
  /** Whether what is written can be seen as it is written, and several writes be undone together. */
  readonly inSight: boolean;
  slice(span: Span): string;
  /**
   * Makes the next version of the text; false when the text changed before it could be written. What is written from a step's beginning
   * to its end is undone together.
   */
  replace(span: Span, text: string, step: { begins: boolean; ends: boolean }): Promise<boolean>;
}

/** Nothing moved yet. */
export function createAdjusting(open: () => Promise<OpenText>): Adjusting {
  let known: { version: number; adjustables: Adjustable[] } | undefined;
  let waiting: Move[] = [];
  let writing = false;
  /** The step that moves are being added to, the value its last one wrote, and the version that made. */
  let step: { name: string; value: number; version: number } | undefined;

  async function next() {
    if (writing) return;
    writing = true;
    try {
      while (waiting[0] && known) if (!(await write(await open()))) return;
    } finally {
      writing = false;
    }
  }

  /** Writes the first of the moves that wait, unless that must wait longer. */
  async function write(text: OpenText): Promise<boolean> {
    const move = waiting[0];
    if (!move || known?.version !== text.version) return false;
    const place = known.adjustables.find(({ name }) => name === move.name);
    const figure = place && written(place, move.value);
    // Whatever else was written since, the maker's own words above all, is a step of its own.
    const begins = step?.name !== move.name || step.version !== text.version;
    const same = place && text.slice(place.at) === figure;
    // Let go where it was last written, and the text changed since, by undoing it perhaps: that is not to be written again.
    const over = begins && move.done && step?.name === move.name && step.value === move.value;
    if (!place?.plain || figure === undefined || (same && begins) || over) {
      if (over) step = undefined;
      drop(move);
      return true;
    }
    if (!move.done && !text.inSight) {
      drop(move);
      return true;
    }
    const { version, adjustables } = known;
    if (!(await text.replace(place.at, figure, { begins, ends: move.done }))) return false;
    drop(move);
    // Not what the text says its version is by now: someone may have typed since.
    const made = version + 1;
    step = move.done ? undefined : { name: move.name, value: move.value, version: made };
    if (known.version <= version)
      known = { version: made, adjustables: after(adjustables, place.at, figure) };
    return true;
  }

  function drop(move: Move) {
    waiting = waiting.filter((each) => each !== move);
  }

  return {
    move(move) {
      // Of the places passed on the way only the newest counts; where it was let go is never passed over.
      const last = waiting.at(-1);
      if (last && !last.done && last.name === move.name) waiting.pop();
      waiting.push(move);
      void next();
    },
    drawn({ version, adjustables }) {
      if (adjustables && version >= (known?.version ?? 0)) known = { version, adjustables };
      void next();
    },
    reset() {
      known = undefined;
      step = undefined;
    },
  };
}

/** The values where they stand once `at` has given way to the figure. */
function after(adjustables: readonly Adjustable[], at: Span, figure: string): Adjustable[] {
  const longer = figure.length - (at.end - at.start);
  return adjustables.map((each) => {
    const { start, end } = each.at;
    if (start === at.start) return { ...each, at: { start, end: end + longer } };
    return start > at.start ? { ...each, at: { start: start + longer, end: end + longer } } : each;
  });
}
