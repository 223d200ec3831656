import { nearest } from "../../../grammar/nearest.ts";
import { goesBy, type Rule } from "../../rules/machinery/rule.ts";
import { type Command, ENDED, misuse } from "./command.ts";
import { brush, columns, wrapped } from "./terminal.ts";

export const explain: Command = {
  name: "explain",
  usage: "explain [RULE]",
  summary: "tell why a rule is there, where its figure comes from and what to do; without a rule, list them",
  options: {},
  takes: { least: 0, most: 1 },
  run(bench, [code]) {
    const { terminal, services, exampleOf } = bench;
    const paint = brush(terminal.colour.out);
    if (code === undefined) {
      terminal.out(`${columns(services.rules.map((rule) => [rule.code, rule.severity, rule.title]))}\n`);
      return ENDED.well;
    }
    const rule = services.rules.find((row) => goesBy(row, code));
    if (!rule) {
      const near = nearest(
        code,
        services.rules.map((row) => row.code),
      );
      return misuse(
        bench,
        `there is no rule "${code}".${near ? ` Did you mean "${near}"?` : ' "seatwright explain" lists them.'}`,
      );
    }
    if (rule.code !== code) terminal.out(`${code} is called ${rule.code} today.\n\n`);
    terminal.out(
      `${paint("bold", rule.code)}: ${rule.title} (${rule.severity})\n\n${explanationOf(rule, exampleOf(rule.code))}\n`,
    );
    return ENDED.well;
  },
};

function explanationOf(rule: Rule, breaking: string | undefined): string {
  const told = `${wrapped(rule.explanation)}\n\nSource: ${wrapped(rule.source)}`;
  if (breaking === undefined) return told;
  const example = breaking
    .trimEnd()
    .split("\n")
    .map((line) => `    ${line}`.trimEnd())
    .join("\n");
  return `${told}\n\nAn example that breaks it:\n\n${example}`;
}
