/**
 * Everything the server advertises, each with its handler. What it leaves out stands in `server/editor/left-out.ts`.
 */
import type { DocumentDiagnosticParams } from "vscode-languageserver";
import { diagnostics } from "../editor/diagnostics.ts";
import { type Feature, onDocument } from "./feature.ts";
import { filesCome } from "./world.ts";

export const features: Feature[] = [
  onDocument({
    name: "diagnostics",
    method: "textDocument/diagnostic",
    capability: {
      diagnosticProvider: {
        identifier: "seatwright",
        interFileDependencies: true,
        workspaceDiagnostics: false,
      },
    },
    when: (client) => client.textDocument?.diagnostic !== undefined,
    empty: { kind: "full", items: [] },
    async answer(view, _: DocumentDiagnosticParams, world) {
      await filesCome(view, world.files);
      return { kind: "full", items: diagnostics(view, await world.settings(view.uri)) };
    },
  }),
];
