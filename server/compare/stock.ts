/**
 * How the wood to get out differs between two chairs: the blank of each part, and what the boards are planned by.
 */
import type { Stock } from "../boards/plan.ts";
import { stockFor } from "../boards/questions.ts";
import { volumeOf } from "../boards/stock.ts";
import type { Chair } from "../chair/chair.ts";
import type { LengthUnit } from "../design/design.ts";
import { printLength, printTimber } from "../design/units.ts";
import { type Called, dotted } from "./spelled.ts";

export interface StockChange {
  /** In words, by full name, where a part that both chairs have needs a blank of another size. */
  blanks: Map<string, string>;
  /** What is stale of the stock list and the plan; empty where nothing is. */
  stale: string;
}

interface Blank {
  size: string;
  timber: string | undefined;
}

/** A change of all wood by less than this is not worth a word, mm³. */
const CRUMB = 500;

/** Compares the stock lists of two chairs; `called` gives the new names of renamed parts. */
export function stockBetween(old: Chair, now: Chair, called: Called): StockChange {
  const [before, after] = [stockFor(old), stockFor(now)];
  const unit = now.design.units;
  const [was, is] = [blanksOf(before, called, unit), blanksOf(after, (name) => name, unit)];
  const blanks: StockChange["blanks"] = new Map();
  let others = 0;
  for (const name of new Set([...was.keys(), ...is.keys()])) {
    const [a, b] = [was.get(name), is.get(name)];
    if (a?.size === b?.size && a?.timber === b?.timber) continue;
    others++;
    if (a && b && a.size !== b.size) blanks.set(name, `blank ${a.size} → ${b.size}`);
  }
  return { blanks, stale: staleWords(before, after, others, unit) };
}

/** The blank of each part as it is printed: thickness x width x length, with how many where a part is glued up of several. */
function blanksOf({ lines }: Stock, called: Called, unit: LengthUnit): Map<string, Blank> {
  const blanks = new Map<string, Blank>();
  for (const { members, blank, timber } of lines) {
    const size = [blank.thick, blank.wide, blank.long].map((mm) => printLength(mm, unit)).join(" x ");
    for (const name of new Set(members)) {
      const staves = members.filter((each) => each === name).length;
      const many = staves > 1 ? `${staves} of ` : "";
      blanks.set(dotted(name, called), { size: `${many}${size}`, timber: timber?.species });
    }
  }
  return blanks;
}

function staleWords(before: Stock, after: Stock, parts: number, unit: LengthUnit): string {
  const reasons: string[] = [];
  if (parts > 0) reasons.push(parts === 1 ? "1 part has another blank" : `${parts} parts have other blanks`);
  if (before.make !== after.make) reasons.push(`${before.make} → ${after.make} chairs`);
  if (JSON.stringify(before.allowances) !== JSON.stringify(after.allowances))
    reasons.push("other allowances");
  const named = ({ wood }: Stock) => JSON.stringify(wood.filter(({ from }) => from !== "usual"));
  if (named(before) !== named(after)) reasons.push("other boards");
  if (reasons.length === 0) return "";
  const volume = ({ lines }: Stock) => lines.reduce((sum, line) => sum + volumeOf(line), 0);
  const [was, is] = [volume(before), volume(after)];
  if (Math.abs(is - was) > CRUMB)
    reasons.push(`blanks ${printTimber(was, unit)} → ${printTimber(is, unit)} in all`);
  return `stock list and plan of boards stale: ${reasons.join(", ")}`;
}
