/**
 * A checker for the mutation tester that lets a seeded sample of the mutants pass: a whole room has thousands, and some hundreds tell as
 * much. Those left out count neither as killed nor as survivors.
 */
import { createHash } from "node:crypto";
import { declareClassPlugin, PluginKind } from "@stryker-mutator/api/plugin";

const count = Number(process.env.SEATWRIGHT_MUTANTS ?? 300);
const seed = process.env.SEATWRIGHT_SEED ?? "1";

/** @typedef {import("@stryker-mutator/api/core").Mutant} Mutant */

class Sample {
  async init() {}

  /** @param {Mutant[]} mutants all of a room's; the sample stays the same while the files do @returns {Promise<string[][]>} */
  async group(mutants) {
    const drawn = [...mutants].sort((a, b) => (rank(a) < rank(b) ? -1 : 1)).slice(0, count);
    this.drawn = new Set(drawn.map(({ id }) => id));
    return mutants.map(({ id }) => [id]);
  }

  /** @param {Mutant[]} mutants @returns {Promise<Record<string, import("@stryker-mutator/api/check").CheckResult>>} */
  async check(mutants) {
    const { CheckStatus } = await import("@stryker-mutator/api/check");
    return Object.fromEntries(
      mutants.map(({ id }) => [
        id,
        this.drawn?.has(id)
          ? { status: CheckStatus.Passed }
          : { status: CheckStatus.CompileError, reason: "not in the sample" },
      ]),
    );
  }
}

function rank(/** @type {Mutant} */ { fileName, location, mutatorName, replacement }) {
  const { start, end } = location;
  const file = fileName.replace(/^.*?(grammar|server)[\\/]/, "$1/");
  const what = [seed, file, start.line, start.column, end.line, end.column, mutatorName, replacement];
  return createHash("sha256").update(what.join(" ")).digest("hex");
}

export const strykerPlugins = [declareClassPlugin(PluginKind.Checker, "sample", Sample)];
