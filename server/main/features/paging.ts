/**
 * A request of our own: a page that tells of an open chair.
 */
import { URI } from "vscode-uri";
import { type PageKind, pageKinds } from "../../editor/pages/kinds.ts";
import { page } from "../../editor/pages/pages.ts";
import type { Feature } from "../feature.ts";
import { PAGE, type PageParams } from "../protocol.ts";
import { filesCome, worked } from "../world.ts";

export const pagingRequests: Pick<Feature, "name" | "method" | "empty" | "answer">[] = [
  {
    name: "page",
    method: PAGE,
    empty: null,
    async answer(world, { uri, kind }: PageParams, token): Promise<string | null> {
      const view = typeof uri === "string" ? world.views.opened(uri) : undefined;
      if (!view || !isKind(kind)) return null;
      await filesCome(view, world.files);
      const study = await worked(view, () => token.isCancellationRequested);
      return study ? page(kind, study, URI.parse(uri).path.replace(/^.*\//, "")) : null;
    },
  },
];

const isKind = (kind: unknown): kind is PageKind => pageKinds.some((each) => each === kind);
