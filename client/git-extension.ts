/**
 * Versions of a file by way of VS Code's own git extension, where there is one: on the web there is none.
 */
import { extensions, type Uri } from "vscode";

interface GitCommit {
  hash: string;
  message: string;
  commitDate?: Date;
}

/** The part of the built-in extension's interface, version 1, that is used here. */
interface GitRepository {
  log(options: { maxEntries: number; path: string }): Promise<GitCommit[]>;
  show(ref: string, path: string): Promise<string>;
}

interface GitApi {
  getRepository(uri: Uri): GitRepository | null;
}

interface Commit {
  hash: string;
  /** Its date and the first line of its message. */
  label: string;
}

export interface FileVersions {
  /** The commits that changed the file, the newest first. */
  commits(most: number): Promise<Commit[]>;
  /** The file at a commit; nothing where it is not there. */
  textAt(ref: string): Promise<string | undefined>;
}

/** The versions of a file; nothing where it belongs to no repository that VS Code knows. */
export async function versionsOf(uri: Uri): Promise<FileVersions | undefined> {
  const extension = extensions.getExtension<{ getAPI(version: 1): GitApi }>("vscode.git");
  if (!extension || uri.scheme !== "file") return undefined;
  try {
    const git = extension.isActive ? extension.exports : await extension.activate();
    const repository = git.getAPI(1).getRepository(uri);
    if (!repository) return undefined;
    return {
      async commits(most) {
        const found = await repository.log({ maxEntries: most, path: uri.fsPath }).catch(() => []);
        return found.map(({ hash, message, commitDate }) => {
          const date = commitDate?.toISOString().slice(0, 10) ?? hash.slice(0, 9);
          return { hash, label: `${date} ${message.split("\n")[0]}` };
        });
      },
      textAt: (ref) => repository.show(ref, uri.fsPath).catch(() => undefined),
    };
  } catch {
    return undefined;
  }
}
