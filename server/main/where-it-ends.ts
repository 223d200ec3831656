/**
 * Where a path ends once every link on the way is followed. Followed one step at a time, so that a link to another machine is noticed
 * before that machine is asked.
 */
import { lstatSync, readlinkSync } from "node:fs";
import { dirname, parse, resolve, sep } from "node:path";

/** As many links as the system itself follows. */
const MOST_LINKS = 40;

/** The path without links; nothing when there is no such thing, or when the way leads to another machine. */
export function whereItEnds(path: string): string | undefined {
  let waiting = stepsOf(path);
  let at = parse(resolve(path)).root;
  if (isRemote(at)) return undefined;
  for (let links = 0; ; ) {
    const step = waiting.shift();
    if (step === undefined) return at;
    const next = resolve(at, step);
    if (isDevice(step)) return undefined;
    const stat = lstatSync(next, { throwIfNoEntry: false });
    if (stat === undefined) return undefined;
    if (!stat.isSymbolicLink()) {
      at = next;
      continue;
    }
    if (++links > MOST_LINKS) return undefined;
    const target = resolve(dirname(next), readlinkSync(next));
    if (isRemote(target)) return undefined;
    waiting = [...stepsOf(target), ...waiting];
    at = parse(target).root;
  }
}

function stepsOf(path: string): string[] {
  const whole = resolve(path);
  return whole.slice(parse(whole).root.length).split(sep).filter(Boolean);
}

/** Windows: `\\server\share`, and its longer spellings `\\?\UNC\…` and `\\.\…`. */
const isRemote = (path: string): boolean => sep === "\\" && /^[\\/]{2}/.test(path);

/** Windows: names that stand for devices wherever they are written. */
const isDevice = (name: string): boolean =>
  sep === "\\" && /^(?:con|prn|aux|nul|com\d|lpt\d|conin\$|conout\$)(?:[.: ]|$)/i.test(name);
