/**
 * What differs from the chair laid behind, under the drawing: chosen, follows, found and to make anew, each row a link to its place.
 */
import type { DrawingParams } from "../../../server/main/protocol.ts";

type Told = NonNullable<DrawingParams["comparison"]>;
type Row = Told["sections"][number]["rows"][number];

interface CompareView {
  /** A drawing has come, with or without a comparison. */
  show(drawing: DrawingParams): void;
}

/** Fills `place`; hears which place or part is chosen, and when the comparison is to end. */
export function createCompareView(given: {
  place: HTMLElement;
  revealed(place: { start: number; end: number }): void;
  chosen(part: string): void;
  ended(): void;
}): CompareView {
  const { place, revealed, chosen, ended } = given;
  let shown = "";
  place.addEventListener("click", ({ target }) => {
    if (!(target instanceof HTMLElement)) return;
    const { start, end, part, compare } = target.dataset;
    if (compare === "end") ended();
    else if (start !== undefined && end !== undefined) revealed({ start: Number(start), end: Number(end) });
    else if (part !== undefined) chosen(part);
  });
  return {
    show({ comparison }) {
      place.hidden = comparison === undefined;
      const now = JSON.stringify(comparison ?? null);
      if (now === shown) return;
      shown = now;
      const focused =
        document.activeElement instanceof HTMLElement ? document.activeElement.dataset.key : undefined;
      place.replaceChildren(...(comparison ? contents(comparison) : []));
      if (focused === undefined) return;
      for (const button of place.querySelectorAll("button"))
        if (button.dataset.key === focused) button.focus();
    },
  };
}

function contents({ label, says, sections }: Told): HTMLElement[] {
  const head = made("p", `Dashed: ${label}. Heavy: parts that differ. `);
  const end = made("button", "End Comparison");
  end.dataset.compare = "end";
  head.append(end);
  return [
    head,
    ...(says === undefined ? [] : [made("p", says)]),
    ...sections.flatMap(({ title, rows, more }) => [
      made("h2", title),
      list(rows, title),
      ...(more > 0
        ? [made("p", `and ${more === 1 ? "1 value" : `${more} values`} more that moved less`)]
        : []),
    ]),
  ];
}

function list(rows: readonly Row[], title: string): HTMLElement {
  const all = document.createElement("ul");
  all.append(
    ...rows.map((row) => {
      const item = document.createElement("li");
      item.append(rowElement(row, title));
      return item;
    }),
  );
  return all;
}

function rowElement({ cells, at, part }: Row, title: string): HTMLElement {
  const [what = "", ...rest] = cells.filter(Boolean);
  const words = rest.length > 0 ? `${what}: ${rest.join(", ")}` : what;
  if (at?.side !== "new" && part === undefined) return made("span", words);
  const button = made("button", words);
  button.dataset.key = `${title} ${what} ${rest[0] ?? ""}`;
  if (at?.side === "new") {
    button.dataset.start = String(at.start);
    button.dataset.end = String(at.end);
  } else if (part !== undefined) button.dataset.part = part;
  return button;
}

function made<Name extends keyof HTMLElementTagNameMap>(
  name: Name,
  text: string,
): HTMLElementTagNameMap[Name] {
  const element = document.createElement(name);
  element.textContent = text;
  return element;
}
