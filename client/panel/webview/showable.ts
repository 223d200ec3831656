/**
 * What the panel can look at, and what can be shown or not: one table each, from which the page and its commands are made. What the commands
 * are called stands in the manifest.
 */

/** The views, in the order of their keys. */
export const lookNames = ["all", "front", "side", "plan", "pictorial"] as const;
export type LookName = (typeof lookNames)[number];

/** What can be shown, in the order of the commands, and whether it is at first. */
export const shows = [
  { name: "findings", on: true },
  { name: "rules", on: true },
  { name: "floor", on: false },
  { name: "sitter", on: false },
  { name: "hidden", on: false },
  { name: "arrangement", on: false },
  { name: "post", on: false },
  { name: "pictorial", on: false },
  { name: "boards", on: false },
  { name: "strength", on: false },
] as const;

export type ShowName = (typeof shows)[number]["name"];
export const showNames = shows.map(({ name }) => name) as [ShowName, ...ShowName[]];

/** Names of the commands and context keys, which the manifest repeats. */
export const lookCommand = (name: LookName): string => `seatwright.drawing.look.${name}`;
export const showCommand = (name: ShowName, on: boolean): string =>
  `seatwright.drawing.${on ? "show" : "hide"}.${name}`;
export const showKey = (name: ShowName): string => `seatwright.drawing.shows.${name}`;
