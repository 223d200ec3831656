/**
 * Random chairs on a solid seat through everything that is made of a chair: their values are finite, their sides mirrored, they scale, they
 * tip as they roll. `npm run prove solid-seats` makes 500 of them: every law on each, and whether their seats hold what a grid of thicknesses
 * says and the commands end well or with findings. Drawings, strength and exports go round the chairs, one for each; findings with mends, boards,
 * sheets, comparisons and cutting each part from its sheet alone go round every ninth.
 */
import { appendFileSync, mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { expect, it } from "vitest";
import { exportKinds } from "../../../server/exports/kinds.ts";
import { studied } from "../../check.ts";
import { chairs, ranInTime } from "../../server/main/cli/bench.ts";
import { allowed, breaksOut, readSheets, straysOf } from "../sheets/proof.ts";
import { notFinite, notLong, notMirrored, notRolling, notScaled, notSeat } from "./laws.ts";
import { solidSeats } from "./random.ts";

const RUNS = Number(process.env.SEATWRIGHT_RUNS ?? 3);
const SKIPPED = Number(process.env.SEATWRIGHT_FROM ?? 0);
const WHOLE = process.env.SEATWRIGHT_PROVE === "solid-seats";
const [PART = 1, OF = 1] = (process.env.SEATWRIGHT_SHARE ?? "1/1").split("/").map(Number);
/**
 * What takes five to thirty seconds of a chair with many findings goes round every ninth chair, so that the whole takes some ten minutes on two
 * quiet cores: findings with their mends, boards, sheets, comparisons, and each part cut from its sheet. Odd, so that both shares have it.
 */
const SLOW = 9;
const SLOW_KINDS = 5;
/** Ranges and reaching a figure build the chair hundreds of times: every so many chairs. */
const EVERY = 251;

const texts = new Map(
  fc
    .sample(solidSeats, { numRuns: RUNS + SKIPPED, seed: 20261128 })
    .map((text, k) => [k, text] as const)
    .slice(SKIPPED)
    .filter(([k]) => k % OF === PART - 1),
);
const path = chairs(Object.fromEntries([...texts].map(([k, text]) => [`seat-${k}.chair`, text(1)])));

/** Which of the slow ones a chair goes through, from 0 on; none of most. The last is cutting its parts from their sheets. */
const slowTurn = (k: number): number | undefined => (k % SLOW === 0 ? (k / SLOW) % SLOW_KINDS : undefined);

/** A command line, and what its output must not say. */
async function wrongIn(k: number): Promise<string[]> {
  const [file, other] = [k, texts.has(k + OF) ? k + OF : SKIPPED + PART - 1].map((n) =>
    path(`seat-${n}.chair`),
  ) as [string, string];
  const out = path(`out-${k}`);
  mkdirSync(out, { recursive: true });
  // Drawings, strength and exports take a second or two: one for a chair.
  const each = [
    ["draw", file],
    ["draw", file, "--from", "front-left", "--apart", "--joints"],
    ["strength", file, "--format", "json"],
    ...exportKinds.map(({ kind, ending, each }) => [
      "export",
      file,
      "--as",
      kind,
      "--anyway",
      "-o",
      each ? join(out, kind) : join(out, `chair.${ending}`),
    ]),
  ];
  const slow = [
    ["check", file, "--format", "json"],
    ["boards", file, "--format", "json"],
    ["markout", file, "-o", join(out, "sheets.pdf")],
    ["compare", file, other, "--format", "json"],
  ];
  const turn = slowTurn(k);
  const lines = [
    ["reckon", file, "--format", "json"],
    ["stand", file, "--format", "json"],
    ["fit", file, "--format", "json"],
    ["assemble", file, "--format", "json"],
    ["format", "--check", file],
    each[k % each.length]!,
    ...slow.filter((_, n) => n === turn),
    ...(k % EVERY === 0
      ? [
          ["range", file, "--value", "seat.up", "--format", "json"],
          ["reach", file, "seat.height=415mm", "--format", "json"],
        ]
      : []),
  ];
  const wrong: string[] = [];
  for (const line of lines) {
    const ran = await ranInTime(...line);
    const name = line.filter((word) => !word.startsWith("/")).join(" ");
    if (ran.code !== 0 && ran.code !== 1)
      wrong.push(`${name} ends with ${ran.code}: ${ran.error.slice(0, 400)}`);
    if (/NaN|Infinity|undefined|internal-error/.test(ran.out))
      wrong.push(`${name} says ${/.{60}(NaN|Infinity|undefined|internal-error).{60}/s.exec(ran.out)?.[0]}`);
  }
  return wrong;
}

it.skipIf(WHOLE)(
  `${RUNS} random chairs on a solid seat are finite, mirrored, scale and tip as they roll`,
  () => {
    const wrong = [...texts].flatMap(([k, text]) => {
      const { chair, failures } = studied(text(1));
      return [
        ...failures.map(({ what }) => `${what} failed`),
        ...notFinite(chair),
        ...notMirrored(chair),
        ...notScaled(chair, studied(text(2)).chair),
        ...notRolling(chair),
        ...notLong(chair),
      ].map((each) => `chair ${k}: ${each}`);
    });
    expect(wrong).toEqual([]);
  },
);

it.runIf(WHOLE)(`${RUNS} random chairs on a solid seat hold every law`, { timeout: 36_000_000 }, async () => {
  const wrong: string[] = [];
  let cut = 0;
  for (const [k, text] of texts) {
    const { chair, problems, failures } = studied(text(1));
    const twice = studied(text(2)).chair;
    const sheets = slowTurn(k) === SLOW_KINDS - 1 && !breaksOut(chair) ? readSheets(chair) : undefined;
    const strays = sheets ? straysOf(chair, sheets) : [];
    cut += strays.length;
    const found = [
      ...failures.map(
        ({ what, thrown }) => `${what} failed: ${String((thrown as Error).stack ?? thrown).slice(0, 300)}`,
      ),
      ...problems
        .filter(({ code }) => code === "cannot-be-built" || code === "internal-error")
        .map(({ message }) => message),
      ...notFinite(chair),
      ...notMirrored(chair),
      ...notScaled(chair, twice),
      ...notRolling(chair),
      ...notSeat(chair),
      ...notLong(chair),
      ...strays
        .filter(({ proud, missing }) => sheets && Math.max(proud, missing) > allowed(sheets))
        .map(({ part, proud, missing }) => `${part} is cut ${proud} proud, ${missing} missing`),
      ...(await wrongIn(k)),
    ].map((each) => `chair ${k}: ${each}`);
    wrong.push(...found);
    mkdirSync(".cache/solid-seats", { recursive: true });
    if (found.length > 0) writeFileSync(`.cache/solid-seats/${k}.chair`, text(1));
    appendFileSync(
      ".cache/solid-seats/found.txt",
      found.length > 0 ? `${found.join("\n")}\n` : `chair ${k} holds\n`,
    );
  }
  expect(wrong).toEqual([]);
  if (RUNS >= 100) expect(cut).toBeGreaterThan(0);
});
