/**
 * What the panel can look at, and what can be shown or not: one table each, from which the page and its commands are made.
 */

/** The views, in the order of their keys. */
export const looks = [
  { name: "all", label: "All Views", key: "0" },
  { name: "front", label: "Front View", key: "1" },
  { name: "side", label: "Side View", key: "2" },
  { name: "plan", label: "Plan", key: "3" },
  { name: "pictorial", label: "Pictorial View", key: "4" },
] as const;

export type LookName = (typeof looks)[number]["name"];

/** What can be shown, in the order of the commands. */
export const shows = [
  { name: "findings", label: "Findings", on: true },
  { name: "rules", label: "Values to Try", on: true },
  { name: "floor", label: "Floor", on: false },
  { name: "sitter", label: "Sitter", on: false },
  { name: "hidden", label: "Hidden Lines", on: false },
  { name: "arrangement", label: "Arrangement", on: false },
  { name: "post", label: "Post Faces", on: false },
  { name: "pictorial", label: "Pictorial View", on: false },
  { name: "boards", label: "Boards", on: false },
  { name: "strength", label: "Strength", on: false },
] as const;

export type ShowName = (typeof shows)[number]["name"];

export const showNames = shows.map(({ name }) => name) as [ShowName, ...ShowName[]];
export const lookNames = looks.map(({ name }) => name) as [LookName, ...LookName[]];

/** Names of the commands and context keys, which the manifest repeats. */
export const lookCommand = (name: LookName): string => `seatwright.drawing.look.${name}`;
export const showCommand = (name: ShowName, on: boolean): string =>
  `seatwright.drawing.${on ? "show" : "hide"}.${name}`;
export const showKey = (name: ShowName): string => `seatwright.drawing.shows.${name}`;
