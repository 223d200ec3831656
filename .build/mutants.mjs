/**
 * `npm run mutants -- ROOM…`: breaks the code in some hundreds of small ways, one at a time, and tells which of them no test notices.
 *
 *     npm run mutants -- floor rules          300 mutants of each; a run goes on from what the last one found
 *     SEATWRIGHT_MUTANTS=40 SEATWRIGHT_SEED=2 npm run mutants -- sitter
 */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { availableParallelism } from "node:os";
import { join } from "node:path";
import { Stryker } from "@stryker-mutator/core";
import { root } from "./places.mjs";

/** What is mutated in each room, and the tests that speak of it. @type {Record<string, { code: string[], tests: string[] }>} */
export const rooms = {
  grammar: { code: ["grammar/**/*.ts"], tests: ["tests/grammar/**"] },
  design: {
    code: ["server/design/**/*.ts"],
    tests: ["tests/server/design/**", "tests/server/settle.test.ts"],
  },
  chair: {
    code: ["server/chair/**/*.ts"],
    tests: ["tests/server/chair/**", "tests/outside/solids/**", "tests/server/settle.test.ts"],
  },
  joinery: {
    code: ["server/joinery/**/*.ts"],
    tests: ["tests/server/joinery/**", "tests/outside/joinery/**"],
  },
  floor: {
    code: ["server/floor/**/*.ts"],
    tests: ["tests/outside/floor/**", "tests/server/floor/**", "tests/server/rules/tipping.test.ts"],
  },
  sitter: {
    code: ["server/sitter/**/*.ts"],
    tests: [
      "tests/server/sitter/**",
      "tests/outside/sitter/**",
      "tests/server/rules/{comfort,seats}.test.ts",
    ],
  },
  rules: {
    code: ["server/rules/**/*.ts", "server/settle.ts"],
    tests: ["tests/server/rules/**", "tests/outside/rules/**", "tests/server/settle.test.ts"],
  },
};

const folder = join(root, ".cache", "mutants");
/** Mutants that change nothing anybody could see, each with why. */
const equivalents = join(root, "tests", "mutants", "equivalents.json");

/** Gives 0 when at least four in five of each room's mutants are killed, 2 for a room that is not known. */
export async function mutants(/** @type {string[]} */ args) {
  const asked = args.length > 0 ? args : Object.keys(rooms);
  const unknown = asked.find((room) => !(room in rooms));
  if (unknown !== undefined) {
    console.error(`There is no room "${unknown}"; there are ${Object.keys(rooms).join(", ")}.`);
    return 2;
  }
  mkdirSync(folder, { recursive: true });
  let worst = 1;
  for (const room of asked) worst = Math.min(worst, await breakRoom(room));
  return worst >= 0.8 ? 0 : 1;
}

async function breakRoom(/** @type {string} */ room) {
  const { code, tests } = rooms[room] ?? { code: [], tests: [] };
  process.env.SEATWRIGHT_MUTANT_TESTS = tests.join("|");
  const report = join(folder, `${room}.json`);
  const stryker = new Stryker({
    mutate: [...code, "!**/*.d.ts"],
    plugins: ["@stryker-mutator/vitest-runner", join(root, ".build", "mutant-sample.mjs")],
    checkers: ["sample"],
    // It would read the project's with a part of the compiler that this version no longer has; it is not needed.
    tsconfigFile: "none",
    testRunner: "vitest",
    vitest: { configFile: "tests/mutants/vitest.config.mts", related: false },
    // What is worked out once when a module is read is not told apart by test, and would run them all.
    ignoreStatic: true,
    incremental: true,
    incrementalFile: join(folder, `${room}.incremental.json`),
    ignorePatterns: ["/dist", "/.cache", "/client/pictures"],
    tempDirName: join(".cache", "mutants", "sandbox"),
    concurrency: Math.max(1, Math.min(2, availableParallelism())),
    timeoutMS: 60_000,
    dryRunTimeoutMinutes: 30,
    reporters: ["json", "progress-append-only"],
    jsonReporter: { fileName: report },
    disableTypeChecks: false,
    allowConsoleColors: false,
    logLevel: "warn",
    cleanTempDir: "always",
  });
  await stryker.runMutationTest();
  return told(room, JSON.parse(readFileSync(report, "utf8")));
}

/** @typedef {{ status: string, mutatorName: string, replacement?: string, location: { start: { line: number, column: number }, end: { line: number, column: number } } }} Result */

/** Writes what survived to a page and prints the score; gives the share killed. */
function told(
  /** @type {string} */ room,
  /** @type {{ files: Record<string, { source: string, mutants: Result[] }> }} */ { files },
) {
  const known = existsSync(equivalents) ? JSON.parse(readFileSync(equivalents, "utf8")) : [];
  let killed = 0;
  let equivalent = 0;
  /** @type {string[]} */
  const survivors = [];
  for (const [file, { source, mutants: all }] of Object.entries(files)) {
    const lines = source.split("\n");
    for (const { status, location, replacement = "" } of all) {
      if (status === "Killed" || status === "Timeout" || status === "RuntimeError") killed++;
      if (status !== "Survived" && status !== "NoCoverage") continue;
      const was = textAt(lines, location);
      const same = (/** @type {{ file: string, was: string, becomes: string }} */ each) =>
        each.file === file && each.was === was && each.becomes === replacement;
      if (known.some(same)) equivalent++;
      else
        survivors.push(
          `${file}:${location.start.line}: \`${short(was)}\` → \`${short(replacement)}\`${status === "NoCoverage" ? " (no test comes here)" : ""}`,
        );
    }
  }
  const all = killed + survivors.length;
  const share = all === 0 ? 1 : killed / all;
  const head = `${room}: ${killed} of ${all} mutants killed, ${(share * 100).toFixed(1)} %; ${equivalent} known to be equivalent`;
  writeFileSync(
    join(folder, `${room}.md`),
    `# ${head}\n\n${survivors.map((line) => `- ${line}\n`).join("")}`,
  );
  console.log(`${head}. What survived is in .cache/mutants/${room}.md.`);
  return share;
}

function textAt(/** @type {string[]} */ lines, /** @type {Result["location"]} */ { start, end }) {
  const part = lines.slice(start.line - 1, end.line);
  part[part.length - 1] = (part.at(-1) ?? "").slice(0, end.column - 1);
  part[0] = (part[0] ?? "").slice(start.column - 1);
  return part.join("\n");
}

const short = (/** @type {string} */ text) => {
  const line = text.replaceAll(/\s+/g, " ");
  return line.length > 90 ? `${line.slice(0, 87)}…` : line;
};
