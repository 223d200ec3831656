/**
 * What a screen reader is told: one sentence once the drawing has come to rest, and not one for each keystroke.
 */
import type { DrawingParams } from "../../../server/main/protocol.ts";

interface Announcer {
  /** A drawing has come. */
  drawn(drawing: DrawingParams): void;
  /** Something the maker asked for, said at once. */
  say(words: string): void;
}

/** How long no drawing comes before it counts as at rest, ms. */
export const REST = 1000;

/** Nothing said yet; `say` puts words into a live region. */
export function createAnnouncer(say: (words: string) => void): Announcer {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let said: string | undefined;

  function settled(drawing: DrawingParams, first: boolean) {
    const words = wordsOf(drawing, first);
    // The same trouble is told once, however much is typed while it lasts.
    if (drawing.stale && words === said) return;
    said = words;
    say(words);
  }

  let first = true;
  return {
    drawn(drawing) {
      clearTimeout(timer);
      timer = setTimeout(() => {
        settled(drawing, first);
        first = false;
      }, REST);
    },
    say,
  };
}

function wordsOf({ sheet, stale, reason = "", faults = [] }: DrawingParams, first: boolean): string {
  if (stale) return `Out of date: ${reason}`;
  if (!sheet) return reason;
  return `Drawing ${first ? "shown" : "updated"}. ${countOf(faults)}`;
}

/** `1 error and 2 warnings.`, or that there is nothing. */
export function countOf(faults: readonly { severity: string }[]): string {
  const count = (severity: string) => {
    const found = faults.filter((fault) => fault.severity === severity).length;
    return found ? `${found} ${severity}${found === 1 ? "" : "s"}` : "";
  };
  const counts = [count("error"), count("warning")].filter(Boolean).join(" and ");
  return counts ? `${counts}.` : "Nothing found wrong.";
}
