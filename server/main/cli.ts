/**
 * The command line: `seatwright check`, `reckon`, `draw`, `format`, `explain`, and the server over standard streams.
 */
import { pathToFileURL } from "node:url";
import { ENDED } from "./cli/command.ts";
import { examplesIn } from "./cli/examples.ts";
import { run } from "./cli/run.ts";
import { harmless, processTerminal } from "./cli/terminal.ts";
import { lettersIn } from "./letters-node.ts";
import { services } from "./services.ts";

/** What nobody foresaw costs one line, not pages of the program's own text. */
process.on("uncaughtException", (error) => {
  process.stderr.write(
    `seatwright: something went wrong inside the program: ${harmless(error.message)}.\n`,
    () => process.exit(ENDED.misuse),
  );
});

const ending = run(process.argv.slice(2), {
  terminal: processTerminal(),
  services,
  exampleOf: examplesIn([new URL("examples/", pathToFileURL(__filename))]),
  letters: () => lettersIn(new URL("letters/", pathToFileURL(__filename))),
  // A server is another program, and a large one.
  serve: () => void import("./cli/stdio.ts").then(({ serveOnStreams }) => serveOnStreams()),
});
const end = (code: number | undefined) => {
  if (code !== undefined) process.exitCode = code;
};
if (ending instanceof Promise) void ending.then(end);
else end(ending);
