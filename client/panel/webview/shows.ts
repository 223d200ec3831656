/**
 * What is shown beside the drawing's own lines. What is off puts `without-NAME` on the page, and the style sheet hides what belongs to it.
 */
import { type OverlayName, overlayNames } from "../../../server/drawing/sheet.ts";
import { type ShowName, shows } from "./showable.ts";

/** The overlays that are on, of what was turned from how it was at first: they are drawn only when they are asked for. */
export function overlaysOn(turned: readonly string[]): OverlayName[] {
  return overlayNames.filter((name) => isShown(name, turned));
}

/** Whether something is shown, of what was turned from how it was at first. */
export const isShown = (name: ShowName, turned: readonly string[]): boolean =>
  shows.some((show) => show.name === name && show.on !== turned.includes(name));

/** All that is shown. */
export const shownOf = (turned: readonly string[]): ShowName[] =>
  shows.map(({ name }) => name).filter((name) => isShown(name, turned));

interface Shows {
  /** Shows something, or no longer. */
  turn(name: ShowName, on: boolean): void;
}

/** Puts things on the page as they were left; `changed` hears of all that are the other way than at first. */
export function createShows(given: { turned: readonly string[]; changed(turned: string[]): void }): Shows {
  const turned = new Set(given.turned);
  const apply = (name: ShowName) =>
    document.body.classList.toggle(`without-${name}`, !isShown(name, [...turned]));
  for (const { name } of shows) apply(name);
  return {
    turn(name, on) {
      if (isShown(name, [...turned]) === on) return;
      if (!turned.delete(name)) turned.add(name);
      apply(name);
      given.changed([...turned]);
    },
  };
}
