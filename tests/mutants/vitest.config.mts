/**
 * The tests of one room, for mutants: which ones, `.build/mutants.mjs` says.
 */
import { mergeConfig } from "vitest/config";
import usual from "../vitest.config.mts";

const { SEATWRIGHT_MUTANT_TESTS: tests = "" } = process.env;

const config = mergeConfig(usual, { test: { isolate: true } });
config.test.include = tests.split("|").map((path) => (path.endsWith(".ts") ? path : `${path}/*.test.ts`));

export default config;
