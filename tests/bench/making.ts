/**
 * What is worked out beside the keystrokes: the boards, and files for other programs. Each case runs in a process of its own.
 */
import { readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { performance } from "node:perf_hooks";
import { parse } from "../../grammar/parser.ts";
import { finish } from "../../grammar/steps.ts";
import { vocabulary } from "../../grammar/vocabulary/index.ts";
import { planOf, stockList } from "../../server/boards/plan.ts";
import { exportKinds } from "../../server/exports/kinds.ts";
import { exportChair } from "../../server/exports/make.ts";
import { settle } from "../../server/settle.ts";
import { type Timing, timed } from "./measure.ts";

export type Making =
  | { is: "boards"; path: string; count: number }
  | { is: "exports"; path: string; count: number };

export interface BoardsResult {
  /** The stock list of a chair that is there. */
  stock: Timing;
  pieces: number;
  /** Each plan that was better than the one before: after how many ms, and how far over the bound, as shares. */
  plans: { after: number; over: number }[];
}

export interface ExportsResult {
  kinds: (Timing & { kind: string; bytes: number })[];
}

/** A chair of a file. */
export const settled = (path: string) =>
  settle({
    tree: parse(readFileSync(path, "utf8"), vocabulary),
    address: path,
    files: {
      resolve: (from: string, name: string) => join(dirname(from), name),
      read: (address: string) => readFileSync(address, "utf8"),
    },
  }).chair;

export async function boardsCase({ path, count }: Making & { is: "boards" }): Promise<BoardsResult> {
  const chair = settled(path);
  const stock = await timed(count, () => stockList(chair));
  const started = performance.now();
  const plans: BoardsResult["plans"] = [];
  finish(
    planOf(stockList(chair), chair.design.matches, ({ used, bound }) => {
      plans.push({ after: performance.now() - started, over: used / bound - 1 });
    }),
  );
  const pieces = stockList(chair).lines.reduce((sum, { number }) => sum + number, 0);
  return { stock, pieces, plans };
}

/** From a chair that has been studied but for whose parts no solids are made yet. */
export async function exportsCase({ path, count }: Making & { is: "exports" }): Promise<ExportsResult> {
  const kinds: ExportsResult["kinds"] = [];
  const stamp = new Date(1980, 0, 1).getTime();
  for (const kind of exportKinds) {
    const fresh = Array.from({ length: count + 1 }, () => settled(path));
    let bytes = 0;
    const timing = await timed(count, async (turn) => {
      const { files } = await exportChair(fresh[turn % fresh.length]!, { kind, version: "0.0.0", stamp });
      bytes = files.reduce((sum, file) => sum + file.bytes.length, 0);
    });
    kinds.push({ ...timing, kind: kind.kind, bytes });
  }
  return { kinds };
}
