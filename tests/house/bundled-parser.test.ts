/**
 * The bundles swap the small functions that the parser's library is built on for others of the same names. Looks at the command line as
 * `npm test` or `npm run build` left it: it must find the very same things as the sources do, in whole and in damaged texts.
 */
import { execFileSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { finish } from "../../grammar/steps.ts";
import { resolveNamed } from "../../server/main/named-files.ts";
import { services } from "../../server/main/services.ts";
import { messageOf } from "../../server/mends/words.ts";
import { studied } from "../check.ts";
import { root } from "./project-files.ts";

const samples = join(root, "samples");
const folder = mkdtempSync(join(tmpdir(), "seatwright-"));
afterAll(() => rmSync(folder, { recursive: true }));

const texts = Object.fromEntries(
  readdirSync(samples).map((file) => [file, readFileSync(join(samples, file), "utf8")]),
);
const mess = texts["boathouse-mess-chair.chair"] ?? "";
for (let k = 0; k < 8; k++) {
  const at = Math.floor(((k + 0.5) * mess.length) / 8);
  texts[`damaged-${k}.chair`] = mess.slice(0, at) + mess.slice(at + 1 + (k % 7));
}

interface Output {
  files: { file: string; findings: { code: string; message: string }[] }[];
}

function bundled(files: readonly string[]): Output {
  const args = [join(root, "dist", "cli.js"), "check", "--format", "json", ...files];
  try {
    return JSON.parse(execFileSync(process.execPath, args, { encoding: "utf8", maxBuffer: 1 << 26 }));
  } catch (error) {
    // It ends with 1 where it finds errors.
    return JSON.parse((error as { stdout: string }).stdout);
  }
}

/** As the command tells them: with what puts each right. */
function told(text: string): { code: string; message: string }[] {
  const study = studied(text, texts);
  const read = (address: string) => texts[address.slice(address.lastIndexOf("/") + 1)];
  finish(services.mend(study, { resolve: resolveNamed, read }, study.problems));
  return study.problems.map((problem) => ({ code: problem.code, message: messageOf(problem) }));
}

/** Samples of each way of writing: in mm, in inches, on a solid seat, from another file. */
const looked = Object.keys(texts).filter((name) => /^(damaged|boathouse-mess|joined|slab|small)/.test(name));

describe("the bundled parser", () => {
  it("finds what the sources find", () => {
    for (const [name, text] of Object.entries(texts)) writeFileSync(join(folder, name), text);
    const { files } = bundled(looked.map((name) => join(folder, name)));
    expect(files).toHaveLength(looked.length);
    for (const { file, findings } of files) {
      const name = file.slice(file.lastIndexOf("/") + 1);
      const expected = told(texts[name] ?? "");
      expect(
        findings.map(({ code, message }) => ({ code, message })),
        name,
      ).toEqual(expected);
    }
    expect(files.flatMap(({ findings }) => findings).length).toBeGreaterThan(4);
  }, 60_000);
});
