/**
 * The form of one advertised capability: its method, what is advertised, and the handler.
 */
import type { CancellationToken, ClientCapabilities, ServerCapabilities } from "vscode-languageserver";
import type { View } from "../editor/view.ts";
import { type World, worked } from "./world.ts";

export interface Feature {
  /** The editor file that answers, and the name of its test: `hover` is `server/editor/hover.ts`. */
  name: string;
  method: string;
  /** What `initialize` says; absent for a second method of a capability that another row advertises. */
  capability?: Partial<ServerCapabilities>;
  /** Left out unless the client can use it. */
  when?: (client: ClientCapabilities) => boolean;
  empty: unknown;
  answer(world: World, params: never, token: CancellationToken): unknown;
}

interface OnDocument {
  textDocument: { uri: string };
}

/**
 * A feature asked of one file; a file that cannot be read gives the empty answer. Unless it reads the text alone, it is asked when
 * all is known of the file, and not at all when it is called off by then.
 */
export function onDocument<P extends OnDocument, R>(
  row: Omit<Feature, "answer" | "empty"> & {
    empty: R;
    textAlone?: true;
    answer: (view: View, params: P, world: World, token: CancellationToken) => R | Promise<R>;
  },
): Feature {
  return {
    ...row,
    async answer(world, params: P, token) {
      const view = world.views.get(params.textDocument.uri);
      if (!view) return row.empty;
      const stop = () => token.isCancellationRequested;
      if (!row.textAlone) await worked(view, stop);
      if (stop()) return row.empty;
      return row.answer(view, params, world, token);
    },
  };
}
