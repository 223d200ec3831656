/**
 * Chairs that another chair names, read by way of VS Code's own files.
 */
import { FileType, type Uri, workspace } from "vscode";
import { LARGEST } from "../server/main/files.ts";

/**
 * A chair's text; nothing when there is none. A file may come from anybody, and what it names is read without asking, so only ordinary
 * files that end in `.chair` are, on no other machine than the workspace's own. VS Code does not say where a link ends, so a link is
 * not followed.
 */
export async function chairText(uri: Uri): Promise<string | null> {
  if (!/\.chair$/i.test(uri.path) || !isNear(uri)) return null;
  try {
    const { type, size } = await workspace.fs.stat(uri);
    if (type !== FileType.File || size > LARGEST) return null;
    const bytes = await workspace.fs.readFile(uri);
    return bytes.length > LARGEST ? null : new TextDecoder().decode(bytes);
  } catch {
    return null;
  }
}

/** Whether an address is in a place that is open already: a folder of the workspace, or an open file. */
function isNear({ scheme, authority }: Uri): boolean {
  if (scheme === "file") return authority === "";
  const places = [
    ...(workspace.workspaceFolders ?? []).map((folder) => folder.uri),
    ...workspace.textDocuments.map((document) => document.uri),
  ];
  return places.some((place) => place.scheme === scheme && place.authority === authority);
}
