/**
 * The chairs of the workspace. VS Code's own search does not go through some kinds of folder: on the web it never answers for them, on the
 * desktop it finds nothing there. So those are gone through here.
 */
import { CancellationTokenSource, FileType, Uri, workspace } from "vscode";
import { MOST_FILES } from "../server/main/files.ts";

/** How long the search is waited for, ms. */
const LONGEST_SEARCH = 300;
/** How long the folders are gone through, ms. */
const LONGEST_WALK = 500;
/** How deep. */
const DEEPEST = 12;

const passedOver = new Set(["node_modules", "dist", "out"]);

/** Whether the search has failed to answer; it is not waited for a second time. */
let silent = false;

/** Addresses of the workspace's chairs, as many as were found in less than a second. */
export async function findChairs(): Promise<Uri[]> {
  const folders = (workspace.workspaceFolders ?? []).map(({ uri }) => uri);
  const found = silent ? undefined : await searched();
  if (!found) return walked(folders);
  const isIn = (uri: Uri, folder: Uri) => uri.scheme === folder.scheme && uri.authority === folder.authority;
  const passed = folders.filter(
    (folder) => folder.scheme !== "file" && !found.some((uri) => isIn(uri, folder)),
  );
  return passed.length === 0 ? found : [...found, ...(await walked(passed))];
}

async function searched(): Promise<Uri[] | undefined> {
  const stop = new CancellationTokenSource();
  let timer: ReturnType<typeof setTimeout> | undefined;
  const late = new Promise<undefined>((resolve) => {
    timer = setTimeout(() => resolve(undefined), LONGEST_SEARCH);
  });
  const search = workspace.findFiles("**/*.chair", undefined, MOST_FILES, stop.token);
  const found = await Promise.race([Promise.resolve(search).catch(() => undefined), late]);
  clearTimeout(timer);
  silent = found === undefined;
  if (silent) stop.cancel();
  stop.dispose();
  return found;
}

async function walked(folders: readonly Uri[]): Promise<Uri[]> {
  const begun = performance.now();
  const found: Uri[] = [];
  const waiting = folders.map((uri) => ({ uri, depth: 0 }));
  for (let next = waiting.shift(); next; next = waiting.shift()) {
    const { uri, depth } = next;
    const left = LONGEST_WALK - (performance.now() - begun);
    if (left <= 0 || found.length >= MOST_FILES) break;
    for (const [name, type] of await entriesOf(uri, left)) {
      const each = Uri.joinPath(uri, name);
      if (type === FileType.File && name.endsWith(".chair")) found.push(each);
      else if (
        type === FileType.Directory &&
        depth < DEEPEST &&
        !name.startsWith(".") &&
        !passedOver.has(name)
      )
        waiting.push({ uri: each, depth: depth + 1 });
    }
  }
  return found;
}

/** What a folder holds; nothing when it cannot be read in time. */
async function entriesOf(folder: Uri, time: number): Promise<[string, FileType][]> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const late = new Promise<[string, FileType][]>((resolve) => {
    timer = setTimeout(() => resolve([]), time);
  });
  const read = Promise.resolve(workspace.fs.readDirectory(folder)).catch(() => []);
  const entries = await Promise.race([read, late]);
  clearTimeout(timer);
  return entries;
}
