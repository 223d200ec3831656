/**
 * The pages that tell of a chair, by name.
 */

/** The kinds, as commands and messages name them. */
export const pageKinds = ["stance", "fit", "gluingUp", "values"] as const;
export type PageKind = (typeof pageKinds)[number];

/** What each is called. */
export const pageTitles: Record<PageKind, string> = {
  stance: "Stance",
  fit: "Fit",
  gluingUp: "Gluing Up",
  values: "Values",
};

/** The command of our own client that shows a page, and a link that runs it for a chair. */
export const pageCommand = (kind: PageKind): string => `seatwright.page.${kind}`;
export const pageLink = (kind: PageKind, uri: string): string =>
  `command:${pageCommand(kind)}?${encodeURIComponent(JSON.stringify([uri]))}`;
