/**
 * The user's own git, run as a process with a list of arguments, never through a shell; only when something of git is asked for.
 */
import { spawnSync } from "node:child_process";
import { realpathSync } from "node:fs";
import { dirname, relative, resolve, sep } from "node:path";

interface Ran {
  ok: boolean;
  /** What it ended with; nothing when it could not be run. */
  code?: number;
  out: Buffer;
  /** What git said of its failure, on one line. */
  why: string;
}

/** Most that is read of one answer of git. */
const LARGEST = 256 * 1024 * 1024;

/** Runs git in a folder. */
export function git(folder: string, args: readonly string[], input?: string): Ran {
  const { status, stdout, stderr, error } = spawnSync("git", ["-C", folder, ...args], {
    maxBuffer: LARGEST,
    windowsHide: true,
    // Answers in English, in colours for nobody, and never a question at the terminal.
    env: { ...process.env, LC_ALL: "C", GIT_TERMINAL_PROMPT: "0", GIT_EXTERNAL_DIFF: "" },
    ...(input !== undefined && { input }),
  });
  if (error) {
    const missing = (error as NodeJS.ErrnoException).code === "ENOENT";
    return {
      ok: false,
      out: Buffer.alloc(0),
      why: missing ? "git is not installed, or not on the path" : error.message,
    };
  }
  const why = stderr.toString("utf8").trim().split("\n")[0] ?? "";
  return {
    ok: status === 0,
    ...(status !== null && { code: status }),
    out: stdout,
    why: why.replace(/^(fatal|error): /, ""),
  };
}

/** A repository: a work tree, or a bare one. */
export interface Repository {
  /** Where git is run. */
  folder: string;
  /** The top of the work tree; of a bare repository its own folder. */
  top: string;
  bare: boolean;
}

/** The repository a folder belongs to; nothing when it belongs to none, with the reason. */
export function repositoryAt(folder: string): Repository | { why: string } {
  const bare = git(folder, ["rev-parse", "--is-bare-repository"]);
  if (!bare.ok) return { why: bare.why };
  if (bare.out.toString().trim() === "true") return { folder, top: folder, bare: true };
  const top = git(folder, ["rev-parse", "--show-toplevel"]);
  if (!top.ok) return { why: top.why };
  return { folder, top: top.out.toString().replace(/\r?\n$/, ""), bare: false };
}

/** A file's path from the top of the repository, with forward slashes, as git names it; of a bare one the path as given. */
export function pathInside({ top, folder, bare }: Repository, file: string): string {
  if (bare && !file.startsWith(sep)) return file;
  const full = resolve(folder, file);
  return relative(real(top), resolve(real(dirname(full)), full.slice(dirname(full).length + 1)))
    .split(sep)
    .join("/");
}

/** A folder's path without links; one that is not there keeps its own. */
export function real(folder: string): string {
  try {
    return realpathSync(folder);
  } catch {
    return folder;
  }
}
