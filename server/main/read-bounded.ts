/**
 * Reading from disk with a bound: so many bytes at most, whatever the size is said to be, and never waiting for somebody to write.
 */
import { closeSync, constants, fstatSync, openSync, readSync, type Stats } from "node:fs";

type Bounded = { bytes: Buffer; stat: Stats } | { not: "a file" | "short enough"; folder: boolean };

/** The descriptor of standard input. */
export const STANDARD_INPUT = 0;

const CHUNK = 64 * 1024;

/** An ordinary file's bytes, or why there are none. Throws the system's errors. */
export function readBounded(path: string, most: number): Bounded {
  // A pipe without a writer, or a log that waits for its next line, must not hold the program up.
  const file = openSync(path, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
  try {
    const stat = fstatSync(file);
    if (!stat.isFile()) return { not: "a file", folder: stat.isDirectory() };
    const bytes = stat.size > most ? undefined : upTo(most, file);
    return bytes ? { bytes, stat } : { not: "short enough", folder: false };
  } finally {
    closeSync(file);
  }
}

/** All that is to be read, or nothing when that is more than `most`. */
export function upTo(most: number, file: number): Buffer | undefined {
  const chunks: Buffer[] = [];
  for (let length = 0; length <= most; ) {
    const chunk = Buffer.allocUnsafe(CHUNK);
    const read = readSome(file, chunk);
    if (read === 0) return Buffer.concat(chunks, length);
    chunks.push(chunk.subarray(0, read));
    length += read;
  }
  return undefined;
}

/** A pipe that somebody else has set not to wait is asked again until there is something, or nothing more to come. */
function readSome(file: number, chunk: Buffer): number {
  for (;;) {
    try {
      return readSync(file, chunk, 0, CHUNK, null);
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== "EAGAIN" || file !== STANDARD_INPUT) throw error;
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 5);
    }
  }
}
