/**
 * Where each drawn part stands in the text as it is now, though the drawing was made from an earlier version of it.
 */

import type { Span } from "../../grammar/problem.ts";
import type { Sheet } from "../../server/drawing/sheet.ts";

/** One replacement as an editor reports it: this stretch of the text before gave way to so many characters. */
export interface Change {
  offset: number;
  length: number;
  text: string;
}

/** Where a part stands: in the text that is drawn, or in the file at this address, from which that one takes it over. */
export interface PartPlace extends Span {
  file?: string;
}

interface PartPlaces {
  /** A drawing made from this version has come; a stale one keeps the places of the last good version. */
  drawn(drawing: { version: number; sheet: Sheet | null; stale: boolean }): void;
  /** The text changed and this is its new version. */
  changed(version: number, changes: readonly Change[]): void;
  /** Where the part stands now. */
  of(part: string): PartPlace | undefined;
  /** The parts whose declarations hold this place of the text that is drawn. */
  at(offset: number): string[];
}

/** No parts yet. */
export function createPartPlaces(): PartPlaces {
  let places = new Map<string, PartPlace>();
  let since: { version: number; changes: readonly Change[] }[] = [];

  function moved(span: Span): Span {
    return since.flatMap(({ changes }) => changes).reduce(shift, span);
  }

  return {
    drawn({ version, sheet, stale }) {
      if (!sheet || (stale && places.size)) return;
      places = new Map(
        sheet.views.flatMap((view) =>
          view.areas.map(({ part, at, file }): [string, PartPlace] => [
            part,
            file === undefined ? at : { ...at, file },
          ]),
        ),
      );
      since = since.filter((change) => change.version > version);
    },
    changed(version, changes) {
      if (places.size) since.push({ version, changes });
    },
    of(part) {
      const span = places.get(part);
      return span?.file === undefined ? span && moved(span) : span;
    },
    at(offset) {
      const holds = (span: Span) => span.start <= offset && offset <= span.end;
      return [...places]
        .filter(([, span]) => span.file === undefined && holds(moved(span)))
        .map(([part]) => part);
    },
  };
}

/** The span after one change of the text; what was inside the replaced text shrinks to its start. */
export function shift({ start, end }: Span, { offset, length, text }: Change): Span {
  const move = (at: number) => {
    if (at <= offset) return at;
    return at >= offset + length ? at + text.length - length : offset;
  };
  return { start: move(start), end: move(end) };
}
