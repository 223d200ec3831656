/**
 * The command line: `seatwright check`, `reckon`, `draw`, `format`, `explain`, and the server over standard streams.
 */
import { pathToFileURL } from "node:url";
import { examplesIn } from "./cli/examples.ts";
import { run } from "./cli/run.ts";
import { serveOnStreams } from "./cli/stdio.ts";
import { processTerminal } from "./cli/terminal.ts";
import { services } from "./services.ts";

const ending = run(process.argv.slice(2), {
  terminal: processTerminal(),
  services,
  exampleOf: examplesIn([new URL("examples/", pathToFileURL(__filename))]),
  serve: serveOnStreams,
});
const end = (code: number | undefined) => {
  if (code !== undefined) process.exitCode = code;
};
if (ending instanceof Promise) void ending.then(end);
else end(ending);
