/**
 * Which chairs are cut: a few by a fixed seed in `npm test`, all of them in `npm run prove sheets`, or a share of all.
 */
import fc from "fast-check";
import { sampleNames } from "../samples.ts";
import { chairs } from "./random.ts";

/** Whether every part of every sample is cut. */
export const whole = process.env.SEATWRIGHT_PROVE === "sheets";
const runs = whole ? Number(process.env.SEATWRIGHT_RUNS) : 4;
const [part = 1, of = 1] = (process.env.SEATWRIGHT_SHARE ?? "1/1").split("/").map(Number);
const ours = <T>(all: readonly T[]): T[] => all.filter((_, k) => k % of === part - 1);

/** The samples of this share. */
export const samplesOfShare: string[] = ours(sampleNames);

/** Of the chairs drawn at random so many can be marked out and are cut; some in three are refused, so that more are drawn. */
const DRAWN = 2;

/** Chairs drawn at random for it, of which the first so many that sheets are made of are cut. */
export const randomTexts = (): string[] => ours(fc.sample(chairs, { numRuns: DRAWN * runs, seed: 20260731 }));
export const toCut: number = ours(Array.from({ length: runs })).length;
