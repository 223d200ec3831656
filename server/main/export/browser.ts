/**
 * A chair exported in a web worker.
 */
import { answer } from "./answer.ts";

declare const self: DedicatedWorkerGlobalScope;

self.onmessage = ({ data }) => {
  answer(data, (message) => self.postMessage(message)).catch((error: unknown) => {
    self.postMessage({ is: "refused", because: `an internal error stopped it (${error})` });
  });
};
