import { describe, expect, it } from "vitest";
import { commands } from "../../../../server/main/cli/run.ts";
import { seatwright } from "./bench.ts";

describe("help", () => {
  const pages = [["--help"], ...commands.map(({ name }) => [name, "--help"])];
  it.each(pages)("has lines of 100 columns at most: %s %s", (...args) => {
    const { out, code } = seatwright(...args);
    expect(code).toBe(0);
    expect(out.split("\n").filter((line) => line.length > 100)).toEqual([]);
  });

  it.each(commands.map((command) => [command.name, command] as const))(
    "describes each option of %s",
    (name, command) => {
      const { out } = seatwright(name, "--help");
      const flat = out.replace(/\s+/g, " ");
      for (const [option, { does }] of Object.entries(command.options)) {
        expect(does.length, option).toBeGreaterThan(10);
        expect(flat).toContain(`--${option}`);
        expect(flat).toContain(does);
      }
    },
  );

  it("names every command on the first page", () => {
    const { out } = seatwright("--help");
    for (const { name, summary } of commands) {
      expect(out).toContain(`seatwright ${name}`);
      expect(out.replace(/\s+/g, " ")).toContain(summary);
    }
  });
});
