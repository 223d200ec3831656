/**
 * Marking-out sheets in Node: by a call from the command line, or as a worker of the client on the desktop.
 */
import { parentPort } from "node:worker_threads";
import { answer } from "./answer.ts";

export { piecesAsked, sheetsAsked } from "../../drawing/markout/pages.ts";
export { makeMarkout } from "./make.ts";

parentPort?.on("message", (request) => {
  answer(request, (message) => parentPort?.postMessage(message)).catch((error: unknown) => {
    parentPort?.postMessage({ is: "refused", because: `an internal error stopped it (${error})` });
  });
});
