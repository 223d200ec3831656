/**
 * The command line: `seatwright check`, `reckon`, `draw`, `format`, `explain`, and the server over standard streams.
 */
import { run } from "./cli/run.ts";
import { serveOnStreams } from "./cli/stdio.ts";
import { processTerminal } from "./cli/terminal.ts";
import { services } from "./services.ts";

const code = run(process.argv.slice(2), { terminal: processTerminal(), services, serve: serveOnStreams });
if (code !== undefined) process.exitCode = code;
