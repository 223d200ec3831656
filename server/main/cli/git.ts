/**
 * `seatwright git`: the lines by which git compares and merges chairs through this program.
 */
import { appendFileSync, existsSync, readFileSync } from "node:fs";
import { delimiter, join, resolve } from "node:path";
import { repositoryAt, git as runGit } from "../git/git.ts";
import { type Bench, type Command, ENDED, misuse } from "./command.ts";

export const git: Command = {
  name: "git",
  usage: "git [--set]",
  summary:
    "print the settings by which git compares and merges chairs with this program; --set makes them, here only",
  options: { set: { type: "boolean", does: "make the settings, in this repository only" } },
  takes: { least: 0, most: 0 },
  run(bench, _, { set }) {
    return set ? makeSettings(bench) : print(bench);
  },
};

const ATTRIBUTES = "*.chair diff=chair merge=chair";

/** The settings and their values. */
function settingsFor(program: string): [name: string, value: string][] {
  return [
    ["diff.chair.command", `${program} compare --git`],
    ["diff.chair.textconv", `${program} facts`],
    ["merge.chair.name", "chairs merged by their facts"],
    ["merge.chair.driver", `${program} merge --git %O %A %B %L %P`],
  ];
}

function print(bench: Bench): number {
  const lines = settingsFor(program()).map(([name, value]) => `git config ${name} '${value}'`);
  bench.terminal.out(`# A line of .gitattributes, for everybody who works on these chairs:
${ATTRIBUTES}

# Settings of each one's own; "seatwright git --set" makes them in this repository:
${lines.join("\n")}
`);
  return ENDED.well;
}

function makeSettings(bench: Bench): number {
  const repository = repositoryAt(process.cwd());
  if ("why" in repository) return misuse(bench, `there is no repository here to set up: ${repository.why}.`);
  const { folder, top, bare } = repository;
  for (const [name, value] of settingsFor(program())) {
    const { ok, why } = runGit(folder, ["config", "--local", name, value]);
    if (!ok) return misuse(bench, `git does not take "${name}": ${why}.`);
    bench.terminal.out(`${name} = ${value}\n`);
  }
  if (!bare) bench.terminal.out(`${join(top, ".gitattributes")}: ${attributesIn(top)}\n`);
  return ENDED.well;
}

/** Adds the line to the file of attributes, unless it has it. */
function attributesIn(top: string): string {
  const file = join(top, ".gitattributes");
  const before = existsSync(file) ? readFileSync(file, "utf8") : "";
  if (before.split(/\r?\n/).some((line) => line.trim() === ATTRIBUTES)) return "has the line already.";
  appendFileSync(file, `${before === "" || before.endsWith("\n") ? "" : "\n"}${ATTRIBUTES}\n`);
  return `"${ATTRIBUTES}" added; commit it.`;
}

/** How git can start this program: by its name where that is on the path, else by the file that runs now. */
function program(): string {
  const names = process.platform === "win32" ? ["seatwright.cmd", "seatwright.exe"] : ["seatwright"];
  const folders = (process.env.PATH ?? "").split(delimiter).filter(Boolean);
  if (folders.some((folder) => names.some((name) => existsSync(join(folder, name))))) return "seatwright";
  const quoted = (path: string) => `"${path.replaceAll("\\", "/")}"`;
  return `${quoted(process.execPath)} ${quoted(resolve(process.argv[1] ?? "seatwright"))}`;
}
