import type { ClientCapabilities } from "vscode-languageserver";

/** What our own client says that it can do beyond the protocol: show pictures in hovers, run our commands. */
type Own = "hoverPictures" | "commands";

/** Whether a client says so. */
export function canDo({ experimental }: ClientCapabilities, what: Own): boolean {
  const own: unknown = (experimental as { seatwright?: unknown } | undefined)?.seatwright;
  return (own as Record<string, unknown> | undefined)?.[what] === true;
}
