/**
 * Addresses of files: one spelling for each, however a client writes it, and the files named by `use` and `like`. The spelling is the one
 * that VS Code's own library gives (vscode-uri, the oracle in the tests), which is four times the size of all this.
 */

interface Address {
  scheme: string;
  authority: string;
  path: string;
  query: string;
  fragment: string;
}

/** The one spelling under which a file is kept. */
export function sameAddress(uri: string): string {
  try {
    return written(parsed(uri));
  } catch {
    return uri;
  }
}

/** The address of a file named in another, relative to it. */
export function resolveAddress(from: string, path: string): string {
  try {
    const base = parsed(from);
    if (/^[a-z][a-z0-9+.-]+:\/\//i.test(path)) return written(parsed(path));
    return written({ ...base, path: resolved(base, path.replaceAll("\\", "/")) });
  } catch {
    return path;
  }
}

/** RFC 3986, appendix B, its parts decoded; throws where there is no address. */
function parsed(uri: string): Address {
  const [, scheme = "", slashes, host = "", way = "", query = "", fragment = ""] =
    /^(?:([^:/?#]+?):)?(\/\/([^/?#]*))?([^?#]*)(?:\?([^#]*))?(?:#(.*))?$/.exec(uri) ?? [];
  const [authority, decoded] = [decode(host), decode(way)];
  const rooted = /^(file|https?)$/.test(scheme) && !decoded.startsWith("/") ? `/${decoded}` : decoded;
  if (!/^\w[\w+.-]*$/.test(scheme)) throw new Error("no scheme");
  if (authority && rooted && !rooted.startsWith("/"))
    throw new Error("a path that does not begin at the root");
  if (!authority && slashes === undefined && rooted.startsWith("//"))
    throw new Error("an authority without a name");
  return { scheme, authority, path: rooted, query: decode(query), fragment: decode(fragment) };
}

function written({ scheme, authority, path, query, fragment }: Address): string {
  const drive = path.replace(/^\/?[A-Z]:/, (found) => found.toLowerCase());
  return [
    `${scheme}:`,
    authority || scheme === "file" ? `//${writtenHost(authority)}` : "",
    drive.split("/").map(encode).join("/"),
    query && `?${encode(query)}`,
    fragment && `#${encode(fragment)}`,
  ].join("");
}

/** Who may come first, a port last. */
function writtenHost(authority: string): string {
  const at = authority.indexOf("@");
  const who = authority.slice(0, Math.max(0, at));
  const colon = who.lastIndexOf(":");
  const user = colon < 0 ? encode(who) : `${encode(who.slice(0, colon))}:${encode(who.slice(colon + 1))}`;
  const host = authority.slice(at + 1).toLowerCase();
  const port = host.lastIndexOf(":");
  const named = port < 0 ? encode(host) : encode(host.slice(0, port)) + host.slice(port);
  return at < 0 ? named : `${user}@${named}`;
}

/** From the folder that a file lies in. */
function resolved({ path, authority }: Address, name: string): string {
  const rootless = !path.startsWith("/");
  const folder = path.slice(0, Math.max(0, path.replace(/\/+$/, "").lastIndexOf("/")));
  const kept: string[] = [];
  for (const step of (name.startsWith("/") ? name : `${folder}/${name}`).split("/")) {
    if (step === "..") kept.pop();
    else if (step !== "" && step !== ".") kept.push(step);
  }
  return `${rootless && !authority ? "" : "/"}${kept.join("/")}`;
}

/** What cannot be decoded stays as it is. */
const decode = (text: string): string =>
  text.replace(/(?:%[0-9a-z]{2})+/gi, (run) => {
    try {
      return decodeURIComponent(run);
    } catch {
      return run.length > 3 ? run.slice(0, 3) + decode(run.slice(3)) : run;
    }
  });

const encode = (text: string): string =>
  encodeURIComponent(text).replace(/[!'()*]/g, (sign) => `%${sign.charCodeAt(0).toString(16).toUpperCase()}`);
