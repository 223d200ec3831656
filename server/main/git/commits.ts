/**
 * The commits that changed a file, renames followed, with the file as it was.
 */
import { asText } from "../text.ts";
import { git, type Repository } from "./git.ts";

export interface Commit {
  id: string;
  /** ISO 8601. */
  date: string;
  subject: string;
  /** Where the file was, from the top. */
  path: string;
  /** Where it was in the commit that this was made from. */
  before: string;
}

/** A file at a commit. */
type Place = Pick<Commit, "id" | "path">;

/** From the oldest; none when git knows no such file. */
export function commitsOf({ folder }: Repository, path: string): Commit[] {
  const options = [
    "--follow",
    "-M",
    "--no-ext-diff",
    "--name-status",
    "-z",
    // A merge is a version of its own where the file became another than on either side.
    "--diff-merges=combined",
    "--format=%x01%H%x00%cI%x00%s%x00",
  ];
  const { out } = git(folder, ["log", ...options, "--", path]);
  let known = path;
  return out
    .toString("utf8")
    .split("\u0001")
    .slice(1)
    .map((record): Commit => {
      const [id = "", date = "", subject = "", ...changed] = record.split("\0");
      const fields = changed.map((field) => field.trim()).filter(Boolean);
      const [status = "", one, other] = fields;
      const renamed = /^[RC]/.test(status);
      const path = (renamed ? other : one) ?? known;
      known = renamed ? (one ?? known) : path;
      return { id, date, subject, path, before: known };
    })
    .reverse();
}

/** The file's text at each commit, read by one process; nothing where it is not there or not text. */
export function textsAt({ folder }: Repository, commits: readonly Place[]): (string | undefined)[] {
  if (commits.length === 0) return [];
  const asked = commits.map(({ id, path }) => `${id}:${path}\n`).join("");
  const { out } = git(folder, ["cat-file", "--batch"], asked);
  let at = 0;
  return commits.map(() => {
    const end = out.indexOf(10, at);
    if (end < 0) return undefined;
    const [, kind, size] = out.toString("utf8", at, end).split(/ (?=blob \d+$)| (?=\d+$)/);
    at = end + 1;
    if (kind !== "blob") return undefined;
    const bytes = out.subarray(at, at + Number(size));
    at += Number(size) + 1;
    return asText(bytes);
  });
}
