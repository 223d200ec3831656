/**
 * Whole pieces of text to start from, beside the blocks that statements bring with them: offered where a line of the file may begin.
 */
import { lengthIn } from "../../grammar/example.ts";
import starts from "./starts.json" with { type: "json" };

interface Start {
  label: string;
  /** The word it begins with, which brings it up. */
  word: string;
  about: string;
  /** In the form of a client's snippet. */
  snippet: string;
  /** As it is when nothing is filled in. */
  text: string;
}

/** All of them, their lengths in a file's unit. */
export const startsIn = (unit: string): Start[] =>
  starts.map(({ lines, ...rest }) => {
    let stop = 1;
    const written = lines.map((line) =>
      line.replace(/<([^>]*)>/g, (_, given: string) => {
        const length = /^(\d+) mm$/.exec(given)?.[1];
        return `\${${stop++}:${length === undefined ? given : lengthIn(Number(length), unit)}}`;
      }),
    );
    const snippet = [...written, "$0"].join("\n");
    return { ...rest, snippet, text: snippet.replace(/\$\{\d+:([^}]*)\}/g, "$1").replace("$0", "") };
  });
