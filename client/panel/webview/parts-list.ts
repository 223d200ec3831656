/**
 * The drawing in words: every part by its name, to go through by keyboard or screen reader.
 */
import type { Sheet } from "../../../server/drawing/sheet.ts";

/** The full names of the parts drawn, in the order they stand in the text. */
export function partNames(sheet: Sheet): string[] {
  const starts = new Map(
    sheet.views.flatMap(({ areas }) => areas.map(({ part, at }) => [part, at.start] as const)),
  );
  return [...starts].sort(([a, from], [b, to]) => from - to || a.localeCompare(b)).map(([part]) => part);
}

/** Fills the list with a button for each part; the one in focus keeps it if it is still there. */
export function fillPartsList(list: HTMLElement, names: readonly string[]): void {
  const before = [...list.querySelectorAll("button")].map((button) => button.dataset.part);
  if (before.length === names.length && before.every((name, index) => name === names[index])) return;
  const focused =
    document.activeElement instanceof HTMLElement ? document.activeElement.dataset.part : undefined;
  const buttons = names.map((name) => {
    const button = document.createElement("button");
    button.dataset.part = name;
    button.textContent = name;
    return button;
  });
  list.replaceChildren(
    ...buttons.map((button) => {
      const item = document.createElement("li");
      item.append(button);
      return item;
    }),
  );
  buttons.find((button) => button.dataset.part === focused)?.focus();
}
