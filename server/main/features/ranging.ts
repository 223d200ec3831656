/**
 * Requests of our own about how far a choice may go and which choice reaches a figure. Each study is worked out in turns; what is found
 * for one version of a text is kept with it and dropped when the text moves.
 */

import type { CancellationToken } from "vscode-languageserver";
import { editorSentence } from "../../../grammar/sentences/editor-sentence.ts";
import { printWorked } from "../../chair/values/print.ts";
import { asksLate } from "../../design/values.ts";
import type { View } from "../../editor/view.ts";
import { goalSteps } from "../../range/ask.ts";
import { type Range, rangeSteps } from "../../range/bands.ts";
import { choiceNamed } from "../../range/choice.ts";
import { reachSteps, type Way } from "../../range/reach.ts";
import { bandLabel, printFine, printPlace, rangeInWords } from "../../range/words.ts";
import type { Feature } from "../feature.ts";
import { finishInTurns } from "../in-turns.ts";
import {
  RANGE,
  type RangeParams,
  type RangeResult,
  REACH,
  type ReachParams,
  type ReachResult,
  VALUES,
  type ValuesParams,
  type ValuesResult,
} from "../protocol.ts";
import { type World, worked } from "../world.ts";

type Request = Pick<Feature, "name" | "method" | "empty" | "answer">;

export const rangingRequests: Request[] = [
  {
    name: "range",
    method: RANGE,
    empty: null,
    async answer(world, { uri, name }: RangeParams, token): Promise<RangeResult | null> {
      const view = opened(world, uri);
      if (!view || typeof name !== "string") return null;
      const stop = stopsWith(world, view, token);
      await worked(view, stop);
      const range = stop() ? undefined : await rangeIn(world, view, name, stop);
      return range ? resultOf(view, range) : null;
    },
  },
  {
    name: "values",
    method: VALUES,
    empty: [],
    async answer(world, { uri }: ValuesParams, token): Promise<ValuesResult> {
      const view = opened(world, uri);
      if (!view) return [];
      await worked(view, () => token.isCancellationRequested);
      const stop = () => token.isCancellationRequested;
      await finishInTurns(view.deepen(await world.services.late()), stop);
      if (stop()) return [];
      const { chair, design } = view.study;
      return [...chair.values.values()]
        .filter(({ number }) => Number.isFinite(number))
        .map((each) => ({
          name: each.name,
          printed: printWorked(each, design.units),
          meaning: each.meaning,
        }));
    },
  },
  {
    name: "reach",
    method: REACH,
    empty: null,
    async answer(world, { uri, asked }: ReachParams, token): Promise<ReachResult | null> {
      const view = opened(world, uri);
      if (!view || typeof asked !== "string") return null;
      const stop = stopsWith(world, view, token);
      await worked(view, stop);
      const isLate = asked.includes("demand") || asked.includes("strength");
      const late = isLate || asksLate(view.study.design) ? { late: await world.services.late() } : {};
      if (late.late) await finishInTurns(view.deepen(late.late), stop);
      if (stop()) return null;
      const { document, study, files } = view;
      const subject = { text: document.getText(), address: view.uri, files, ...late };
      const goal = await finishInTurns(goalSteps(subject, asked), stop);
      if (!goal) return null;
      if ("refused" in goal) return { refused: `${goal.refused}.`, version: document.version, ways: [] };
      const ways = await finishInTurns(reachSteps({ subject, study, goal }), stop);
      if (!ways) return null;
      const told = (way: Way) => ({
        title: editorSentence("reach.way", {
          name: way.choice.name,
          now: printPlace(way.choice, way.choice.now),
          to: way.written,
        }),
        detail: detailOf(way, goal.value, printFine(way.got, goal.dimension, study.design.units)),
        met: way.met,
        edits: way.edits,
      });
      return { version: document.version, ways: ways.map(told) };
    },
  },
];

function detailOf({ met, comes, goes }: Way, value: string, got: string): string {
  const parts = [`${value} is then ${got}${met ? "" : ", the best it can do"}`];
  if (comes.length > 0) parts.push(`comes: ${comes.map(({ code }) => code).join(", ")}`);
  if (goes.length > 0) parts.push(`goes: ${goes.map(({ code }) => code).join(", ")}`);
  return parts.join("; ");
}

const opened = (world: World, uri: unknown): View | undefined =>
  typeof uri === "string" ? world.views.opened(uri) : undefined;

/** Nobody waits any more, or the text has moved on. */
const stopsWith =
  ({ views }: World, view: View, token: CancellationToken) =>
  (): boolean =>
    token.isCancellationRequested || views.opened(view.uri) !== view;

/** The range of a choice of this version, kept once it is worked out; nothing when there is none or `stop` came first. */
export async function rangeIn(
  { services }: Pick<World, "services">,
  view: View,
  name: string,
  stop: () => boolean,
): Promise<Range | undefined> {
  const kept = view.ranges.get(name);
  if (kept) return kept;
  const { tree, design } = view.study;
  const choice = choiceNamed(tree, design, name);
  if (!choice?.bounded) return undefined;
  // Where the file requires what is worked out last, that is part of what may be found along the way.
  const late = asksLate(view.study.design) ? { late: await services.late() } : {};
  const subject = { text: view.document.getText(), address: view.uri, files: view.files, ...late };
  const range = await finishInTurns(rangeSteps({ subject, choice }), stop);
  if (range) view.ranges.set(name, range);
  return range;
}

function resultOf(view: View, range: Range): RangeResult {
  const { choice, low, high, free, bands } = range;
  return {
    name: choice.name,
    version: view.document.version,
    low,
    high,
    free,
    bands: bands.map((band) => ({
      from: band.from,
      to: band.to,
      severity: band.severity,
      label: bandLabel(choice, band),
      message: band.message,
    })),
    words: rangeInWords(range),
  };
}
