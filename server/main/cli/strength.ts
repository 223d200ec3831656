import { basename } from "node:path";
import type { LengthUnit } from "../../design/design.ts";
import { inUnitsOf } from "../../design/prose-units.ts";
import { caution } from "../../floor/editions.ts";
import { type LevelName, levelNames } from "../../strength/cases.ts";
import loads from "../../strength/loads.json" with { type: "json" };
import { type CaseResult, type Ruling, type Strength, strengthSteps } from "../../strength/strength.ts";
import wood from "../../strength/wood.json" with { type: "json" };
import { type Command, ENDED, eachFile, misuse, studyOf, toldOfErrors, written } from "./command.ts";
import { formatOption, outOption } from "./options.ts";
import { finishWatched } from "./progress.ts";
import type { StrengthOutput } from "./schema-strength.ts";
import { type Brush, brush, columns, harmless, wrapped } from "./terminal.ts";

export const strength: Command = {
  name: "strength",
  usage: "strength FILE [--level domestic|public|severe] [--format text|json] [--model]",
  summary: "say how hard each joint and member works under the standards' loads",
  options: {
    level: {
      type: "string",
      values: "domestic|public|severe",
      does: "which use its loads are asked for; domestic unless given",
    },
    format: formatOption,
    model: { type: "boolean", does: "with json, add the frame as it was solved" },
    out: outOption,
  },
  takes: { least: 1, most: 1 },
  run(bench, files, { level = "domestic", format, model, out }) {
    if (!levelNames.some((name) => name === level))
      return misuse(bench, `"--level ${level}" is not known; there are ${levelNames.join(", ")}.`);
    if (model === true && format !== "json") return misuse(bench, "--model goes with --format json.");
    return eachFile(bench, files, (input) => {
      const { design, chair, problems } = studyOf(bench, input);
      const title = design.title?.value ?? basename(input.file);
      const found = finishWatched(strengthSteps(chair, level as LevelName), "cases solved");
      if (found.cases.length === 0) {
        bench.terminal.error(
          `${harmless(input.file)}: there is nothing to load: it takes a seat on rails and three feet or more.\n`,
        );
        return ENDED.faults;
      }
      const text =
        format === "json"
          ? `${JSON.stringify(outputOf(title, found, model === true), null, model === true ? 0 : 2)}\n`
          : report(title, found, design.units, brush(bench.terminal.colour.out && typeof out !== "string"));
      const ended = written(bench, text, out);
      return Math.max(ended, toldOfErrors(bench, input.file, problems, "parts may be missing"));
    });
  },
};

function report(title: string, found: Strength, unit: LengthUnit, paint: Brush): string {
  const { cases, joints, members, margin, unknown, level } = found;
  const middle = cases.filter(({ stiffness }) => stiffness === "middle");
  const lines = [
    paint("bold", harmless(title)),
    "",
    paint("bold", `Loaded as in ${loads.levels[level].edition}; load over what it bears`),
    columns(
      middle.map((one) => [one.load.title, ...outcome(one)]),
      "  ",
    ),
    "",
    paint("bold", "Joints"),
    table(joints),
    "",
    paint("bold", "Members"),
    table(members),
    "",
  ];
  if (margin !== undefined)
    lines.push(`The weakest bears ${margin.toFixed(2)} times what is asked of it.`, "");
  if (unknown.length > 0)
    lines.push(wrapped(`No strength is known for the timber of ${unknown.join(", ")}.`), "");
  const memory = middle.some(({ load }) => load.fromMemory);
  lines.push(
    wrapped(
      `The span is between joints taken limp and stiff: ${inUnitsOf(wood.joints.stiffnessSource, unit)}${memory ? " Some loads were not seen in print but are from memory: compare the edition in force." : ""}`,
    ),
    "",
    wrapped(`A standard's test is made by a competent laboratory. ${caution}`),
    "",
  );
  return lines.join("\n");
}

function outcome({ solution, joints, members, share }: CaseResult): string[] {
  if (solution.is === "tips") return ["it goes over before it is loaded"];
  if (solution.is === "loose") return ["a part is loose: nothing holds it"];
  const [name, demand] = [...joints, ...members].reduce(
    (a, b) => (b[1] > a[1] ? b : a),
    ["nothing known", 0],
  );
  const pushed = share < 1 ? `, at ${Math.round(share * 100)}% of the push: more would tip it over` : "";
  return [demand.toFixed(2), `${name}${pushed}`];
}

function table(rulings: readonly Ruling[]): string {
  const shown = rulings.slice(0, 12);
  const rows = shown.map(({ name, demand, low, high, ruledBy }) => [
    name,
    demand.toFixed(2),
    `${low.toFixed(2)} to ${high.toFixed(2)}`,
    ruledBy,
    low < 1 && high >= 1 ? "overworked or not, by the joints' stiffness" : demand >= 1 ? "overworked" : "",
  ]);
  const more = rulings.length - shown.length;
  return `${rows.length > 0 ? columns(rows, "  ") : "  Nothing could be judged."}${more > 0 ? `\n  and ${more} that work less` : ""}`;
}

const six = (value: number) => Number(value.toPrecision(12));

function outputOf(
  title: string,
  { level, cases, joints, members, margin, unknown }: Strength,
  model: boolean,
): StrengthOutput {
  const [first] = cases;
  const ruling = ({ name, demand, low, high, ruledBy }: Ruling) => ({ name, demand, low, high, ruledBy });
  return {
    chair: title,
    level,
    edition: loads.levels[level].edition,
    margin: margin ?? null,
    unknownTimber: unknown,
    rulings: { joints: joints.map(ruling), members: members.map(ruling) },
    cases: cases.map((one) => ({
      name: one.load.name,
      stiffness: one.stiffness,
      state: one.solution.is,
      pushed: one.share,
      fromMemory: one.load.fromMemory,
      joints: [...one.joints].map(([name, demand]) => ({ name, demand })),
      members: [...one.members].map(([part, demand]) => ({ part, demand })),
      ...(model && solvedOf(one)),
    })),
    ...(model && first && { model: modelOf(first) }),
    caution,
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
    supports: load.supports.map(({ node, held }, at) => ({
      node: id(node),
      held: [...held],
      state: solution.reactions[at]?.state ?? "held",
    })),
    displacements: solution.displacements.map((v, node) => ({ node: id(node), v })),
    reactions: solution.reactions.map(({ node, v }) => ({ node: id(node), v })),
    ends: solution.ends.map(({ from, to }, at) => ({ member: frame.beams[at]?.id ?? "", from, to })),
  };
}
