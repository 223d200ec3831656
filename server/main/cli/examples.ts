/**
 * The files that break each rule: `CODE.chair` beside the rule in the source, all in one folder beside the bundle.
 */
import { readdirSync, readFileSync } from "node:fs";
import { basename } from "node:path";

/** Gives the example of a rule by its code; nothing for a rule that no text breaks. */
export type Examples = (code: string) => string | undefined;

/** The examples in some folders and the folders in them; the folders are looked through when the first is asked for. */
export function examplesIn(folders: readonly URL[]): Examples {
  let files: Map<string, URL> | undefined;
  return (code) => {
    files ??= new Map(folders.flatMap(chairsIn).map((url) => [basename(url.pathname, ".chair"), url]));
    const file = files.get(code);
    return file && readFileSync(file, "utf8");
  };
}

function chairsIn(folder: URL): URL[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    if (entry.isDirectory()) return chairsIn(new URL(`${entry.name}/`, folder));
    return entry.name.endsWith(".chair") ? [new URL(entry.name, folder)] : [];
  });
}
