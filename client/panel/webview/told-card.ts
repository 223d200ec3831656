/**
 * The card beside the part that is pointed at: its name, its figures and what is found wrong with it.
 */
import type { Fault } from "../../../server/editor/faults.ts";
import type { PartTold } from "../../../server/editor/parts-told.ts";
import { faultsOfPart, faultWords } from "./fault-words.ts";

export interface Told {
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
const CLEAR = 14;
const EDGE = 4;

/**
 * Where a card of this size stands: beside what it tells of, on the side with more room, within the room there is. Pixels, y down.
 */
export function placeCard(
  about: Box,
  { width, height }: { width: number; height: number },
  room: { width: number; height: number },
): { left: number; top: number } {
  const right = about.left + about.width + CLEAR;
  const before = about.left - CLEAR - width;
  const roomy = room.width - about.left - about.width >= about.left;
  const left = roomy ? right : before;
  return {
    left: within(left, room.width - width),
    top: within(about.top + about.height / 2 - height / 2, room.height - height),
  };
}

function within(place: number, most: number): number {
  return Math.max(EDGE, Math.min(place, most - EDGE));
}
