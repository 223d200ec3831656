/**
 * Where files are, as those say it who look at them elsewhere: from the top of the repository, else from this folder.
 */
import { relative, resolve, sep } from "node:path";
import { pathToFileURL } from "node:url";
import { pathInside, real, repositoryAt } from "../../git/git.ts";

export interface Place {
  /** With forward slashes, percent-encoded; absolute when the file lies outside. */
  uri: string;
  inside: boolean;
}

/** A function that gives each file's place. */
export function placesFrom(folder: string): (file: string) => Place {
  const repository = repositoryAt(folder);
  return (file) => {
    const full = resolve(folder, file);
    const path =
      "why" in repository || repository.bare
        ? relative(real(folder), full).split(sep).join("/")
        : pathInside({ ...repository, folder }, full);
    if (path.startsWith("../") || path === "" || /^[a-z]:/i.test(path))
      return { uri: pathToFileURL(full).href, inside: false };
    return { uri: path.split("/").map(encodeURIComponent).join("/"), inside: true };
  };
}
