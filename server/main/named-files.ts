/**
 * Which addresses a chair may name by `use` and `like`: those in the place where it lies itself. Nothing that a file says makes the
 * program reach out to another machine.
 */
import { resolveAddress, sameAddress } from "./addresses.ts";

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

/** How these files are named in the one at `from`, those nearest to it first; without itself and those that it may not name. */
export function namesFrom(from: string, addresses: readonly string[]): string[] {
  const here = foldersOf(from);
  const named = addresses.flatMap((address) => {
    const there = foldersOf(address);
    let alike = 0;
    while (alike < here.length && alike < there.length && here[alike] === there[alike]) alike++;
    const up = here.length - alike;
    const down = [...there.slice(alike), address.slice(address.lastIndexOf("/") + 1)];
    const path = [...Array.from({ length: up }, () => ".."), ...down].map(decoded).join("/");
    if (/["\\\n]/.test(path) || sameAddress(address) === sameAddress(from)) return [];
    const resolved = resolveNamed(from, path);
    return resolved !== undefined && sameAddress(resolved) === sameAddress(address)
      ? [{ path, away: up + down.length }]
      : [];
  });
  return named.sort((a, b) => a.away - b.away || (a.path < b.path ? -1 : 1)).map(({ path }) => path);
}

const foldersOf = (address: string): string[] => address.split("/").slice(0, -1);

function decoded(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}
