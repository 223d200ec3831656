/**
 * What stands on either side of a comparison: a file, a version of it in git, or what comes over standard input.
 */
import { existsSync } from "node:fs";
import { finish } from "../../../../grammar/steps.ts";
import type { Side } from "../../../compare/compare.ts";
import type { OtherFiles } from "../../../study.ts";
import { pathInside, repositoryAt } from "../../git/git.ts";
import { addressInside, filesAt, textAt } from "../../git/revision-files.ts";
import { commitNamed } from "../../git/revisions.ts";
import { type Bench, lateFor, otherFiles } from "../command.ts";
import { readInput } from "../read-input.ts";

/** One side's text with where it and its other files are. */
export interface Version {
  /** As it is called in the answer. */
  file: string;
  text: string;
  address: string;
  files: OtherFiles;
}

type Found = Version | { file: string; refused: string };

/** Reads what is named: a file of this name if there is one, else `REVISION:FILE`, else `-` for standard input. */
export function versionNamed(named: string): Found {
  const colon = named.indexOf(":");
  if (colon < 1 || existsSync(named)) {
    const input = readInput(named);
    return "text" in input ? { ...input, files: otherFiles } : input;
  }
  return versionAt(process.cwd(), named.slice(0, colon), named.slice(colon + 1), named);
}

/** A file as it was at a revision: by its path from this folder, or from the top of the repository. */
function versionAt(folder: string, revision: string, file: string, named: string): Found {
  const repository = repositoryAt(folder);
  if ("why" in repository) return { file: named, refused: `git cannot be asked here: ${repository.why}` };
  const commit = commitNamed(repository, revision);
  if (commit === undefined) return { file: named, refused: `there is no revision "${revision}"` };
  for (const path of new Set([pathInside(repository, file), file])) {
    const found = textAt(repository, commit, path);
    if ("text" in found)
      return {
        file: named,
        text: found.text,
        address: addressInside(repository, path),
        files: filesAt(repository, commit),
      };
  }
  return { file: named, refused: `revision "${revision}" has no such file` };
}

/** A version read and worked out. */
export function sideOf(bench: Bench, { text, address, files }: Version): Side {
  return { study: finish(bench.services.study({ text, address, files, ...lateFor() })), files };
}
