import type { Uri } from "vscode";

/** The file's own name. */
export function nameOf({ path }: Uri): string {
  return path.slice(path.lastIndexOf("/") + 1);
}
