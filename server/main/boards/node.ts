/**
 * The boards in Node: pages by a call from the command line, or plans as a worker of the client on the desktop.
 */
import { parentPort } from "node:worker_threads";
import { answer } from "./answer.ts";
import { newestOnly } from "./newest-only.ts";

export { makeBoards } from "./make.ts";

const ask = newestOnly(answer, (message) => parentPort?.postMessage(message));
parentPort?.on("message", ask);
