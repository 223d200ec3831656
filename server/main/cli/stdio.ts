import { createConnection, ProposedFeatures } from "vscode-languageserver/node";
import { cancelling } from "../cancelling.ts";
import { filesOnDisk } from "../files-node.ts";
import { collectsAtRest } from "../memory-node.ts";
import { serve } from "../serve.ts";
import { services } from "../services.ts";
import { version } from "../version.ts";
import { checkedFrames } from "./checked-frames.ts";

/** Serves an editor over this process's standard streams until it says exit. */
export function serveOnStreams(): void {
  const input = checkedFrames((because) => {
    process.stderr.write(`seatwright: ${because}, so the server ends.\n`);
    process.exit(1);
  });
  const connection = createConnection(ProposedFeatures.all, process.stdin.pipe(input), process.stdout, {
    connectionStrategy: cancelling,
  });
  serve(connection, { services, files: filesOnDisk(), version, looks: collectsAtRest() });
}
