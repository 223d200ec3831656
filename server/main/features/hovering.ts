/**
 * Hover: what stands under the pointer, and for a worked-out value which figures of the text move it.
 */
import type { CancellationToken, HoverParams } from "vscode-languageserver";
import type { Hover } from "vscode-languageserver-types";
import { aboutMovers } from "../../editor/about/about-movers.ts";
import { paragraphs, plain } from "../../editor/about/markdown.ts";
import { valuesUnder } from "../../editor/about/moved-values.ts";
import { shortened } from "../../editor/about/short.ts";
import { adjustableAt } from "../../editor/adjustable.ts";
import { textOf, wholeHover, withText } from "../../editor/hover.ts";
import { pageLink } from "../../editor/pages/kinds.ts";
import type { View } from "../../editor/view.ts";
import { rangeInWords } from "../../range/words.ts";
import { hangsOn } from "../../sensitivity/sensitivity.ts";
import { type Feature, onDocument } from "../feature.ts";
import { inTurns } from "../in-turns.ts";
import { canDo } from "../own-capabilities.ts";
import type { World } from "../world.ts";
import { rangeIn } from "./ranging.ts";

export const hoverFeature: Feature = onDocument({
  name: "hover",
  method: "textDocument/hover",
  capability: { hoverProvider: true },
  empty: null,
  async answer(view, { position }: HoverParams, world, token): Promise<Hover | null> {
    const offset = view.document.offsetAt(position);
    const told = wholeHover(view, offset, { pictures: canDo(world.client, "hoverPictures") });
    const range = told ? await rangeAt(view, offset, world, token) : undefined;
    const movers = told && (await moversAt(view, offset, world, token));
    if (!told) return told;
    const more = canDo(world.client, "commands") ? pageLink("values", view.uri) : undefined;
    return withText(told, shortened(paragraphs(textOf(told), range, movers ?? undefined), more));
  },
});

/** How far the `let` under the pointer may go, in a line; as long as somebody waits for a hover, and at once the next time. */
async function rangeAt(
  view: View,
  offset: number,
  world: World,
  token: CancellationToken,
): Promise<string | undefined> {
  const { views, patience } = world;
  const choice = adjustableAt(view, offset);
  if (choice === undefined) return undefined;
  const begun = performance.now();
  const stop = () =>
    token.isCancellationRequested || views.get(view.uri) !== view || performance.now() - begun > patience;
  const range = await rangeIn(world, view, choice, stop);
  return range && plain(rangeInWords(range));
}

/** Each figure tried costs the whole chair once more, so it is done in turns, and no longer than somebody waits for a hover. */
async function moversAt(
  view: View,
  offset: number,
  { views, patience }: World,
  token: CancellationToken,
): Promise<string | undefined> {
  const values = valuesUnder(view, offset);
  if (values.length === 0) return undefined;
  const { tree, study } = view;
  const { design, chair } = study;
  const outcome = await inTurns(
    hangsOn({ tree, design, chair, values, rework: (changed) => view.rework(changed) }),
    { time: patience, stop: () => token.isCancellationRequested || views.get(view.uri) !== view },
  );
  const { whole } = outcome;
  const known = outcome.whole ? outcome.value : outcome.known;
  return known && aboutMovers(known, { chair, unit: design.units, whole });
}
