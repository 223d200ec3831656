/**
 * Files as they were at a revision: what a chair of that revision names by `use` and `like` is read there too.
 */
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import type { OtherFiles } from "../../study.ts";
import { LARGEST } from "../files.ts";
import { resolveNamed } from "../named-files.ts";
import { asText } from "../text.ts";
import { git, pathInside, type Repository } from "./git.ts";

/** The text of a file at a revision, by its path from the top; why not otherwise. An empty revision is the index. */
export function textAt(
  { folder }: Repository,
  revision: string,
  path: string,
): { text: string } | { why: string } {
  const shown = git(folder, ["cat-file", "blob", `${revision}:${path}`]);
  if (!shown.ok) return { why: shown.why };
  if (shown.out.length > LARGEST) return { why: "the file is too large to be read" };
  const text = asText(shown.out);
  return text === undefined ? { why: "this is not a text file" } : { text };
}

/** The address a file of the repository has, whether it is there now or not. */
export const addressInside = ({ top }: Repository, path: string): string =>
  pathToFileURL(join(top, path)).href;

/** Other files at a revision; each is read once. */
export function filesAt(repository: Repository, revision: string): OtherFiles {
  const read = new Map<string, string | undefined>();
  return {
    resolve: resolveNamed,
    read(address) {
      if (!read.has(address)) {
        const path = address.startsWith("file:") ? pathInside(repository, fileURLToPath(address)) : undefined;
        const found =
          path === undefined || path.startsWith("../") ? undefined : textAt(repository, revision, path);
        read.set(address, found && "text" in found ? found.text : undefined);
      }
      return read.get(address);
    },
  };
}
