/**
 * Real repositories in folders of their own, with this program as git would start it.
 */
import { execFileSync, spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { build } from "esbuild";
import { afterAll, beforeAll } from "vitest";

export const gitVersion = execFileSync("git", ["--version"], { encoding: "utf8" }).trim();

const root = new URL("../../../..", import.meta.url).pathname;

/** Settings that a developer's own must not come into. */
const env = {
  ...process.env,
  GIT_CONFIG_GLOBAL: "/dev/null",
  GIT_CONFIG_SYSTEM: "/dev/null",
  GIT_PAGER: "cat",
  LC_ALL: "C",
};

export interface Done {
  code: number | null;
  out: string;
  error: string;
}

let folder = "";
/** The program, bundled for this test file. */
export const program = () => join(folder, "cli.js");

/** Builds the program before the tests of a file, and takes everything away after them. */
export function withProgram(): void {
  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), "chairs-git-"));
    await build({
      absWorkingDir: root,
      entryPoints: ["server/main/cli.ts"],
      outfile: program(),
      bundle: true,
      platform: "node",
      format: "cjs",
      alias: { "lodash-es": "es-toolkit/compat" },
      external: ["*/markout/node.ts"],
      logLevel: "error",
    });
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
}

/** Runs this program in a folder. */
export function seatwrightIn(where: string, args: readonly string[], input?: string): Done {
  return ran(process.execPath, [program(), ...args], where, input);
}

function ran(command: string, args: readonly string[], cwd: string, input?: string): Done {
  const { status, stdout, stderr } = spawnSync(command, args, {
    cwd,
    env,
    encoding: "utf8",
    ...(input !== undefined && { input }),
  });
  return { code: status, out: stdout, error: stderr };
}

export interface Repo {
  at: string;
  git(...args: string[]): Done;
  /** Runs git and gives what it says; throws when it fails. */
  ok(...args: string[]): string;
  write(files: Record<string, string>): void;
  /** Writes, adds and commits; gives the commit. */
  commit(files: Record<string, string>, message?: string): string;
  seatwright(...args: string[]): Done;
}

let repositories = 0;

/** A new repository with nothing in it. */
export function newRepository(...options: string[]): Repo {
  const at = join(folder, `repository-${repositories++}`);
  mkdirSync(at);
  const repo: Repo = {
    at,
    git: (...args) => ran("git", args, at),
    ok(...args) {
      const done = repo.git(...args);
      if (done.code !== 0) throw new Error(`git ${args.join(" ")}: ${done.error}${done.out}`);
      return done.out;
    },
    write(files) {
      for (const [name, text] of Object.entries(files)) {
        mkdirSync(dirname(join(at, name)), { recursive: true });
        writeFileSync(join(at, name), text);
      }
    },
    commit(files, message = "Change") {
      repo.write(files);
      repo.ok("add", "-A");
      repo.ok("commit", "-q", "--allow-empty", "-m", message);
      return repo.ok("rev-parse", "HEAD").trim();
    },
    seatwright: (...args) => seatwrightIn(at, args),
  };
  repo.ok("init", "-q", "-b", "main", ...options);
  repo.ok("config", "user.name", "A maker");
  repo.ok("config", "user.email", "maker@example.org");
  return repo;
}
