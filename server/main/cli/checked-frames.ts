/**
 * The messages of the language server protocol as they come in, each after a header that says how long it is. Passed on unchanged; once a
 * header cannot be understood, nothing that follows can be, and waiting for it would be silence for ever.
 */
import { Transform } from "node:stream";

/** Longest header, and longest message, bytes. */
const LONGEST_HEADER = 4096;
const LONGEST_MESSAGE = 256 * 1024 * 1024;

/** A stream to pipe the messages through; `bad` hears in one sentence why a header cannot be understood, and no more is passed on. */
export function checkedFrames(bad: (because: string) => void): Transform {
  let header = "";
  let left = 0;
  let ended = false;

  function fail(because: string) {
    ended = true;
    bad(because);
  }

  return new Transform({
    transform(chunk: Buffer, _encoding, passOn) {
      for (let at = 0; at < chunk.length && !ended; ) {
        if (left > 0) {
          const taken = Math.min(left, chunk.length - at);
          left -= taken;
          at += taken;
          continue;
        }
        header += String.fromCharCode(chunk[at++]!);
        if (header.endsWith("\r\n\r\n")) {
          const length = /^content-length:[ \t]*(\d{1,10})[ \t]*\r$/im.exec(header)?.[1];
          header = "";
          if (length === undefined) fail("a message came without a Content-Length that is a number");
          else if (Number(length) > LONGEST_MESSAGE) fail(`a message of ${length} bytes was announced`);
          else left = Number(length);
        } else if (header.length > LONGEST_HEADER) fail("a message came without a header");
      }
      passOn(null, ended ? null : chunk);
    },
  });
}
