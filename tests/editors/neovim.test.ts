/**
 * The packaged command line as a language server in another editor: Debian's Neovim 0.7 over standard streams.
 */
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { root } from "../house/project-files.ts";

const sample = readFileSync(join(root, "samples", "boathouse-mess-chair.chair"), "utf8");
const broken = sample.replace("foot out 175, back 452", "foot out 175, bak 452");

let folder: string;
const answers = new Map<string, unknown>();

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "seatwright-neovim-"));
  const file = join(folder, "mess.chair");
  writeFileSync(file, broken);
  const ran = spawnSync(
    "nvim",
    ["--headless", "-u", "NONE", "-S", join(root, "tests", "editors", "neovim.lua")],
    {
      env: {
        ...process.env,
        SEATWRIGHT_SERVER: join(root, "dist", "cli.js"),
        SEATWRIGHT_FILE: file,
        XDG_STATE_HOME: folder,
      },
      encoding: "utf8",
      timeout: 90_000,
    },
  );
  if (ran.error) throw ran.error;
  for (const line of `${ran.stdout}\n${ran.stderr}`.split("\n")) {
    if (!line.startsWith("{")) continue;
    const { name, value } = JSON.parse(line);
    answers.set(name, value);
  }
}, 100_000);

afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe("Neovim over standard streams", () => {
  it("ran to its end", () => {
    expect(answers.get("fault")).toBeUndefined();
    expect([...answers.keys()]).toContain("text");
  });

  it("gets the faults, on their lines", () => {
    const line = broken.slice(0, broken.indexOf("bak 452")).split("\n").length - 1;
    expect(answers.get("diagnostics")).toContainEqual(
      expect.objectContaining({
        line,
        code: "unknown-word",
        message: expect.stringContaining("did you mean `back`"),
      }),
    );
  });

  it("hovers", () => {
    expect(JSON.stringify(answers.get("hover"))).toContain("6.5°");
  });

  it("completes names of joints", () => {
    expect(JSON.stringify(answers.get("completion"))).toContain("crest-tenon");
  });

  it("is refused a rename in broken text, and given it once mended", () => {
    expect(answers.get("rename refused")).toBe(true);
    expect(answers.get("after mending")).toBe(0);
    expect(answers.get("text")).toBe(`${sample.trimEnd().replaceAll("seat-front", "front-rail")}`);
  });
});
