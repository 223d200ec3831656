import { nearest } from "../../../grammar/nearest.ts";
import { type ExportKind, exportKinds, kindNamed } from "../../exports/kinds.ts";
import type { Exported } from "../../exports/make.ts";
import type { Study } from "../../study.ts";
import { STAMP, whyNotExported } from "../export/refusal.ts";
import { version } from "../version.ts";
import { type Bench, type Command, ENDED, misuse, type Options, studyOf } from "./command.ts";
import { outOption } from "./options.ts";
import { readInput } from "./read-input.ts";
import { brush, harmless } from "./terminal.ts";
import { stemOf, storedFiles } from "./writing.ts";

const names = exportKinds.map(({ kind }) => kind);

export const exportCommand: Command = {
  name: "export",
  usage: `export FILE --as ${names.join("|")} [--part NAME] [--anyway] [-o FILE]`,
  summary: "write every part as a closed solid, or the templates at full size, for other programs",
  options: {
    as: { type: "string", values: names.join("|"), does: "the format to write" },
    part: { type: "string", values: "NAME", does: "only this part" },
    anyway: { type: "boolean", does: "write it although the text has errors" },
    out: outOption,
  },
  takes: { least: 1, most: 1 },
  async run(bench, [file], options) {
    const kind = kindNamed(options.as);
    if (!kind) {
      const known = names.map((name) => `"${name}"`).join(", ");
      return misuse(
        bench,
        options.as === undefined
          ? `"export" needs "--as": ${known}.`
          : `"--as ${options.as}" is not known; there are ${known}.`,
      );
    }
    const input = readInput(file!);
    if (!("text" in input)) {
      const paint = brush(bench.terminal.colour.error);
      bench.terminal.error(`${paint("bold", harmless(input.file))}: ${input.refused}.\n`);
      return ENDED.misuse;
    }
    return write(bench, studyOf(bench, input), file!, kind, options);
  },
};

async function write(
  bench: Bench,
  { chair, problems }: Study,
  file: string,
  kind: ExportKind,
  options: Options,
): Promise<number> {
  const part = typeof options.part === "string" ? options.part : undefined;
  const errors = problems.filter(({ severity }) => severity === "error").length;
  const because = whyNotExported(chair, options.anyway ? 0 : errors);
  if (because) {
    const offer = errors > 0 && !options.anyway ? ` "--anyway" exports it as far as it can be built.` : "";
    bench.terminal.error(`${harmless(file)}: ${because}; "seatwright check" tells.${offer}\n`);
    return ENDED.faults;
  }
  const known = [...chair.members.keys()];
  if (part !== undefined && !known.some((name) => name === part || name.startsWith(`${part}.`))) {
    const near = nearest(part, known);
    return misuse(bench, `there is no part "${part}".${near ? ` Did you mean "${near}"?` : ""}`);
  }
  const { exportChair } = await import("../export/node.ts");
  const progress = progressOn(bench);
  const made = await exportChair(
    chair,
    { kind, version, stamp: STAMP, ...(part === undefined ? {} : { part }) },
    progress.told,
  );
  progress.end();
  if (made.leftOut.length > 0)
    bench.terminal.error(
      `${harmless(file)}: left out, as no sound solid comes of ${made.leftOut.length === 1 ? "it" : "them"}: ${made.leftOut.join(", ")}.\n`,
    );
  if (made.files.length === 0) {
    const nothing = kind.kind === "dxf" ? "nothing in it is cut to a shape" : "there was nothing to write";
    bench.terminal.error(`${harmless(file)}: ${nothing}.\n`);
    return ENDED.faults;
  }
  const out = typeof options.out === "string" ? options.out : undefined;
  const ended = put(bench, made, kind, out, file, part);
  return ended === ENDED.well && errors > 0 ? ENDED.faults : ended;
}

/** One file, or a folder of one for each part. */
function put(
  bench: Bench,
  { files, parts }: Exported,
  kind: ExportKind,
  out: string | undefined,
  file: string,
  part: string | undefined,
): number {
  const chair = stemOf(file);
  const stem = part === undefined ? chair : `${chair}-${part}`;
  const folder = files.length > 1 || (kind.each === true && part === undefined);
  const target = out ?? (folder ? `${stem}-${kind.ending}` : `${stem}.${kind.ending}`);
  const ending = storedFiles(bench, target, files, folder);
  if (ending !== ENDED.well) return ending;
  const what =
    kind.kind === "dxf"
      ? "templates and outlines at full size"
      : `${parts} ${parts === 1 ? "part" : "parts"}`;
  bench.terminal.out(`${harmless(target)}: ${what}, in ${kind.kind === "gltf" ? "metres" : "mm"}.\n`);
  return ENDED.well;
}

/** A line that counts the parts, on a terminal only. */
function progressOn({ terminal }: Bench): { told: (done: number, of: number) => void; end: () => void } {
  if (!terminal.colour.error) return { told: () => undefined, end: () => undefined };
  return {
    told: (done, of) => terminal.error(`\r  part ${done} of ${of}`),
    end: () => terminal.error("\r\u001b[K"),
  };
}
