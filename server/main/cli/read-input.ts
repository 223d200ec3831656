import { readFileSync, statSync } from "node:fs";
import { resolve } from "node:path";
import { URI } from "vscode-uri";
import { LARGEST } from "../files.ts";

export type Input = { file: string; address: string; text: string } | { file: string; refused: string };

/** A file named on the command line, or in one line why it cannot be used. */
export function readInput(file: string): Input {
  try {
    const stat = statSync(file);
    if (stat.isDirectory()) return { file, refused: "this is a folder; name the files in it" };
    if (!stat.isFile()) return { file, refused: "this is no ordinary file" };
    if (stat.size > LARGEST)
      return {
        file,
        refused: `this file is ${megabytes(stat.size)} MB; at most ${megabytes(LARGEST)} MB are read`,
      };
    const bytes = readFileSync(file);
    const text = asText(bytes);
    if (text === undefined) return { file, refused: "this is not a text file" };
    return { file, address: URI.file(resolve(file)).toString(), text };
  } catch (error) {
    return { file, refused: whyNot(error as NodeJS.ErrnoException) };
  }
}

function asText(bytes: Uint8Array): string | undefined {
  if (bytes.includes(0)) return undefined;
  try {
    return new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

function whyNot(error: NodeJS.ErrnoException): string {
  switch (error.code) {
    case "ENOENT":
    case "ENOTDIR":
      return "there is no such file";
    case "EACCES":
    case "EPERM":
      return "you have no permission to read this file";
    default:
      return `this file cannot be read (${error.code ?? error.message})`;
  }
}

function megabytes(bytes: number): string {
  return (bytes / 1024 / 1024).toFixed(1).replace(/\.0$/, "");
}
