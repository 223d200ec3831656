/**
 * Which findings are new since a revision.
 */
import { finish } from "../../../../grammar/steps.ts";
import { chosenBetween } from "../../../compare/chosen.ts";
import { thingsIn } from "../../../compare/compare.ts";
import { foundBetween } from "../../../compare/found.ts";
import { lateSteps } from "../../../strength/late.ts";
import { git, pathInside, type Repository, repositoryAt } from "../../git/git.ts";
import { addressInside, filesAt, textAt } from "../../git/revision-files.ts";
import { commitNamed } from "../../git/revisions.ts";
import { type Bench, otherFiles } from "../command.ts";
import type { Checked, CheckedFile } from "./checked.ts";
import { isRead } from "./checked.ts";

/** A function that leaves of each file's findings those that are new, or why it cannot be told. */
export function newSince(bench: Bench, revision: string): ((checked: Checked) => Checked) | { why: string } {
  const repository = repositoryAt(process.cwd());
  if ("why" in repository) return { why: `git cannot be asked here: ${repository.why}` };
  const commit = commitNamed(repository, revision);
  if (commit === undefined) return { why: `there is no revision "${revision}"` };
  let renames: ReadonlyMap<string, string> | undefined;
  return (checked) => {
    if (!isRead(checked)) return checked;
    const path = pathInside(repository, checked.file);
    const at = (of: string) => {
      const found = textAt(repository, commit, of);
      return "text" in found ? { path: of, text: found.text } : undefined;
    };
    const before = at(path);
    if (before) return onlyNew(bench, { repository, commit }, before, checked);
    renames ??= renamesSince(repository, commit);
    const was = renames.get(path);
    const earlier = was === undefined ? undefined : at(was);
    return earlier ? onlyNew(bench, { repository, commit }, earlier, checked) : checked;
  };
}

interface Since {
  repository: Repository;
  commit: string;
}

function onlyNew(
  { services }: Bench,
  { repository, commit }: Since,
  { path, text }: { path: string; text: string },
  checked: CheckedFile,
): CheckedFile {
  const files = filesAt(repository, commit);
  const old = {
    study: finish(services.study({ text, address: addressInside(repository, path), files, late: lateSteps })),
    files,
  };
  const now = { study: checked.study, files: otherFiles };
  const { renamed } = chosenBetween(thingsIn(old), thingsIn(now));
  const called = (name: string) => renamed.get(name) ?? name;
  const { new: fresh, changed } = foundBetween(old.study.problems, now.study.problems, called);
  // What was only warned of and is an error now is a new error.
  const risen = changed.filter((each) => each.new.severity === "error" && each.old.severity !== "error");
  const problems = new Set([...fresh, ...risen.map((each) => each.new)]);
  const accepted = foundBetween(
    old.study.accepted.map(({ problem }) => problem),
    now.study.accepted.map(({ problem }) => problem),
    called,
  );
  const newlyAccepted = new Set(accepted.new);
  return {
    ...checked,
    problems: checked.problems.filter((problem) => problems.has(problem)),
    accepted: checked.accepted.filter(({ problem }) => newlyAccepted.has(problem)),
  };
}

/** New paths of files that were renamed since, with their old ones. */
function renamesSince({ folder }: Repository, commit: string): Map<string, string> {
  const told = git(folder, [
    "diff",
    "--no-ext-diff",
    "--no-textconv",
    "-M",
    "--diff-filter=R",
    "--name-status",
    "-z",
    commit,
    "--",
  ]);
  const fields = told.out.toString("utf8").split("\0");
  const renames = new Map<string, string>();
  for (let k = 0; k + 2 < fields.length; k += 3) renames.set(fields[k + 2]!, fields[k + 1]!);
  return renames;
}
