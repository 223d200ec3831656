import { basename } from "node:path";
import type { LengthUnit } from "../../design/design.ts";
import { caution } from "../../floor/editions.ts";
import type { CaseResult } from "../../strength/case-result.ts";
import { type LevelName, levelNames } from "../../strength/cases.ts";
import { endingOf } from "../../strength/ending.ts";
import loads from "../../strength/loads.json" with { type: "json" };
import { type Ruling, type Strength, strengthSteps } from "../../strength/strength.ts";
import { type WoodMoves, woodMoves } from "../../timber/movement.ts";
import { type Command, ENDED, eachFile, misuse, studyOf, toldOfErrors } from "./command.ts";
import { formatOption, outOption } from "./options.ts";
import { finishWatched } from "./progress.ts";
import type { StrengthOutput } from "./schema-strength.ts";
import { report } from "./strength-report.ts";
import { brush, harmless } from "./terminal.ts";
import { written } from "./writing.ts";

export const strength: Command = {
  name: "strength",
  usage: "strength FILE [--level domestic|public|severe] [--format text|json] [--model]",
  summary: "say how hard each joint and member works under the standards' loads",
  options: {
    level: {
      type: "string",
      values: "domestic|public|severe",
      does: "for which use loads are asked, whatever the file's `strength` says",
    },
    format: formatOption,
    model: { type: "boolean", does: "with json, add the frame as it was solved" },
    out: outOption,
  },
  takes: { least: 1, most: 1 },
  run(bench, files, { level, format, model, out }) {
    if (level !== undefined && !levelNames.some((name) => name === level))
      return misuse(bench, `"--level ${level}" is not known; there are ${levelNames.join(", ")}.`);
    if (model === true && format !== "json") return misuse(bench, "--model goes with --format json.");
    return eachFile(bench, files, (input) => {
      const { design, chair, problems } = studyOf(bench, input);
      const { units } = design;
      const title = design.title?.value ?? basename(input.file);
      const found = finishWatched(strengthSteps(chair, level as LevelName | undefined), "cases solved");
      const moves = woodMoves(chair);
      if (found.cases.length === 0) {
        bench.terminal.error(
          `${harmless(input.file)}: there is nothing to load: it takes three feet or more, and a seat or a load of its own.\n`,
        );
        return ENDED.faults;
      }
      const text =
        format === "json"
          ? `${JSON.stringify(outputOf({ title, units }, { found, moves }, model === true), null, model === true ? 0 : 2)}\n`
          : report(
              title,
              { found, moves },
              units,
              brush(bench.terminal.colour.out && typeof out !== "string"),
            );
      const ended = written(bench, text, out);
      return Math.max(ended, toldOfErrors(bench, input.file, problems, "parts may be missing"));
    });
  },
};

const six = (value: number) => Number(value.toPrecision(12));

function outputOf(
  { title, units }: { title: string; units: LengthUnit },
  { found, moves }: { found: Strength; moves: WoodMoves },
  model: boolean,
): StrengthOutput {
  const { level, cases, joints, members, margin, lasting, unknown } = found;
  const [first] = cases;
  const ruling = ({ name, demand, low, high, ruledBy }: Ruling) => ({ name, demand, low, high, ruledBy });
  return {
    chair: title,
    level,
    edition: loads.levels[level].edition,
    margin: margin ?? null,
    lasting: lasting ?? null,
    unknownTimber: unknown,
    rulings: { joints: joints.map(ruling), members: members.map(ruling) },
    cases: cases.map((one) => ({
      name: one.load.name,
      stiffness: one.stiffness,
      state: one.solution.is,
      ...whyOf(one, units),
      pushed: one.share,
      fromMemory: one.load.fromMemory,
      joints: [...one.joints].map(([name, demand]) => ({ name, demand })),
      members: [...one.members].map(([part, demand]) => ({ part, demand })),
      ...(model && solvedOf(one)),
    })),
    moisture: moistureOf(moves),
    ...(model && first && { model: modelOf(first) }),
    caution,
  };
}

function whyOf(one: CaseResult, units: LengthUnit): { why?: string } {
  const why = endingOf(one, units);
  return why === undefined ? {} : { why };
}

function moistureOf({ climate, parts, joints, panel }: WoodMoves): StrengthOutput["moisture"] {
  const { given, dry, damp, assumed } = climate;
  return {
    climate: { of: given.of, low: given.low, high: given.high, assumed },
    wood: { dry, damp },
    parts: parts.map(({ part, width, sawn, made, toDry, toDamp }) => ({
      part,
      width,
      sawn,
      made,
      toDry,
      toDamp,
    })),
    joints: joints.map(({ joint, wide, across, shoulderGap, tightness }) => ({
      name: joint.name,
      wide,
      across,
      shoulderGap,
      tightness,
    })),
    ...(panel && { panel }),
  };
}

function modelOf({ frame }: CaseResult): NonNullable<StrengthOutput["model"]> {
  const id = (node: number) => frame.nodes[node]?.id ?? "";
  return {
    nodes: frame.nodes.map((node) => ({ id: node.id, at: [...node.at] })),
    members: frame.beams.map(({ id: name, part, from, to, yAxis, ...figures }) => ({
      id: name,
      part,
      from: id(from),
      to: id(to),
      yAxis: [...yAxis],
      ...figures,
    })),
    springs: frame.springs.map(({ id: name, joint, from, to, axes }) => ({
      id: name,
      joint,
      from: id(from),
      to: id(to),
      axes: axes.map((axis) => [...axis]),
    })),
  };
}

function solvedOf({ frame, load, solution, share }: CaseResult): Partial<StrengthOutput["cases"][number]> {
  const id = (node: number) => frame.nodes[node]?.id ?? "";
  const k = Object.fromEntries(frame.springs.map((spring) => [spring.id, [...spring.k]]));
  const sums = new Map<number, number[]>();
  for (const { node, v } of load.loads) {
    const [x = 0, y = 0, ...rest] = v;
    const now = [share * x, share * y, ...rest];
    sums.set(
      node,
      (sums.get(node) ?? [0, 0, 0, 0, 0, 0]).map((value, way) => value + (now[way] ?? 0)),
    );
  }
  const loadsOf = [...sums].map(([node, v]) => ({ node: id(node), v: v.map(six) }));
  if (solution.is !== "solved") return { k, loads: loadsOf };
  return {
    k,
    loads: loadsOf,
    supports: load.supports.map(({ node, held, friction }, at) => {
      const state = solution.reactions[at]?.state ?? "held";
      return {
        node: id(node),
        held: held.map((each, way) => each && state !== "lifted" && (state !== "slides" || way > 1)),
        ...(friction !== undefined && { friction }),
        state,
      };
    }),
    displacements: solution.displacements.map((v, node) => ({ node: id(node), v })),
    reactions: solution.reactions.map(({ node, v }) => ({ node: id(node), v })),
    ends: solution.ends.map(({ from, to }, at) => ({ member: frame.beams[at]?.id ?? "", from, to })),
  };
}
