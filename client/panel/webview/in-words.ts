/**
 * The drawing in words: its figures, what is found wrong, and every part by its name with its figures, to go through by keyboard
 * or screen reader.
 */
import type { DimensionLine, Sheet } from "../../../server/drawing/sheet.ts";
import type { PartTold } from "../../../server/editor/about/parts-told.ts";
import type { Fault } from "../../../server/editor/faults.ts";
import { countOf } from "./announcer.ts";
import { faultsOfPart, faultWords } from "./fault-words.ts";
import type { PictorialWords } from "./pictorial-words.ts";

/** The full names of the parts drawn, in the order they stand in the text. */
export function partNames(sheet: Sheet): string[] {
  const starts = new Map(
    sheet.views.flatMap(({ areas }) => areas.map(({ part, at }) => [part, at.start] as const)),
  );
  return [...starts].sort(([a, from], [b, to]) => from - to || a.localeCompare(b)).map(([part]) => part);
}

/** What a dimension measures: the label of an angle begins with the part that leans. */
const measureWords = ({ name, label, arc }: DimensionLine): string =>
  arc ? `${name}: ${label}` : `${name} ${label}`;

/** What is drawn and what it measures, in a sentence or two. */
export function summaryOf({ title, views }: Sheet, faults: readonly Fault[]): string {
  const drawn = views.map(({ name }) => name).join(", ");
  const figures = views.flatMap(({ dimensions }) => dimensions.map(measureWords));
  return [
    `Drawing of ${title || "the chair"}: ${drawn}.`,
    figures.length ? `${figures.join(", ")}.` : "",
    countOf(faults),
  ]
    .filter(Boolean)
    .join(" ");
}

interface InWords {
  sheet: Sheet;
  faults: readonly Fault[];
  told: readonly PartTold[];
  /** Of the pictorial view, while that is shown. */
  pictorial?: PictorialWords | undefined;
}

/** Fills `place` with it all; the button in focus keeps the focus if it is still there. Each button carries what it goes to. */
export function fillInWords(place: HTMLElement, { sheet, faults, told, pictorial }: InWords): void {
  const focused = document.activeElement instanceof HTMLElement ? keyOf(document.activeElement) : undefined;
  const figures = sheet.views.flatMap(({ dimensions }) => dimensions);
  place.replaceChildren(
    heading(sheet.title || "Chair"),
    ...(sheet.notes ?? []).map((note) => made("p", note)),
    list(figures.map((figure) => [made("span", measureWords(figure))])),
    ...(pictorial ? pictorialElements(pictorial) : []),
    heading("Findings"),
    faults.length ? list(faults.map(findingItem)) : made("p", countOf(faults)),
    heading("Parts"),
    list(partNames(sheet).map((part) => partItem(part, faults, told))),
  );
  for (const button of place.querySelectorAll("button")) if (keyOf(button) === focused) button.focus();
}

function pictorialElements({ caption, glueUps }: PictorialWords): HTMLElement[] {
  const told = glueUps.map(({ title, lines }, k) => [
    made("strong", `${k + 1}. ${title}`),
    ...lines.map((line) => made("p", line)),
  ]);
  return [
    heading("Pictorial view"),
    made("p", caption),
    ...(told.length > 0 ? [heading("Gluing up"), list(told)] : []),
  ];
}

const keyOf = ({ dataset }: HTMLElement) => dataset.part ?? dataset.fault;

function findingItem(fault: Fault): HTMLElement[] {
  const button = made("button", faultWords(fault));
  button.dataset.fault = fault.letter;
  return [button];
}

function partItem(part: string, faults: readonly Fault[], told: readonly PartTold[]): HTMLElement[] {
  const about = told.find((each) => each.part === part);
  const letters = faultsOfPart(faults, part).map(({ letter }) => letter);
  const button = made("button", `${about?.title ?? part}${letters.length ? ` (${letters.join(", ")})` : ""}`);
  button.dataset.part = part;
  const lines = [about?.description, ...(about?.lines ?? [])].filter((line) => line !== undefined);
  return [button, ...lines.map((line) => made("p", line))];
}

function list(items: HTMLElement[][]): HTMLElement {
  const made = document.createElement("ul");
  for (const children of items) {
    const item = document.createElement("li");
    item.append(...children);
    made.append(item);
  }
  return made;
}

const heading = (words: string) => made("h2", words);

function made<Name extends keyof HTMLElementTagNameMap>(
  name: Name,
  words: string,
): HTMLElementTagNameMap[Name] {
  const element = document.createElement(name);
  element.textContent = words;
  return element;
}
