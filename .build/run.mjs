/**
 * The scripts of package.json. Each does its own set-up, so that it works on a machine with only Node and npm.
 *
 *     node .build/run.mjs start|test|test:desktop|prove|mutants|fuzz|build|package|bench|pictures|lint|format|check
 */
import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readFileSync, rmSync } from "node:fs";
import { join, resolve } from "node:path";
import { ensureDependencies } from "./dependencies.mjs";
import { root } from "./places.mjs";

const vitest = ["vitest", "--config", "tests/vitest.config.mts"];

/** @type {Record<string, (args: string[]) => number | Promise<number>>} */
const tasks = {
  start: async (args) => {
    await buildAll();
    const { start } = await import("./start.mjs");
    await start(args);
    return 0;
  },
  test: testAll,
  "test:desktop": async (args) => {
    const { ensureCodeServer } = await import("./desktop/code-server.mjs");
    const { makePackage } = await import("./package.mjs");
    ensureCodeServer();
    mkdirSync(join(root, ".cache"), { recursive: true });
    await makePackage(join(root, ".cache", "desktop.vsix"));
    return tool(["vitest", "run", "--config", "tests/desktop/vitest.config.mts", ...args]);
  },
  fuzz: async (args) => {
    const { fuzz } = await import("./fuzz.mjs");
    return fuzz(args);
  },
  build: async () => {
    await buildAll();
    return 0;
  },
  package: async () => {
    const { makePackages } = await import("./package.mjs");
    return makePackages();
  },
  bench: async (args) => {
    await buildAll();
    const { bundleTypescript, runTypescript } = await import("./run-typescript.mjs");
    const at = args.indexOf("--against");
    if (at >= 0) {
      const folder = resolve(args[at + 1] ?? "");
      if (!existsSync(join(folder, ".build", "run.mjs"))) {
        console.error("--against needs the folder of another checkout.");
        return 2;
      }
      // Each is built by its own build.
      if (run(process.execPath, [join(folder, ".build", "run.mjs"), "build"]) !== 0) return 1;
      const file = "tests/bench/main.ts";
      const builds = [folder, root].map(async (checkout) =>
        JSON.stringify({ folder: checkout, bench: await bundleTypescript(file, checkout) }),
      );
      const others = args.filter((_, k) => k !== at && k !== at + 1);
      return run(process.execPath, [
        "--enable-source-maps",
        join(root, ".cache", "run", "main.mjs"),
        "--against",
        ...(await Promise.all(builds)),
        ...others,
      ]);
    }
    return runTypescript("tests/bench/main.ts", args);
  },
  pictures: async ([which = "pictures"]) => {
    await buildAll();
    const { runTypescript } = await import("./run-typescript.mjs");
    return runTypescript(`tests/workbench/${which === "screens" ? "screens" : "pictures"}.ts`, []);
  },
  mutants: async (args) => {
    const { mutants } = await import("./mutants.mjs");
    return mutants(args);
  },
  prove: async (args) => {
    const { prove } = await import("./prove.mjs");
    return prove(args);
  },
  lint: () => tool(["biome", "check", "--error-on-warnings", "."]),
  format: () => tool(["biome", "check", "--write", "."]),
  check: () => tool(["tsc", "--noEmit", "-p", "."]),
};

const [name = "", ...args] = process.argv.slice(2);
const task = tasks[name];
if (!task) {
  console.error(`Name one of: ${Object.keys(tasks).join(", ")}`);
  process.exit(2);
}
ensureDependencies();
process.exitCode = await task(args);

async function buildAll() {
  const { buildBundles } = await import("./bundles.mjs");
  await buildBundles();
}

/** Style, types, build and tests; arguments narrow the tests. The last line counts them all, as a machine may read it. */
async function testAll(/** @type {string[]} */ args) {
  const report = join(root, ".cache", "tests.json");
  mkdirSync(join(root, ".cache"), { recursive: true });
  rmSync(report, { force: true });
  const steps = {
    style: () => tool(["biome", "check", "--error-on-warnings", "."]) === 0,
    types: () => tool(["tsc", "--noEmit", "-p", "."]) === 0,
    build: () =>
      buildAll().then(
        () => true,
        () => false,
      ),
  };
  let passed = 0;
  let failed = 0;
  for (const [step, right] of Object.entries(steps)) {
    console.log(`\n── ${step}`);
    if (await right()) passed++;
    else failed++;
  }
  console.log("\n── tests");
  const status = tool([
    ...vitest,
    "run",
    "--reporter=default",
    "--reporter=json",
    `--outputFile.json=${report}`,
    ...args,
  ]);
  const counts = countTests(report);
  passed += counts.passed;
  failed += counts.failed;
  if (status !== 0 && counts.failed === 0) failed++;
  console.log(`\n${passed} passed, ${failed} failed`);
  return failed === 0 ? 0 : 1;
}

/** A test file that could not be loaded has no tests of its own and counts as one that failed. */
function countTests(/** @type {string} */ report) {
  try {
    const { numPassedTests, numFailedTests, testResults } = JSON.parse(readFileSync(report, "utf8"));
    const unloaded = testResults.filter(
      (/** @type {{ status: string, assertionResults: unknown[] }} */ file) =>
        file.status === "failed" && file.assertionResults.length === 0,
    );
    return { passed: numPassedTests, failed: numFailedTests + unloaded.length };
  } catch {
    return { passed: 0, failed: 0 };
  }
}

function tool(/** @type {string[]} */ [command = "", ...args]) {
  const file = process.platform === "win32" ? `${command}.cmd` : command;
  return run(join(root, "node_modules", ".bin", file), args);
}

function run(/** @type {string} */ command, /** @type {string[]} */ args) {
  const shell = process.platform === "win32";
  return spawnSync(command, args, { cwd: root, stdio: "inherit", shell }).status ?? 1;
}
