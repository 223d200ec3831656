/**
 * A workspace folder that lives in memory: its files come once, from the server of the page or from a file beside this one, and changes
 * stay here. VS Code's own search does not go through it.
 */
const vscode = require("vscode");

exports.activate = async (context) => {
  const given = await givenFiles(context.extensionUri);
  const provider = memoryFiles();
  for (const [path, text] of Object.entries(given))
    provider.seed(`/chairs/${path}`, new TextEncoder().encode(text));
  context.subscriptions.push(
    vscode.workspace.registerFileSystemProvider("memory", provider, { isCaseSensitive: true }),
  );
};

async function givenFiles(own) {
  if (own.scheme !== "file") return (await fetch(`${own.scheme}://${own.authority}/workspace.json`)).json();
  const bytes = await vscode.workspace.fs.readFile(vscode.Uri.joinPath(own, "workspace.json"));
  return JSON.parse(new TextDecoder().decode(bytes));
}

function memoryFiles() {
  const files = new Map();
  const folders = new Set(["/"]);
  const changes = new vscode.EventEmitter();
  const { FileType, FileChangeType, FileSystemError } = vscode;

  const parentOf = (path) => path.slice(0, path.lastIndexOf("/")) || "/";
  const tell = (uri, type) => changes.fire([{ uri, type }]);
  const need = (uri) => {
    const file = files.get(uri.path);
    if (!file) throw FileSystemError.FileNotFound(uri);
    return file;
  };
  const addFolder = (path) => {
    for (let at = path; at !== "/"; at = parentOf(at)) folders.add(at);
  };
  const put = (path, bytes) => {
    addFolder(parentOf(path));
    const now = Date.now();
    files.set(path, { bytes, ctime: files.get(path)?.ctime ?? now, mtime: now });
  };

  return {
    seed: put,
    onDidChangeFile: changes.event,
    watch: () => new vscode.Disposable(() => {}),
    stat(uri) {
      if (folders.has(uri.path)) return { type: FileType.Directory, ctime: 0, mtime: 0, size: 0 };
      const { bytes, ctime, mtime } = need(uri);
      return { type: FileType.File, ctime, mtime, size: bytes.byteLength };
    },
    readDirectory(uri) {
      const inside = (path) => path !== uri.path && parentOf(path) === uri.path;
      const name = (path) => path.slice(path.lastIndexOf("/") + 1);
      return [
        ...[...folders].filter(inside).map((path) => [name(path), FileType.Directory]),
        ...[...files.keys()].filter(inside).map((path) => [name(path), FileType.File]),
      ];
    },
    readFile: (uri) => need(uri).bytes,
    createDirectory(uri) {
      addFolder(uri.path);
      tell(uri, FileChangeType.Created);
    },
    writeFile(uri, bytes, options) {
      const there = files.has(uri.path);
      if (!there && !options.create) throw FileSystemError.FileNotFound(uri);
      if (there && options.create && !options.overwrite) throw FileSystemError.FileExists(uri);
      put(uri.path, bytes);
      tell(uri, there ? FileChangeType.Changed : FileChangeType.Created);
    },
    delete(uri) {
      const inside = (path) => path === uri.path || path.startsWith(`${uri.path}/`);
      for (const path of [...files.keys()].filter(inside)) files.delete(path);
      for (const path of [...folders].filter(inside)) folders.delete(path);
      tell(uri, FileChangeType.Deleted);
    },
    rename(from, to) {
      put(to.path, need(from).bytes);
      files.delete(from.path);
      changes.fire([
        { uri: from, type: FileChangeType.Deleted },
        { uri: to, type: FileChangeType.Created },
      ]);
    },
  };
}
