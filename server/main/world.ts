/**
 * What every request handler is given: the open files, the settings and the workspace.
 */
import type { ClientCapabilities } from "vscode-languageserver";
import type { Settings } from "../editor/settings.ts";
import type { View } from "../editor/view.ts";
import type { Study } from "../study.ts";
import { type Files, MOST_FILES } from "./files.ts";
import { finishInTurns, rest } from "./in-turns.ts";
import type { Services } from "./put-to-work.ts";
import type { Views } from "./views.ts";

export interface World {
  services: Services;
  views: Views;
  files: Files;
  client: ClientCapabilities;
  /** Addresses of the workspace's folders. */
  folders: string[];
  settings(uri: string): Promise<Settings>;
  /** How long a hover may be worked at, ms. */
  patience: number;
}

/** Every chair file of the workspace that can be read, the open ones first, and the files they name. */
export async function everyView(world: World): Promise<View[]> {
  const found = new Map(world.views.all().map((view) => [view.uri, view]));
  const queue = [...found.values()].flatMap(namedIn);
  let listed: readonly string[] = [];
  const listing = world.files.list(world.folders).then((uris) => (listed = uris));
  await soon(listing, LONGEST_WAIT);
  // Asked for all at once, so that a client that must be asked for each is waited for only once.
  if (world.files.pending) for (const uri of listed) world.files.read(uri);
  const pending = world.files.pending?.();
  if (pending) await soon(pending, LONGEST_WAIT);
  queue.push(...listed);
  let since = performance.now();
  for (let next = queue.pop(); next !== undefined && found.size < MOST_FILES; next = queue.pop()) {
    if (performance.now() - since > TURN) {
      await rest();
      since = performance.now();
    }
    const view = found.has(next) ? undefined : world.views.get(next);
    if (!view || found.has(view.uri)) continue;
    found.set(view.uri, view);
    queue.push(...namedIn(view));
  }
  return [...found.values()];
}

/** The files that a file names, read off its words. */
const namedIn = (view: View): string[] =>
  view.outline.links.flatMap(({ path }) => {
    const address = view.resolve(path);
    return address !== undefined && /\.chair$/i.test(address) ? [address] : [];
  });

/** Longest stretch at one go, ms. */
const TURN = 12;

/**
 * Works a view's study out in turns, so that a long file does not keep others from being answered; a short one is done at once. Ends
 * early when `stop` says that nobody waits for it any more.
 */
export const worked = (view: View, stop?: () => boolean): Promise<Study | undefined> =>
  finishInTurns(view.work(), stop);

/** How long files are waited for that the client is asked for, ms; what comes later is looked at when it comes. */
const LONGEST_WAIT = 1000;

/** As many looks as a row of files that each name the next may be long. */
const MOST_LOOKS = 64;

/** Waits for the files that this one names, which in the browser come after they are asked for. */
export async function filesCome(view: View, files: Files, stop: () => boolean = () => false): Promise<void> {
  const begun = performance.now();
  for (let look = 0; look < MOST_LOOKS; look++) {
    await worked(view, stop);
    const left = LONGEST_WAIT - (performance.now() - begun);
    const pending = files.pending?.();
    if (stop() || !pending || left <= 0) return;
    await soon(pending, left);
  }
}

/** Waits no longer than so many ms. */
async function soon(wait: Promise<unknown>, time: number): Promise<void> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  await Promise.race([wait, new Promise((resolve) => (timer = setTimeout(resolve, time)))]);
  clearTimeout(timer);
}
