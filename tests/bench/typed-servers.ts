/**
 * The servers that are typed into: ours, and three for other languages, each with a text of the same size and a number in it to retype.
 */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { chairText } from "./chairs.ts";
import { jsonText, styleText, yamlText } from "./neighbours.ts";

export interface TypedServer {
  name: "chair" | "css" | "json" | "yaml";
  /** The server's program and its arguments. */
  program: string[];
  languageId: string;
  extension: string;
  text: string;
  /** Where a number is typed anew at each keystroke: the words before it, and how long it is. */
  before: string;
  digits: number;
  /** It draws too. */
  draws?: true;
}

const { resolve } = createRequire(import.meta.url);
const extracted = (name: string) =>
  join(resolve("vscode-langservers-extracted/package.json"), "..", "bin", `vscode-${name}-language-server`);

/** Our server as packaged, with the sample chair or a text of so many bytes, and the others with texts as long. */
export function typedServers(sample: string, bytes?: number): TypedServer[] {
  const chair = bytes === undefined ? readFileSync(sample, "utf8") : chairText(bytes);
  const size = chair.length;
  return [
    {
      name: "chair",
      program: [join("dist", "cli.js"), "--stdio"],
      languageId: "chair",
      extension: "chair",
      text: chair,
      before: "let seat-height = ",
      digits: 3,
      draws: true,
    },
    {
      name: "css",
      program: [extracted("css"), "--stdio"],
      languageId: "css",
      extension: "css",
      text: styleText(size),
      before: "margin: 0px ",
      digits: 1,
    },
    {
      name: "json",
      program: [extracted("json"), "--stdio"],
      languageId: "json",
      extension: "json",
      text: jsonText(size),
      before: '"up": ',
      digits: 3,
    },
    {
      name: "yaml",
      program: [
        join(resolve("yaml-language-server/package.json"), "..", "bin", "yaml-language-server"),
        "--stdio",
      ],
      languageId: "yaml",
      extension: "yaml",
      text: yamlText(size),
      before: "up: ",
      digits: 3,
    },
  ];
}
