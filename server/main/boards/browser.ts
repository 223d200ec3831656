/**
 * The boards in a web worker.
 */
import { answer } from "./answer.ts";
import { newestOnly } from "./newest-only.ts";

declare const self: DedicatedWorkerGlobalScope;

const ask = newestOnly(answer, (message) => self.postMessage(message));
self.onmessage = ({ data }) => ask(data);
