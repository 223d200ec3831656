/**
 * Addresses of files: one spelling for each, however a client writes it, and the files named by `use` and `like`.
 */
import { URI, Utils } from "vscode-uri";

/** The one spelling under which a file is kept; what is not an address stays as it is. */
export function sameAddress(uri: string): string {
  try {
    return URI.parse(uri, true).toString();
  } catch {
    return uri;
  }
}

/** The address of a file named in another, relative to it; what is not an address stays as it is. */
export function resolveAddress(from: string, path: string): string {
  try {
    if (/^[a-z][a-z0-9+.-]+:\/\//i.test(path)) return URI.parse(path, true).toString();
    return Utils.resolvePath(Utils.dirname(URI.parse(from, true)), path.replaceAll("\\", "/")).toString();
  } catch {
    return path;
  }
}
