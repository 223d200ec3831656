/**
 * Which part the maker points at, by mouse, in the list of parts or by keyboard on the drawing: it is marked in all views and a card tells
 * of it. The parts under the caret are marked too.
 */

import type { PartTold } from "../../../server/editor/about/parts-told.ts";
import type { Fault } from "../../../server/editor/faults.ts";
import type { PartElements } from "./part-elements.ts";
import { type Box, fillCard, inOneBreath, placeCard, tellPart } from "./told-card.ts";

interface Shown {
  /** In the order of the text. */
  names: readonly string[];
  parts: PartElements;
  told: readonly PartTold[];
  faults: readonly Fault[];
}

interface Pointing {
  /** A new drawing is there: what was marked is marked on it. */
  show(shown: Shown): void;
  /** What is drawn of each part beside the sheet's views, in place of what was. */
  also(parts: PartElements): void;
  /** The caret is in these parts. */
  highlight(parts: readonly string[]): void;
}

/** Nothing drawn yet. `chosen` hears of a part clicked or entered; `told` hears what the keyboard came to. */
export function createPointing(given: {
  place: HTMLElement;
  list: HTMLElement;
  card: HTMLElement;
  chosen(part: string): void;
  told(words: string): void;
}): Pointing {
  const { place, list, card, chosen } = given;
  let shown: Shown = { names: [], parts: new Map(), told: [], faults: [] };
  let more: PartElements = new Map();
  let highlighted: readonly string[] = [];
  let pointedAt: string | undefined;
  /** Where the card's part is, in the place's pixels. */
  let about: Box | undefined;

  function point(part: string | undefined, at?: Box) {
    pointedAt = part;
    about = part === undefined ? undefined : (at ?? boxOf(part));
    mark("pointed-at", part === undefined ? [] : [part]);
    tell();
  }

  function tell() {
    card.hidden = pointedAt === undefined || !about;
    if (pointedAt === undefined || !about) return;
    fillCard(card, tellPart(pointedAt, shown.told, shown.faults));
    const room = { width: place.clientWidth, height: place.clientHeight };
    const { left, top } = placeCard(about, { width: card.offsetWidth, height: card.offsetHeight }, room);
    card.style.left = `${left}px`;
    card.style.top = `${top}px`;
  }

  /** Puts a class on all that is drawn of these parts, and takes it from the others. */
  function mark(className: string, names: readonly string[]) {
    for (const parts of [shown.parts, more]) {
      for (const [part, elements] of parts) {
        for (const drawn of elements) drawn.classList.toggle(className, names.includes(part));
      }
    }
  }

  function markAll() {
    mark("caret", highlighted);
    mark("pointed-at", pointedAt === undefined ? [] : [pointedAt]);
  }

  /** The first of a part's outlines that is on screen. */
  function boxOf(part: string): Box | undefined {
    const { clientWidth, clientHeight } = place;
    return [...(shown.parts.get(part) ?? []), ...(more.get(part) ?? [])]
      .filter((drawn) => drawn.classList.contains("area"))
      .map(boxAround)
      .find(
        ({ left, top, width, height }) =>
          left < clientWidth && top < clientHeight && left + width > 0 && top + height > 0,
      );
  }

  function boxAround(drawn: Element): Box {
    const room = place.getBoundingClientRect();
    const { left, top, width, height } = drawn.getBoundingClientRect();
    return { left: left - room.left, top: top - room.top, width, height };
  }

  function step(by: number) {
    const { names } = shown;
    if (!names.length) return;
    const now = pointedAt === undefined ? -1 : names.indexOf(pointedAt);
    const next = now < 0 ? (by > 0 ? 0 : names.length - 1) : (now + by + names.length) % names.length;
    const part = names[next] as string;
    point(part);
    given.told(inOneBreath(tellPart(part, shown.told, shown.faults)));
  }

  for (const holder of [place, list]) {
    holder.addEventListener("click", ({ target }) => {
      const part = partOf(target);
      if (part) chosen(part);
    });
    holder.addEventListener("pointerleave", () => point(undefined));
  }
  // A pointer at rest says nothing new when the drawing changes under it: the keyboard may have gone on since.
  let rests = "";
  place.addEventListener("pointermove", ({ target, buttons, clientX, clientY }) => {
    const part = partOf(target);
    const moved = rests !== `${clientX} ${clientY}`;
    rests = `${clientX} ${clientY}`;
    if (!moved || buttons || part === pointedAt) return;
    point(part, part === undefined ? undefined : boxAround(target as Element));
  });
  list.addEventListener("pointerover", ({ target }) => point(partOf(target)));
  list.addEventListener("focusin", ({ target }) => point(partOf(target)));
  list.addEventListener("focusout", () => point(undefined));
  place.addEventListener("blur", () => point(undefined));
  place.addEventListener("keydown", ({ key, ctrlKey, metaKey, altKey }) => {
    if (ctrlKey || metaKey || altKey) return;
    if (key === "n") step(1);
    if (key === "p") step(-1);
    if (key === "Escape") point(undefined);
    if (key === "Enter" && pointedAt !== undefined) chosen(pointedAt);
  });

  return {
    show(next) {
      shown = next;
      if (pointedAt !== undefined && !shown.parts.has(pointedAt)) point(undefined);
      markAll();
      tell();
    },
    also(parts) {
      more = parts;
      markAll();
    },
    highlight(parts) {
      highlighted = parts;
      mark("caret", highlighted);
    },
  };
}

function partOf(target: EventTarget | null): string | undefined {
  return target instanceof SVGElement || target instanceof HTMLElement ? target.dataset.part : undefined;
}
