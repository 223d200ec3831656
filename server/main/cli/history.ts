/**
 * `seatwright history`: a chair's versions in git, each with its notes, what was chosen, and how values moved.
 */

import { basename, dirname, resolve } from "node:path";
import { printWorked } from "../../chair/values/print.ts";
import { historySteps, notesOf, type Version, type VersionChange } from "../../compare/history.ts";
import type { LengthUnit } from "../../design/design.ts";
import { plotToSvg } from "../../drawing/plot.ts";
import { type Commit, commitsOf, textsAt } from "../git/commits.ts";
import { pathInside, type Repository, repositoryAt } from "../git/git.ts";
import { addressInside, filesAt } from "../git/revision-files.ts";
import { type Bench, type Command, misuse, otherFiles, studyOf } from "./command.ts";
import { amountForJson } from "./json-units.ts";
import { formatOption, outOption } from "./options.ts";
import { readInput } from "./read-input.ts";
import type { HistoryOutput } from "./schema.ts";
import { type Brush, brush, harmless } from "./terminal.ts";
import { written } from "./writing.ts";

export const history: Command = {
  name: "history",
  usage: "history FILE [--value NAME,NAME] [--format text|json|csv|svg] [-o FILE]",
  summary: "tell each version in git with its notes and what was chosen, and how values moved",
  options: {
    value: {
      type: "string",
      values: "NAME,NAME",
      does: "follow these worked-out values through the versions",
    },
    format: formatOption,
    out: outOption,
  },
  formats: ["text", "json", "csv", "svg"],
  takes: { least: 1, most: 1 },
  run(bench, [file], { value, format, out }) {
    const asked =
      typeof value === "string"
        ? value
            .split(",")
            .map((name) => name.trim())
            .filter(Boolean)
        : [];
    // A plot of nothing says nothing: the values that a maker asks for first.
    const names = asked.length > 0 || (format !== "svg" && format !== "csv") ? asked : usual;
    const found = historyOf(bench, file!, names);
    if ("refused" in found) return misuse(bench, `${file}: ${found.refused}.`);
    const unknown = asked.find((name) => !found.entries.some(({ change }) => change.values.has(name)));
    if (unknown !== undefined && found.entries.some(({ commit }) => commit))
      bench.terminal.error(`${harmless(file!)}: no version has a value "${harmless(unknown)}".\n`);
    return written(bench, outputOf(bench, found, names, String(format ?? "text")), out);
  },
};

const usual = ["seat.height", "seat.slope", "backrest.rake", "weight"];

interface Entry {
  /** Absent for what is not committed, and where there is no git. */
  commit?: Commit;
  change: VersionChange;
}

interface History {
  file: string;
  title: string;
  units: LengthUnit;
  /** Why there are no versions, when there are none. */
  without?: string;
  entries: Entry[];
}

function historyOf(bench: Bench, file: string, names: readonly string[]): History | { refused: string } {
  const folder = process.cwd();
  const input = readInput(file);
  // A file may be gone, or live in a bare repository; its versions are listed all the same.
  const near = repositoryAt("text" in input ? dirname(resolve(file)) : folder);
  const repository: Repository | { why: string } = "why" in near ? near : { ...near, folder };
  const path = "why" in repository ? file : pathInside(repository, file);
  const at =
    "why" in repository ? undefined : { ...repository, folder: repository.bare ? folder : repository.top };
  const commits = at === undefined ? [] : commitsOf(at, path);
  if (commits.length === 0 || at === undefined) {
    if (!("text" in input)) return { refused: input.refused };
    const { design } = studyOf(bench, input);
    const without =
      "why" in repository
        ? "not in git, so only its notes are shown"
        : "not committed yet, so only its notes are shown";
    const change: VersionChange = { errors: 0, notes: notesOf(design.notes), chosen: [], values: new Map() };
    return {
      file,
      title: design.title?.value ?? basename(file),
      units: design.units,
      without,
      entries: [{ change }],
    };
  }
  return versionsOf(bench, {
    file,
    repository: at,
    commits,
    now: "text" in input ? input.text : undefined,
    names,
  });
}

interface Asked {
  file: string;
  repository: Repository;
  commits: readonly Commit[];
  /** The file as it lies there now. */
  now: string | undefined;
  names: readonly string[];
}

function versionsOf(bench: Bench, { file, repository, commits, now, names }: Asked): History {
  const texts = textsAt(repository, commits);
  const befores = textsAt(
    repository,
    commits.map(({ id, before }) => ({ id: `${id}^`, path: before })),
  );
  const there = commits.flatMap((commit, k) =>
    texts[k] === undefined ? [] : [{ commit, text: texts[k]!, from: befores[k] }],
  );
  const versions = there.map(({ commit, text, from }): Version => {
    const address = addressInside(repository, commit.path);
    return { text, address, files: filesAt(repository, commit.id), ...(from !== undefined && { from }) };
  });
  const path = commits.at(-1)!.path;
  const [committed] = textsAt(repository, [{ id: "HEAD", path }]);
  const address = addressInside(repository, path);
  if (now !== undefined && now !== committed)
    versions.push({
      text: now,
      address,
      files: otherFiles,
      ...(committed !== undefined && { from: committed }),
    });
  const entries: Entry[] = [];
  const say = (text: string) => bench.terminal.colour.error && bench.terminal.error(text);
  for (const version of historySteps(versions, names)) {
    const commit = there[entries.length]?.commit;
    entries.push({ change: version, ...(commit && { commit }) });
    if (entries.length % 10 === 0) say(`\r${entries.length} of ${versions.length} versions`);
  }
  say("\r\u001b[K");
  const { design } = studyOf(bench, versions.at(-1) ?? { text: "", address: "" });
  return { file, title: design.title?.value ?? basename(file), units: design.units, entries };
}

function outputOf(bench: Bench, versions: History, names: readonly string[], format: string): string {
  if (format === "json") return `${JSON.stringify(asJson(versions), null, 2)}\n`;
  if (format === "csv") return asCsv(versions, names);
  if (format === "svg") return plotOf(versions, names);
  return asText(versions, names, brush(bench.terminal.colour.out));
}

const calledBy = ({ commit }: Entry): { date: string; id: string } =>
  commit
    ? { date: commit.date.slice(0, 10), id: commit.id.slice(0, 9) }
    : { date: "now", id: "not committed" };

function asText(
  { file, title, units, without, entries }: History,
  names: readonly string[],
  paint: Brush,
): string {
  const now = entries.find(({ commit }) => commit)?.commit?.path;
  const lines = [
    paint("bold", harmless(title)),
    ...(without ? [`${harmless(file)}: ${without}.`] : []),
    ...entries.flatMap((entry) => [
      ...(without ? [] : ["", paint("bold", headingOf(entry, now))]),
      ...linesOf(entry.change),
      ...valueLine(entry.change, names, units),
    ]),
  ];
  return `${lines.join("\n")}\n`;
}

/** Day, commit and subject of one version; its path where that was another. */
function headingOf(entry: Entry, now: string | undefined): string {
  const { date, id } = calledBy(entry);
  const { commit } = entry;
  const moved = commit && commit.path !== now ? `  (${commit.path})` : "";
  return harmless(`${date}  ${id}  ${commit?.subject ?? ""}${moved}`.trimEnd());
}

function linesOf({ errors, notes, chosen }: Entry["change"]): string[] {
  const counted = errors === 1 ? "1 error" : `${errors} errors`;
  return [
    ...(errors > 0 ? [`  does not read whole: ${counted}; listed as far as it goes`] : []),
    ...notes.map(({ date, text }) => `  ${date ?? "no date"}: ${onOneLine(text)}`),
    ...chosen.map(
      (each) =>
        `  ${harmless([each.part, each.property].filter(Boolean).join(" "))}: ${onOneLine(wayOf(each))}`,
    ),
  ];
}

function wayOf({ old, new: now }: Entry["change"]["chosen"][number]): string {
  if (old === null) return `new: ${now || "given"}`;
  if (now === null) return `gone: ${old || "given"}`;
  return `${old || "plain"} → ${now || "plain"}`;
}

const onOneLine = (text: string): string => harmless(text.replace(/\s+/g, " "));

function valueLine({ values }: Entry["change"], names: readonly string[], units: History["units"]): string[] {
  const said = names.flatMap((name) => {
    const worked = values.get(name);
    return worked ? [`${name} ${printWorked(worked, units)}`] : [];
  });
  return said.length > 0 ? [`  ${said.join(", ")}`] : [];
}

function asJson({ file, without, entries }: History): HistoryOutput {
  return {
    file,
    git: without === undefined,
    versions: entries.map(({ commit, change }) => ({
      commit: commit?.id ?? null,
      date: commit?.date ?? null,
      subject: commit?.subject ?? null,
      path: commit?.path ?? file,
      errors: change.errors,
      notes: change.notes,
      chosen: change.chosen.map(({ part, property, old, new: now, was }) => ({
        part,
        property,
        old,
        new: now,
        ...(was !== undefined && { was }),
      })),
      values: Object.fromEntries(
        [...change.values].map(([name, { number, dimension }]) => [name, amountForJson(number, dimension)]),
      ),
    })),
  };
}

/** One row a version, one column a value with its unit in the heading; RFC 4180. */
function asCsv({ entries }: History, names: readonly string[]): string {
  const cell = (text: string) => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
  const unitOf = (name: string) => {
    const worked = entries.map(({ change }) => change.values.get(name)).find((each) => each !== undefined);
    return worked ? ` (${amountForJson(worked.number, worked.dimension).unit})` : "";
  };
  const rows = [
    ["date", "commit", "subject", "errors", "chosen", ...names.map((name) => name + unitOf(name))],
    ...entries.map(({ commit, change }) => [
      commit?.date ?? "",
      commit?.id ?? "",
      commit?.subject ?? "",
      String(change.errors),
      String(change.chosen.length),
      ...names.map((name) => {
        const worked = change.values.get(name);
        return worked ? String(amountForJson(worked.number, worked.dimension).value) : "";
      }),
    ]),
  ];
  return rows.map((row) => `${row.map(cell).join(",")}\r\n`).join("");
}

function plotOf({ title, units, entries }: History, names: readonly string[]): string {
  return plotToSvg({
    title,
    versions: entries.map((entry) => calledBy(entry).date),
    strips: names.map((name) => {
      const all = entries.map(({ change }) => change.values.get(name));
      const dimension = all.find((worked) => worked !== undefined)?.dimension ?? "number";
      return {
        name,
        values: all.map((worked) => worked?.number ?? null),
        print: (value: number) => printWorked({ name, number: value, dimension }, units),
      };
    }),
  });
}
