/**
 * Files of this machine from disk, those of any other kind of folder by way of the client, as an editor on the desktop has both.
 */
import type { Files } from "./files.ts";

const isOnDisk = (uri: string): boolean => /^file:/i.test(uri);

/** `disk` answers for every `file:` address, also with nothing; `client` for all others. */
export function filesOfBoth(disk: Files, client: Files): Files {
  const of = (uri: string) => (isOnDisk(uri) ? disk : client);
  return {
    read: (uri) => of(uri).read(uri),
    forget: (uri) => of(uri).forget(uri),
    async list(folders) {
      const others = folders.filter((folder) => !isOnDisk(folder));
      const found = await disk.list(folders.filter(isOnDisk));
      if (others.length === 0) return found;
      return [...found, ...(await client.list(others)).filter((uri) => !isOnDisk(uri))];
    },
    pending: () => client.pending?.(),
    onArrival: (listener) => client.onArrival?.(listener),
  };
}
