/**
 * The stock list and the boards, under the drawing while they are switched on: each part a link to its text, each piece of the part that
 * the caret is in marked. A script of its own, loaded when it is asked for.
 */
import type { BoardsShown } from "../../../../server/drawing/boards/shown.ts";
import type { BoardsTold } from "../../messages.ts";
import { element, pathThrough } from "../svg.ts";

type Board = BoardsShown["boards"][number];
type Point = readonly [number, number];

export interface BoardsView {
  /** They are switched on or off. */
  turn(on: boolean): void;
  /** There is something new to show. */
  show(boards: BoardsTold): void;
  /** The caret is in these parts. */
  caret(parts: readonly string[]): void;
}

export interface BoardsGiven {
  place: HTMLElement;
  chosen(part: string): void;
  stopped(): void;
}

/** Fills `place`; hears which part is chosen, and when planning is to stop. */
export function create(given: BoardsGiven): BoardsView {
  const { place, chosen, stopped } = given;
  const progress = document.createElement("p");
  const contents = document.createElement("div");
  let at: readonly string[] = [];
  place.addEventListener("click", ({ target }) => {
    if (!(target instanceof Element)) return;
    const { part, boards } =
      (target.closest("[data-part], [data-boards]") as HTMLElement | null)?.dataset ?? {};
    if (boards === "stop") stopped();
    else if (part !== undefined) chosen(part);
  });

  function mark() {
    for (const each of place.querySelectorAll<HTMLElement>("[data-parts]")) {
      const parts = (each.dataset.parts ?? "").split(" ");
      each.classList.toggle(
        "caret",
        parts.some((part) => at.includes(part)),
      );
    }
  }

  return {
    turn(on) {
      place.hidden = !on;
      progress.textContent = "Working out the stock list.";
      place.replaceChildren(...(on ? [progress, contents] : []));
      contents.replaceChildren();
    },
    show(boards) {
      progress.replaceChildren(...progressOf(boards));
      if (boards.is === "refused") return contents.replaceChildren();
      const focused = (document.activeElement as HTMLElement | null)?.dataset.part;
      const { shown, stale } = boards;
      contents.replaceChildren(
        stockTable(shown),
        ...shown.sums.map((sum) => made("p", sum)),
        ...shown.boards.map((board) => boardElement(board)),
      );
      contents.classList.toggle("stale", stale);
      if (focused) contents.querySelector<HTMLElement>(`button[data-part="${CSS.escape(focused)}"]`)?.focus();
      mark();
    },
    caret(parts) {
      at = parts;
      mark();
    },
  };
}

function progressOf(boards: BoardsTold): (Node | string)[] {
  if (boards.is === "refused") return [`There is no plan of the boards: ${boards.because}.`];
  if (boards.stopped) return ["Planning was stopped; it goes on when the text changes."];
  if (!boards.progress) return [];
  const { pass, of } = boards.progress;
  const stop = made("button", "Stop");
  stop.dataset.boards = "stop";
  stop.title = "Keep the best plan so far";
  const words = boards.stale
    ? "The boards are those of the text before; a new plan is being made. "
    : pass === 0 && boards.shown.boards.length === 0
      ? "Planning the boards. "
      : `Looking for a better plan, ${pass} of ${of}. `;
  return [words, stop];
}

function stockTable({ headings, stock }: BoardsShown): HTMLTableElement {
  const table = document.createElement("table");
  table.append(made("caption", "Stock list"));
  const head = table.createTHead().insertRow();
  head.append(
    ...headings.map((heading) => {
      const cell = made("th", heading);
      cell.scope = "col";
      return cell;
    }),
  );
  const body = table.createTBody();
  for (const { part, parts, cells } of stock) {
    const row = body.insertRow();
    row.dataset.parts = parts.join(" ");
    for (const text of cells) {
      const cell = row.insertCell();
      if (text !== part) cell.textContent = text;
      else {
        const button = made("button", text);
        button.dataset.part = parts[0] ?? part;
        cell.append(button);
      }
    }
  }
  return table;
}

/** Height of the type, as a share of a board's length: readable where the board is as wide as a panel. */
const TYPE = 1 / 76;

function boardElement({ title, long, wide, pieces, offcuts, defects, wane, cuts, says }: Board): HTMLElement {
  const figure = document.createElement("figure");
  const type = long * TYPE;
  const flip = (points: readonly Point[]) => points.map(([x, y]): [number, number] => [x, wide - y]);
  const shape = (name: string, points: readonly Point[]) =>
    element("path", { class: name, d: pathThrough(flip(points), true) });
  const counts = new Map<string, number>();
  for (const { label } of pieces) counts.set(label, (counts.get(label) ?? 0) + 1);
  const list = [...counts].map(([part, many]) => (many === 1 ? part : `${many} ${part}`)).join(", ");
  const svg = element(
    "svg",
    {
      viewBox: `${-type} ${-1.2 * type} ${long + 2 * type} ${wide + 1.4 * type}`,
      role: "img",
      "aria-label": `${title}. Pieces: ${list}.`,
    },
    shape("board", [
      [0, 0],
      [long, 0],
      [long, wide],
      [0, wide],
    ]),
    ...offcuts.map((points) => shape("offcut", points)),
    ...pieces.map(({ part, parts, label, at: [x, y], points }) => {
      const xs = points.map(([u]) => u);
      const room = Math.max(...xs) - Math.min(...xs);
      const ys = points.map(([, v]) => v);
      const high = Math.max(...ys) - Math.min(...ys);
      const named = label.length * type * 0.58 < room && high > type;
      const group = element(
        "g",
        { class: "piece" },
        element("title", {}, part),
        shape("area", points),
        ...(named
          ? [
              element(
                "text",
                { x, y: wide - y + type * 0.35, "font-size": type, "text-anchor": "middle" },
                label,
              ),
            ]
          : []),
      );
      group.dataset.part = parts[0] ?? part;
      group.dataset.parts = parts.join(" ");
      return group;
    }),
    ...wane.map((points) => element("path", { class: "wane", d: pathThrough(flip(points)) })),
    ...defects.map(({ what, points: [a, b, c, d] }) =>
      element(
        "g",
        { class: "defect" },
        element("title", {}, what),
        element("path", {
          d: `${pathThrough(flip([a!, b!, c!, d!]), true)}${pathThrough(flip([a!, c!]))}${pathThrough(flip([b!, d!]))}`,
        }),
      ),
    ),
    ...cuts.map(({ number, line }) => {
      const [x, y] = flip(line)[1]!;
      const through = line[0][1] === 0 && line[1][1] >= wide - 1e-6;
      return element(
        "g",
        { class: "cut" },
        element("path", { d: pathThrough(flip(line)) }),
        ...(through
          ? [
              element(
                "text",
                { x, y: y - type * 0.25, "font-size": type * 0.9, "text-anchor": "middle" },
                String(number),
              ),
            ]
          : []),
      );
    }),
  );
  const details = document.createElement("details");
  details.append(made("summary", "Cuts and what is left"), ...says.map((each) => made("p", each)));
  figure.append(made("figcaption", title), svg, details);
  return figure;
}

function made<Name extends keyof HTMLElementTagNameMap>(
  name: Name,
  text: string,
): HTMLElementTagNameMap[Name] {
  const one = document.createElement(name);
  one.textContent = text;
  return one;
}
