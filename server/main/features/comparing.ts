/**
 * Requests of our own about earlier versions of an open chair: its notebook, and what was chosen since one of them.
 */
import { finish } from "../../../grammar/steps.ts";
import { isOldChair } from "../comparing.ts";
import type { Feature } from "../feature.ts";
import { CHOSEN_SINCE, type ChosenSinceParams, NOTEBOOK, type NotebookParams } from "../protocol.ts";
import { filesCome, type World } from "../world.ts";

export const comparingRequests: Pick<Feature, "name" | "method" | "empty" | "answer">[] = [
  {
    name: "notebook",
    method: NOTEBOOK,
    empty: null,
    async answer(world, { uri, versions }: NotebookParams): Promise<string | null> {
      const view = await ready(world, uri);
      if (!view || !Array.isArray(versions)) return null;
      const { notebook } = await import("../comparison.ts");
      return notebook(view, versions.filter(isOldChair));
    },
  },
  {
    name: "chosen since",
    method: CHOSEN_SINCE,
    empty: [],
    async answer(world, { uri, old }: ChosenSinceParams): Promise<string[]> {
      const view = await ready(world, uri);
      if (!view || !isOldChair(old)) return [];
      const { chosenSince } = await import("../comparison.ts");
      return chosenSince(view, old, (asked) => finish(world.services.study(asked)));
    },
  },
];

async function ready(world: World, uri: unknown) {
  const view = typeof uri === "string" ? world.views.opened(uri) : undefined;
  if (view) await filesCome(view, world.files);
  return view;
}
