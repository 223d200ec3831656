/**
 * VS Code as a desktop runs it, with extensions in a Node process: code-server, kept in a cache outside the checkout because it is far
 * larger than everything else the tests need. Later versions ask for Node 22.
 */
import { spawn, spawnSync } from "node:child_process";
import { copyFileSync, existsSync, mkdirSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { homedir } from "node:os";
import { join } from "node:path";
import { env, execPath, getuid } from "node:process";

const version = "4.100.3";
const cache = join(env.XDG_CACHE_HOME || join(homedir(), ".cache"), "seatwright", `code-server-${version}`);
const packageFolder = join(cache, "node_modules", "code-server");
const editorFolder = join(packageFolder, "lib", "vscode");
const entry = join(packageFolder, "out", "node", "entry.js");
/** Written last, so that a set-up that was broken off is begun anew. */
const done = join(cache, "set-up");

/** What its native parts are built with, by Debian's names, each with a command that succeeds when it is there. */
const needs = {
  "libkrb5-dev": ["pkg-config", "--exists", "krb5-gssapi"],
  "libsecret-1-dev": ["pkg-config", "--exists", "libsecret-1"],
  "pkg-config": ["pkg-config", "--version"],
  ripgrep: ["rg", "--version"],
};

/** Installs it into the cache when it is not there yet; throws with what is missing when it cannot. */
export function ensureCodeServer() {
  if (existsSync(done)) return;
  console.log(`Setting up code-server ${version} in ${cache}; this takes a few minutes, once …`);
  ensureDebianPackages();
  rmSync(cache, { recursive: true, force: true });
  mkdirSync(cache, { recursive: true });
  writeFileSync(join(cache, "package.json"), '{ "private": true }\n');
  const quiet = ["--no-audit", "--no-fund", "--loglevel=error"];
  // Their install scripts fetch ready-made programs, which a closed network does not have: what is native is built here.
  npm(cache, "install", "--ignore-scripts", ...quiet, `code-server@${version}`);
  npm(editorFolder, "install", "--ignore-scripts", "--omit=dev", ...quiet);
  npm(editorFolder, "rebuild", ...quiet, "node-pty", "@vscode/spdlog", "native-watchdog");
  npm(cache, "rebuild", ...quiet, "argon2");
  symlinkSync("node_modules", join(editorFolder, "node_modules.asar"));
  const search = join(editorFolder, "node_modules", "@vscode", "ripgrep", "bin");
  mkdirSync(search, { recursive: true });
  copyFileSync("/usr/bin/rg", join(search, "rg"));
  writeFileSync(done, "");
}

/** Settings with which nothing but the folder is shown at the start. */
const folderAlone = {
  "workbench.startupEditor": "none",
  "telemetry.telemetryLevel": "off",
  "window.restoreWindows": "none",
};

/**
 * Starts it on loopback over a folder, with extensions installed from their VSIX files.
 *
 * @param {{ folder: string, vsix: string | string[], home: string, settings?: Record<string, unknown> }} given `home` holds what it
 * writes; a folder may be a `.code-workspace` file
 * @returns {Promise<{ address: string, close(): Promise<void> }>}
 */
export async function startCodeServer({ folder, vsix, home, settings = {} }) {
  const all = { ...folderAlone, ...settings };
  const user = join(home, "user");
  const places = ["--user-data-dir", user, "--extensions-dir", join(home, "extensions")];
  const config = ["--config", join(home, "config.yaml")];
  mkdirSync(join(user, "User"), { recursive: true });
  writeFileSync(join(user, "User", "settings.json"), JSON.stringify(all));
  writeFileSync(join(home, "config.yaml"), "");
  const extensions = [vsix].flat().flatMap((each) => ["--install-extension", each]);
  const installed = spawnSync(execPath, [entry, ...config, ...places, ...extensions], { encoding: "utf8" });
  if (installed.status !== 0) throw new Error(`The VSIX could not be installed: ${installed.stderr}`);

  const quiet = ["--auth", "none", "--disable-telemetry", "--disable-update-check"];
  const where = ["--bind-addr", "127.0.0.1:0", "--disable-workspace-trust", folder];
  const child = spawn(execPath, [entry, ...config, ...places, ...quiet, ...where], {
    // A process group of its own: its editor and extension processes end with it.
    detached: true,
    // No shop for extensions: the editor itself would ask it what is new.
    env: { ...env, EXTENSIONS_GALLERY: "{}" },
    stdio: ["ignore", "pipe", "pipe"],
  });
  const address = await new Promise((resolve, reject) => {
    let said = "";
    const listen = (/** @type {Buffer} */ piece) => {
      said += piece;
      const found = /HTTP server listening on (http:\/\/\S+?)\/?\s/.exec(said);
      if (found) resolve(found[1]);
    };
    child.stdout.on("data", listen);
    child.stderr.on("data", listen);
    child.once("exit", () => reject(new Error(`code-server did not start: ${said}`)));
  });
  return {
    address: `${address}/?${folder.endsWith(".code-workspace") ? "workspace" : "folder"}=${encodeURIComponent(folder)}`,
    async close() {
      if (child.exitCode !== null || child.pid === undefined) return;
      const ended = new Promise((resolve) => child.once("exit", resolve));
      process.kill(-child.pid, "SIGKILL");
      await ended;
    },
  };
}

function ensureDebianPackages() {
  const missing = Object.entries(needs)
    .filter(([, [command = "", ...args]]) => spawnSync(command, args).status !== 0)
    .map(([name]) => name);
  if (missing.length === 0) return;
  const isRoot = getuid?.() === 0;
  const install = ["apt-get", "install", "-y", "-q", "--no-install-recommends", ...missing];
  if (!isRoot || spawnSync("apt-get", ["--version"]).status !== 0)
    throw new Error(`Missing: ${missing.join(", ")} (Debian's names). As root: ${install.join(" ")}`);
  run("/", "apt-get", "update", "-q");
  run("/", ...install);
}

function npm(/** @type {string} */ folder, /** @type {string[]} */ ...args) {
  run(folder, "npm", ...args);
}

function run(/** @type {string} */ cwd, /** @type {string[]} */ ...[command = "", ...args]) {
  // Their build scripts call npx, which would ask before it installs node-gyp.
  const { status } = spawnSync(command, args, {
    cwd,
    env: { ...env, npm_config_yes: "true" },
    stdio: ["ignore", "ignore", "inherit"],
  });
  if (status !== 0) throw new Error(`${command} ${args.join(" ")} did not work (in ${cwd}).`);
}
