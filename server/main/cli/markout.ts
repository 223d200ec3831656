import { nearest } from "../../../grammar/nearest.ts";
import type { Step } from "../../drawing/markout/figures.ts";
import { type PaperName, papers } from "../../drawing/markout/paper.ts";
import type { Study } from "../../study.ts";
import type { MarkoutFormat } from "../markout/make.ts";
import { whyNot } from "../markout/refusal.ts";
import { remembering, versionOf } from "../markout/version-of.ts";
import {
  type Bench,
  type Command,
  ENDED,
  lettersOf,
  misuse,
  type Options,
  otherFiles,
  studyOf,
} from "./command.ts";
import { formatOption, outOption } from "./options.ts";
import { readInput } from "./read-input.ts";
import type { MarkoutOutput } from "./schema-markout.ts";
import { brush, harmless } from "./terminal.ts";
import { stemOf, written, writtenPages } from "./writing.ts";

const steps: Record<string, Step> = { "1/16": 16, "1/32": 32, "1/64": 64 };

export const markout: Command = {
  name: "markout",
  usage:
    "markout FILE [--part NAME] [--templates] [--paper a4|a3|letter|tabloid] [--date DAY] [--format pdf|svg|json] [-o FILE]",
  summary:
    "make sheets to work from: the whole chair, its stock, every part, bevels, and story sticks, templates and views at full size",
  options: {
    part: { type: "string", values: "NAME", does: "only this part" },
    templates: { type: "boolean", does: "only what is printed at full size" },
    paper: {
      type: "string",
      values: "a4|a3|letter|tabloid",
      does: "the paper to print on; a4, or letter where the file is in inches",
    },
    date: {
      type: "string",
      values: "DAY",
      does: "the day that the sheets bear, as 2026-03-14; the last note's unless given",
    },
    step: {
      type: "string",
      values: "1/16|1/32|1/64",
      does: "how finely inches are printed; 1/32 unless given",
    },
    format: formatOption,
    out: outOption,
  },
  formats: ["pdf", "svg", "json"],
  takes: { least: 1, most: 1 },
  async run(bench, [file], options) {
    const wrong = misused(options);
    if (wrong) return misuse(bench, wrong);
    const input = readInput(file!);
    if (!("text" in input)) {
      const paint = brush(bench.terminal.colour.error);
      bench.terminal.error(`${paint("bold", harmless(input.file))}: ${input.refused}.\n`);
      return ENDED.misuse;
    }
    const { files, texts } = remembering(otherFiles);
    const study = studyOf(bench, input, {}, files);
    return mark(bench, study, { file: file!, texts: [input.text, ...texts()] }, options);
  },
};

/** What is wrong with the options themselves. */
function misused({ paper, step, format, templates, date }: Options): string | undefined {
  if (paper !== undefined && !(String(paper) in papers))
    return `"--paper ${paper}" is not known; there are "a4", "a3", "letter" and "tabloid".`;
  if (date !== undefined && !isDay(String(date)))
    return `"--date ${date}" is not a day; write it as "2026-03-14".`;
  if (format === "json" && templates === true)
    return '"--templates" are drawings: ask for them as "pdf" or "svg"; JSON has the figures of every part.';
  if (step !== undefined && !(String(step) in steps))
    return `"--step ${step}" is not known; there are "1/16", "1/32" and "1/64" of an inch.`;
  return undefined;
}

/** A day of the calendar, as the language writes dates. */
const isDay = (text: string): boolean =>
  /^\d{4}-\d\d-\d\d$/.test(text) && new Date(`${text}T00:00:00Z`).toISOString().startsWith(text);

async function mark(
  bench: Bench,
  study: Study,
  { file, texts }: { file: string; texts: string[] },
  options: Options,
): Promise<number> {
  const { chair, problems } = study;
  const { step, part } = options;
  if (step !== undefined && chair.design.units !== "in")
    return misuse(bench, `"--step" is for files in inches, and "${file}" is in ${chair.design.units}.`);
  const errors = problems.filter(({ severity }) => severity === "error").length;
  const because = whyNot(chair, errors);
  if (because) {
    bench.terminal.error(`${harmless(file)}: ${because}; "seatwright check" tells.\n`);
    return ENDED.faults;
  }
  const { makeMarkout, piecesAsked, sheetsAsked } = await import("../markout/node.ts");
  if (typeof part === "string" && piecesAsked(chair, part).length === 0)
    return misuse(
      bench,
      noSuchPart(
        part,
        piecesAsked(chair).flatMap((piece) => [piece.name, ...piece.parts.map(({ name }) => name)]),
      ),
    );
  if (options.format === "json") {
    const sheets: MarkoutOutput = sheetsAsked(chair, {
      ...(step === undefined ? {} : { step: steps[String(step)]! }),
      ...(typeof part === "string" ? { part } : {}),
    });
    return written(bench, `${JSON.stringify(sheets, null, 2)}\n`, options.out);
  }
  const format: MarkoutFormat = options.format === "svg" ? "svg" : "pdf";
  const progress = progressOn(bench);
  const made = await makeMarkout(
    chair,
    {
      // Makers who work in inches mostly have the other paper in their printers.
      paper: (options.paper as PaperName | undefined) ?? (chair.design.units === "in" ? "letter" : "a4"),
      ...(step === undefined ? {} : { step: steps[String(step)]! }),
      ...(typeof part === "string" ? { part } : {}),
      templates: options.templates === true,
      ...(typeof options.date === "string" && { day: options.date }),
      text: await versionOf(texts),
      format,
      date: new Date(),
      ...lettersOf(bench),
    },
    progress.told,
  );
  progress.end();
  if (made.pages === 0) {
    bench.terminal.error(`${harmless(file)}: nothing in it needs a template.\n`);
    return ENDED.well;
  }
  return writtenPages(bench, made, { format, out: options.out, stem: `${stemOf(file)}-markout` });
}

function noSuchPart(part: string, names: readonly string[]): string {
  const near = nearest(part, names);
  return `there is no part "${part}".${near ? ` Did you mean "${near}"?` : ""}`;
}

/** A line that counts the pages, on a terminal only. */
function progressOn({ terminal }: Bench): { told: (done: number, of: number) => void; end: () => void } {
  if (!terminal.colour.error) return { told: () => undefined, end: () => undefined };
  return {
    told: (done, of) => terminal.error(`\r  page ${done} of ${of}`),
    end: () => terminal.error("\r\u001b[K"),
  };
}
