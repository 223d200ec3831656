/**
 * Which revision a version of a file belongs to, so that the files it names are read as they were beside it.
 */
import { git, type Repository } from "./git.ts";

/** A commit by the name somebody gives it; nothing when there is none. */
export function commitNamed({ folder }: Repository, revision: string): string | undefined {
  const found = git(folder, ["rev-parse", "--verify", "--quiet", "--end-of-options", `${revision}^{commit}`]);
  return found.ok ? found.out.toString().trim() : undefined;
}

/**
 * The revision in which a file had just this content: the last commit if it has it, then the index (an empty name), then the
 * newest commit that still had it. git says only the content when it hands over a version to be compared.
 */
export function revisionOfBlob(repository: Repository, path: string, blob: string): string | undefined {
  const { folder } = repository;
  const has = (revision: string) => {
    const found = git(folder, ["rev-parse", "--verify", "--quiet", `${revision}:${path}`]);
    return found.ok && found.out.toString().trim().startsWith(blob);
  };
  if (has("HEAD")) return "HEAD";
  if (has("")) return "";
  const full = git(folder, ["rev-parse", "--verify", "--quiet", `${blob}^{blob}`]);
  if (!full.ok) return undefined;
  const touching = git(folder, [
    "log",
    "--all",
    "--format=%H",
    `--find-object=${full.out.toString().trim()}`,
    "--",
    path,
  ]);
  for (const commit of touching.out.toString().split("\n").filter(Boolean)) {
    if (has(commit)) return commit;
    if (has(`${commit}^`)) return `${commit}^`;
  }
  return undefined;
}
