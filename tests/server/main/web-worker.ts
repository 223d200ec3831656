/**
 * The server's bundle for the web, in a thread that has what a web worker has and nothing of Node.
 */
import { Worker } from "node:worker_threads";
import { build } from "esbuild";
import { bundles } from "../../../.build/bundles.mjs";
import { root } from "../../house/project-files.ts";

interface Message {
  id?: number | string;
  method?: string;
  params?: unknown;
  result?: unknown;
  error?: { code: number; message: string };
}

/** What the client says of where the worker finds its script for strength. */
export const STRENGTH = "strength-web.js";

export interface WebServer {
  request<T>(method: string, params: unknown): Promise<T>;
  notify(method: string, params: unknown): void;
  end(): Promise<unknown>;
}

/** A worker with the globals of the web alone. */
const surroundings = `
const { parentPort, workerData } = require("node:worker_threads");
const vm = require("node:vm");
const web = {
  setTimeout, clearTimeout, setInterval, clearInterval, queueMicrotask, performance, structuredClone,
  TextEncoder, TextDecoder, URL, console, crypto,
  postMessage: (message) => parentPort.postMessage(message),
  addEventListener: () => {},
};
web.importScripts = (name) => vm.runInContext(workerData[name], web);
web.self = web;
web.globalThis = web;
vm.createContext(web);
parentPort.on("message", (data) => web.onmessage?.({ data }));
web.importScripts("server-web.js");
`;

/** Starts it; `answer` is what the client says to the server's own requests. */
export async function webServer(answer: (method: string, params: unknown) => unknown): Promise<WebServer> {
  const scripts = ["server-web.js", STRENGTH].map(async (name) => {
    const bundle = await build({
      absWorkingDir: root,
      bundle: true,
      target: "es2022",
      mainFields: ["browser", "module", "main"],
      alias: { "lodash-es": "es-toolkit/compat" },
      define: { global: "globalThis" },
      write: false,
      ...bundles[name],
    });
    return [name, bundle.outputFiles?.[0]?.text] as const;
  });
  const workerData = Object.fromEntries(await Promise.all(scripts));
  const worker = new Worker(surroundings, { eval: true, workerData });
  const waiting = new Map<number | string, (message: Message) => void>();
  worker.on("error", ({ message }) => {
    for (const end of waiting.values()) end({ error: { code: 0, message } });
  });
  let asked = 0;
  const send = (message: Message) => worker.postMessage({ jsonrpc: "2.0", ...message });
  worker.on("message", ({ id, method, params, ...reply }: Message) => {
    if (id === undefined) return;
    if (method === undefined) return waiting.get(id)?.({ id, ...reply });
    send({ id, result: answer(method, params) ?? null });
  });
  return {
    request: <T>(method: string, params: unknown) =>
      new Promise<T>((resolve, reject) => {
        const id = ++asked;
        waiting.set(id, ({ result, error }) => (error ? reject(error) : resolve(result as T)));
        send({ id, method, params });
      }),
    notify: (method, params) => send({ method, params }),
    end: () => worker.terminate(),
  };
}
