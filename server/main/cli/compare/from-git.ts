/**
 * `compare --git`: what git hands over as `diff.chair.command`. It ends with 0 whatever differs, since git takes 1 for a failure.
 */
import { existsSync } from "node:fs";
import { type Repository, repositoryAt } from "../../git/git.ts";
import { addressInside, filesAt } from "../../git/revision-files.ts";
import { revisionOfBlob } from "../../git/revisions.ts";
import { type Bench, ENDED, misuse, type Options, otherFiles } from "../command.ts";
import { readInput } from "../read-input.ts";
import { brush, harmless } from "../terminal.ts";
import { comparedOf, outputOf } from "./compared.ts";
import type { Version } from "./sides.ts";

/** Seven arguments, nine on a rename, one for a path that is not merged. */
export function gitHandsOver(bench: Bench, given: readonly string[], options: Options): number {
  const [path, oldFile, oldHex, , newFile, newHex, , newPath = path, header] = given;
  const { terminal } = bench;
  const paint = brush(terminal.colour.out);
  if (path !== undefined && given.length === 1) {
    terminal.out(
      `${paint("bold", harmless(path))}: not merged yet; "git mergetool" or an editor settles it.\n`,
    );
    return ENDED.well;
  }
  if (
    path === undefined ||
    oldFile === undefined ||
    oldHex === undefined ||
    newFile === undefined ||
    newHex === undefined
  )
    return misuse(
      bench,
      '"compare --git" is for git, which gives it seven or nine arguments: see "seatwright git".',
    );
  const repository = repositoryAt(process.cwd());
  if ("why" in repository) return misuse(bench, `git cannot be asked here: ${repository.why}.`);
  const old = handedOver(repository, path, oldFile, oldHex);
  const now = handedOver(repository, newPath!, newFile, newHex);
  for (const version of [old, now]) {
    if (!("text" in version)) terminal.out(`${harmless(version.file)}: ${version.refused}.\n`);
  }
  if (header) terminal.out(`${harmless(header.trimEnd())}\n`);
  if ("text" in old && "text" in now)
    terminal.out(`${outputOf(bench, comparedOf(bench, old, now), options)}\n`);
  return ENDED.well;
}

/** One side: git's own copy of a version, or the file of the work tree; nothing at all on the side where there is none. */
function handedOver(
  repository: Repository,
  path: string,
  file: string,
  hex: string,
): Version | { file: string; refused: string } {
  const address = addressInside(repository, path);
  if (hex === "." || !existsSync(file))
    return { file: hex === "." ? "nothing" : path, text: "", address, files: otherFiles };
  const input = readInput(file);
  if (!("text" in input)) return input;
  const revision = /^0+$/.test(hex) ? undefined : revisionOfBlob(repository, path, hex);
  const files = revision === undefined ? otherFiles : filesAt(repository, revision);
  const name = revision === undefined ? path : `${hex.slice(0, 7)}:${path}`;
  return { file: name, text: input.text, address, files };
}
