/**
 * Which addresses a chair may name by `use` and `like`: those in the place where it lies itself. Nothing that a file says makes the
 * program reach out to another machine.
 */
import { resolveAddress } from "./addresses.ts";

/** The address of a file named in the one at `from`; nothing when it lies on another machine, or in another kind of place. */
export function resolveNamed(from: string, path: string): string | undefined {
  if (/^[\\/]{2}/.test(path.trim())) return undefined;
  const address = resolveAddress(from, path);
  const place = placeOf(from);
  return place !== undefined && place === placeOf(address) ? address : undefined;
}

/** Scheme and machine of an address; nothing for a `file:` address of another machine. */
function placeOf(address: string): string | undefined {
  const [, scheme, machine = ""] = /^([a-z][a-z0-9+.-]*):(?:\/\/([^/?#]*))?/i.exec(address) ?? [];
  if (scheme === undefined || (scheme.toLowerCase() === "file" && machine !== "")) return undefined;
  return `${scheme}://${machine}`.toLowerCase();
}
