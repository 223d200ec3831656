/**
 * The server as a process: over its parent's channel (`--node-ipc`), a socket, or its standard streams (`--stdio`).
 */
import { createConnection, ProposedFeatures } from "vscode-languageserver/node";
import { cancelling } from "./cancelling.ts";
import { filesOfBoth } from "./files-both.ts";
import { filesOfClient } from "./files-client.ts";
import { filesOnDisk } from "./files-node.ts";
import { collectsAtRest } from "./memory-node.ts";
import { serve } from "./serve.ts";
import { services } from "./services.ts";
import { version } from "./version.ts";

const connection = createConnection(ProposedFeatures.all, { connectionStrategy: cancelling });
serve(connection, {
  services,
  files: filesOfBoth(filesOnDisk(), filesOfClient(connection)),
  version,
  looks: collectsAtRest(),
});
