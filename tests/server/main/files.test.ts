import { execFileSync } from "node:child_process";
import {
  mkdirSync,
  mkdtempSync,
  rmSync,
  symlinkSync,
  truncateSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join, relative } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { LARGEST } from "../../../server/main/files.ts";
import { filesOfBoth } from "../../../server/main/files-both.ts";
import { filesOfClient } from "../../../server/main/files-client.ts";
import { filesOnDisk } from "../../../server/main/files-node.ts";
import { READ_FILE } from "../../../server/main/protocol.ts";

describe("files on disk", () => {
  let folder = "";
  const address = (name: string) => pathToFileURL(join(folder, name)).href;
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), "mess "));
    mkdirSync(join(folder, "inner"));
    mkdirSync(join(folder, "node_modules"));
    for (const name of ["a.chair", "inner/b.chair", "node_modules/c.chair", "inner/d.txt"])
      writeFileSync(join(folder, name), name);
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  it("are read, and read again when they have changed", () => {
    const files = filesOnDisk();
    expect(files.read(address("a.chair"))).toBe("a.chair");
    writeFileSync(join(folder, "a.chair"), "other");
    utimesSync(join(folder, "a.chair"), 1, 1);
    expect(files.read(address("a.chair"))).toBe("other");
  });

  it("are nothing when missing, a folder, too large or not on this disk", () => {
    const files = filesOnDisk();
    writeFileSync(join(folder, "huge.chair"), "");
    truncateSync(join(folder, "huge.chair"), LARGEST + 1);
    for (const name of ["gone.chair", "inner", "huge.chair"])
      expect(files.read(address(name))).toBeUndefined();
    expect(files.read("memfs:/ws/a.chair")).toBeUndefined();
    rmSync(join(folder, "huge.chair"));
  });

  it("are chairs, where the address ends when links are followed", () => {
    const files = filesOnDisk();
    const links = {
      "far.chair": join(folder, "a.chair"),
      "text.chair": join(folder, "inner", "d.txt"),
      "memory.chair": "/proc/self/pagemap",
      "log.chair": "/proc/kmsg",
      "round.chair": join(folder, "round.chair"),
      "folder.chair": join(folder, "inner"),
      deep: join(folder, "inner"),
    };
    for (const [name, target] of Object.entries(links)) symlinkSync(target, join(folder, name));
    expect(files.read(address("far.chair"))).toBe("other");
    expect(files.read(address("deep/b.chair"))).toBe("inner/b.chair");
    expect(files.read(address("deep/../inner/b.chair"))).toBe("inner/b.chair");
    for (const name of ["text.chair", "memory.chair", "log.chair", "round.chair", "folder.chair"])
      expect(files.read(address(name)), name).toBeUndefined();
    for (const uri of ["/proc/self/pagemap", "/etc/hostname"].map((path) => pathToFileURL(path).href))
      expect(files.read(uri), uri).toBeUndefined();
    expect(files.read(`${address("inner/d.txt")}?.chair`)).toBeUndefined();
    expect(files.read(`${address("inner/d.txt")}#.chair`)).toBeUndefined();
    expect(files.read(address("a.chair").replace("file:///", "file://host/"))).toBeUndefined();
    expect(files.read(address("a.chair").replace("file:///", "file:////"))).toBeUndefined();
    for (const name of Object.keys(links)) rmSync(join(folder, name));
  });

  it("that nobody writes to are not waited for", () => {
    const pipe = join(folder, "pipe.chair");
    execFileSync("mkfifo", [pipe]);
    expect(filesOnDisk().read(address("pipe.chair"))).toBeUndefined();
    rmSync(pipe);
  });

  it("are listed from the workspace's folders, those of other tools left out", async () => {
    const found = await filesOnDisk().list([pathToFileURL(folder).href]);
    expect(found.map((uri) => relative(folder, fileURLToPath(uri))).sort()).toEqual([
      "a.chair",
      join("inner", "b.chair"),
    ]);
  });
});

describe("files of the client", () => {
  /** A client whose answers are given by hand. */
  function client() {
    const waiting: { method: string; uri: string; answer: (given: unknown) => void; fail: () => void }[] = [];
    const sendRequest = ((method: string, { uri }: { uri: string }) =>
      new Promise((resolve, reject) =>
        waiting.push({ method, uri, answer: resolve, fail: () => reject(new Error("unknown")) }),
      )) as never;
    const files = filesOfClient({ sendRequest });
    const arrived: string[] = [];
    files.onArrival?.((uri) => arrived.push(uri));
    return { files, waiting, arrived };
  }

  it("are asked for once, and their coming is told", async () => {
    const { files, waiting, arrived } = client();
    expect([files.read("memfs:/a"), files.read("memfs:/a")]).toEqual([undefined, undefined]);
    expect(waiting.map(({ method, uri }) => `${method} ${uri}`)).toEqual([`${READ_FILE} memfs:/a`]);
    const pending = files.pending?.();
    waiting[0]?.answer({ text: "one" });
    await pending;
    expect(arrived).toEqual(["memfs:/a"]);
    expect(files.read("memfs:/a")).toBe("one");
    expect(files.pending?.()).toBeUndefined();
  });

  it("are none when the client has none, or does not know the request", async () => {
    const { files, waiting } = client();
    files.read("memfs:/a");
    files.read("memfs:/b");
    const pending = files.pending?.();
    waiting[0]?.answer({ text: null });
    waiting[1]?.fail();
    await pending;
    expect([files.read("memfs:/a"), files.read("memfs:/b")]).toEqual([undefined, undefined]);
    expect(waiting).toHaveLength(2);
  });

  it("pass over an answer that was overtaken", async () => {
    const { files, waiting } = client();
    files.read("memfs:/a");
    files.forget("memfs:/a");
    files.read("memfs:/a");
    const pending = files.pending?.();
    waiting[0]?.answer({ text: "old" });
    waiting[1]?.answer({ text: "new" });
    await pending;
    expect(files.read("memfs:/a")).toBe("new");
  });
});

describe("files of both kinds of folder", () => {
  it("come from disk for file addresses alone, refused ones included, and from the client for others", async () => {
    const asked: string[] = [];
    const from = (name: string) => ({
      read: (uri: string) => {
        asked.push(`${name} ${uri}`);
        return name === "disk" ? undefined : name;
      },
      forget: () => {},
      list: async (folders: readonly string[]) => [
        ...folders.map((folder) => `${folder}/a.chair`),
        "file:///x.chair",
      ],
    });
    const both = filesOfBoth(from("disk"), from("client"));
    expect(both.read("file:///etc/passwd")).toBeUndefined();
    expect(both.read("FILE://host/a.chair")).toBeUndefined();
    expect(both.read("memory:/chairs/a.chair")).toBe("client");
    expect(asked).toEqual([
      "disk file:///etc/passwd",
      "disk FILE://host/a.chair",
      "client memory:/chairs/a.chair",
    ]);
    expect(await both.list(["file:///mess", "memory:/chairs"])).toEqual([
      "file:///mess/a.chair",
      "file:///x.chair",
      "memory:/chairs/a.chair",
    ]);
  });
});
