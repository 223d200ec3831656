/**
 * The card beside the part that is pointed at: its name, its figures and what is found wrong with it.
 */

import type { PartTold } from "../../../server/editor/about/parts-told.ts";
import type { Fault } from "../../../server/editor/faults.ts";
import { faultsOfPart, faultWords } from "./fault-words.ts";

interface Told {
  title: string;
  lines: string[];
  faults: { severity: string; words: string }[];
}

/** What there is to say of a part. */
export function tellPart(part: string, told: readonly PartTold[], faults: readonly Fault[]): Told {
  const about = told.find((each) => each.part === part);
  return {
    title: about?.title ?? part,
    lines: [about?.description, ...(about?.lines ?? [])].filter((line) => line !== undefined),
    faults: faultsOfPart(faults, part).map((fault) => ({
      severity: fault.severity,
      words: faultWords(fault),
    })),
  };
}

/** All of it in one breath. */
export function inOneBreath({ title, faults, lines }: Told): string {
  const sentences = [title, ...faults.map(({ words }) => words), ...lines];
  return sentences.map((each) => (/[.!?…]$/.test(each) ? each : `${each}.`)).join(" ");
}

/** Fills the card. */
export function fillCard(card: HTMLElement, { title, lines, faults }: Told): void {
  const name = document.createElement("strong");
  name.textContent = title;
  card.replaceChildren(
    name,
    ...faults.map(({ severity, words }) => paragraph(words, `fault ${severity}`)),
    ...lines.map((line) => paragraph(line)),
  );
}

function paragraph(words: string, className = ""): HTMLElement {
  const made = document.createElement("p");
  made.textContent = words;
  made.className = className;
  return made;
}

export interface Box {
  left: number;
  top: number;
  width: number;
  height: number;
}

/** Room between the card and what it tells of, and around the edge, px. */
const CLEAR = 12;
const EDGE = 4;

/**
 * Where a card of this size stands: right, left, below or above what it tells of, where it first fits into the room there is; where it
 * fits nowhere, on the side with more room. Pixels, y down.
 */
export function placeCard(
  about: Box,
  { width, height }: { width: number; height: number },
  room: { width: number; height: number },
): { left: number; top: number } {
  const level = within(about.top + about.height / 2 - height / 2, room.height - height);
  const upright = within(about.left + about.width / 2 - width / 2, room.width - width);
  const right = { left: about.left + about.width + CLEAR, top: level };
  const left = { left: about.left - CLEAR - width, top: level };
  const below = { left: upright, top: about.top + about.height + CLEAR };
  const above = { left: upright, top: about.top - CLEAR - height };
  const fits = [right, left, below, above].find(
    (place) =>
      within(place.left, room.width - width) === place.left &&
      within(place.top, room.height - height) === place.top,
  );
  if (fits) return fits;
  const roomier = room.width - about.left - about.width >= about.left ? right : left;
  return { left: within(roomier.left, room.width - width), top: level };
}

function within(place: number, most: number): number {
  return Math.max(EDGE, Math.min(place, most - EDGE));
}
