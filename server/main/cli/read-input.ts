import { resolve } from "node:path";
import { URI } from "vscode-uri";
import { LARGEST } from "../files.ts";
import { readBounded, STANDARD_INPUT, upTo } from "../read-bounded.ts";
import { asText } from "../text.ts";

export type Input = { file: string; address: string; text: string } | { file: string; refused: string };

/** The address of a file. */
export const addressOf = (file: string): string => URI.file(resolve(file)).toString();

/** What stands for the text that comes in on standard input. */
export const PIPED = "-";

/**
 * A file named on the command line, or in one line why it cannot be used. `-` is standard input, whose text stands in the folder that
 * the command is given in.
 */
export function readInput(file: string): Input {
  try {
    const piped = file === PIPED;
    const found = piped ? { bytes: upTo(LARGEST, STANDARD_INPUT) } : readBounded(file, LARGEST);
    if ("not" in found && found.not === "a file")
      return {
        file,
        refused: found.folder ? "this is a folder; name the files in it" : "this is not an ordinary file",
      };
    if (!("bytes" in found) || found.bytes === undefined)
      return { file, refused: `at most ${LARGEST / 1024 / 1024} MB are read, and this is longer` };
    const text = asText(found.bytes);
    if (text === undefined) return { file, refused: "this is not a text file" };
    return { file, address: addressOf(piped ? "standard-input.chair" : file), text };
  } catch (error) {
    return { file, refused: whyNot(error as NodeJS.ErrnoException) };
  }
}

function whyNot(error: NodeJS.ErrnoException): string {
  switch (error.code) {
    case "ENOENT":
    case "ENOTDIR":
      return "there is no such file";
    case "EISDIR":
      return "this is a folder; name the files in it";
    case "EAGAIN":
      return "nothing can be read here now";
    case "EACCES":
    case "EPERM":
      return "you have no permission to read this file";
    default:
      return `this file cannot be read (${error.code ?? error.message})`;
  }
}
