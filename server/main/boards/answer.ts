/**
 * The boards for one request, wherever the worker runs.
 */
import type { Plan } from "../../boards/plan.ts";
import { PASSES, planOf, stockList } from "../../boards/plan.ts";
import { boardsShown } from "../../drawing/boards/shown.ts";
import { study } from "../../study.ts";
import { resolveNamed } from "../named-files.ts";
import type { BoardsReply, BoardsRequest } from "./messages.ts";

/** Rests between two looks whether something newer has been asked for, in turns of a plan. */
const TURNS = 6;

/**
 * Answers by `reply`: the stock list, then each better plan. Stops when `stale` says that something newer was asked; lets that be heard by
 * waiting for `breath` now and then.
 */
export async function answer(
  request: BoardsRequest,
  reply: (message: BoardsReply) => void,
  { stale, breath }: { stale: () => boolean; breath: () => Promise<void> },
): Promise<void> {
  const missing = new Set<string>();
  const read = (address: string): string | undefined => {
    const text = request.files[address];
    if (text === undefined) missing.add(address);
    return text ?? undefined;
  };
  const { text, address, version } = request;
  const { chair, design } = study({ text, address, files: { resolve: resolveNamed, read } });
  if (missing.size > 0) return reply({ is: "missing", addresses: [...missing] });
  const stock = stockList(chair);
  const { units } = design;
  const tell = (plan: Plan | undefined, pass: number, done: boolean) =>
    reply({ is: "boards", version, shown: boardsShown(stock, plan, units), pass, of: PASSES, done });
  tell(undefined, 0, stock.lines.length === 0);
  if (stock.lines.length === 0) return;
  let better: Plan | undefined;
  let pass = 0;
  const steps = planOf(stock, design.matches, (plan, at) => {
    better = plan;
    pass = at;
  });
  for (let turn = 1; ; turn++) {
    const step = steps.next();
    if (step.done) return tell(step.value, PASSES, true);
    if (better) {
      tell(better, pass, false);
      better = undefined;
    }
    if (turn % TURNS === 0) {
      await breath();
      if (stale()) return;
    }
  }
}
