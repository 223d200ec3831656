import { createConnection, ProposedFeatures } from "vscode-languageserver/node";
import { cancelling } from "../cancelling.ts";
import { filesOnDisk } from "../files-node.ts";
import { serve } from "../serve.ts";
import { services } from "../services.ts";
import { version } from "../version.ts";

/** Serves an editor over this process's standard streams until it says exit. */
export function serveOnStreams(): void {
  const connection = createConnection(ProposedFeatures.all, process.stdin, process.stdout, {
    connectionStrategy: cancelling,
  });
  serve(connection, { services, files: filesOnDisk(), version });
}
