/**
 * The row of switches for what is shown beside the drawing's own lines. A switch that is off puts `without-NAME` on the page, and the
 * style sheet hides what belongs to it.
 */

import { type OverlayName, overlayNames } from "../../../server/drawing/sheet.ts";

/** What can be shown, in the order of the switches. */
const shows = [
  { name: "findings", label: "Findings", title: "Mark the parts that something is wrong with", on: true },
  { name: "rules", label: "Values", title: "Rules to move the values to try along", on: true },
  {
    name: "floor",
    label: "Floor",
    title: "In the plan: feet, centre of gravity, loads, what it goes over",
    on: false,
  },
  {
    name: "post",
    label: "Post",
    title: "The post that the caret is in, from each of its faces, with its mortises",
    on: false,
  },
  {
    name: "pictorial",
    label: "Pictorial",
    title: "The chair from any side, beside the views: drag it or use the arrow keys to turn it",
    on: false,
  },
  {
    name: "boards",
    label: "Boards",
    title: "The stock list, and how the parts are sawn from boards",
    on: false,
  },
  { name: "sitter", label: "Sitter", title: "From the side: the sitter it is for, to scale", on: false },
] as const;

export type Show = (typeof shows)[number]["name"];

/** The overlays that are on, of switches turned from how they were at first: they are drawn only when they are asked for. */
export function overlaysOn(turned: readonly string[]): OverlayName[] {
  return overlayNames.filter((name) => isShown(name, turned));
}

interface Shows {
  /** Turns a switch on that is off. */
  turnOn(name: Show): void;
}

/** Whether something is shown, of switches turned from how they were at first. */
export const isShown = (name: Show, turned: readonly string[]): boolean =>
  shows.some((show) => show.name === name && show.on !== turned.includes(name));

/** Fills `place` with the switches as they were left; `changed` hears of all that are the other way than at first. */
export function createShows(given: {
  place: HTMLElement;
  turned: readonly string[];
  changed(turned: string[]): void;
}): Shows {
  const { place, changed } = given;
  const turned = new Set(given.turned);
  const buttons = shows.map(({ name, label, title, on }) => {
    const button = document.createElement("button");
    button.textContent = label;
    button.title = title;
    const apply = () => {
      const shown = on !== turned.has(name);
      button.setAttribute("aria-pressed", String(shown));
      document.body.classList.toggle(`without-${name}`, !shown);
    };
    button.addEventListener("click", () => {
      if (!turned.delete(name)) turned.add(name);
      apply();
      changed([...turned]);
    });
    apply();
    return button;
  });
  place.replaceChildren(...buttons);
  return {
    turnOn(name) {
      if (!isShown(name, [...turned])) buttons[shows.findIndex((show) => show.name === name)]?.click();
    },
  };
}
