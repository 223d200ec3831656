/**
 * SARIF against the standard's own JSON schema (OASIS SARIF 2.1.0, sarif-2.1.0-rtm.5.json, draft 04), and workflow commands against
 * a reader that undoes their escapes.
 */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import Ajv from "ajv-draft-04";
import addFormats from "ajv-formats";
import type { Log } from "sarif";
import { describe, expect, it } from "vitest";
import { backFrame } from "../../../../tests/plain-frame.ts";
import { chairs, messChair, mistyped, seatwright } from "./bench.ts";

const raked = backFrame("rake 9deg above 450");
const accepting = `${raked}accept rake-over-limit because "for the stove end: leant in, not sat at"\n`;

const path = chairs({
  "raked.chair": raked,
  "moved.chair": `# One more line, and another figure.\n${raked.replace("rake 9deg", "rake 10deg")}`,
  "accepting.chair": accepting,
  "stool.chair": mistyped,
  "a,b%c:d.chair": mistyped,
});

const schema = JSON.parse(
  readFileSync(
    createRequire(import.meta.url).resolve("@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json"),
    "utf8",
  ),
);
const ajv = new Ajv({ strict: false, allErrors: true, unicodeRegExp: false });
addFormats(ajv);
const fits = ajv.compile(schema);

function sarif(...files: string[]): Log {
  const { out } = seatwright("check", ...files, "--format", "sarif");
  const log = JSON.parse(out) as Log;
  fits(log);
  expect(fits.errors ?? []).toEqual([]);
  return log;
}

describe("check --format sarif", () => {
  it("fits the standard's schema, which does refuse what does not", () => {
    const log = sarif(path("raked.chair"), path("accepting.chair"), path("stool.chair"), path("gone.chair"));
    const [run] = log.runs;
    expect(run?.tool.driver).toMatchObject({ name: "Seatwright" });
    expect(run?.invocations?.[0]?.executionSuccessful).toBe(false);
    expect(fits({ ...log, version: "2.0.0" })).toBe(false);
    expect(fits({ ...log, runs: [{ ...run, extra: 1 }] })).toBe(false);
  });

  it("gives each rule with its help, and results that point to it", () => {
    const [run] = sarif(path("raked.chair")).runs;
    const rules = run?.tool.driver.rules ?? [];
    for (const { ruleId, ruleIndex, level, message, locations } of run?.results ?? []) {
      const rule = rules[ruleIndex ?? -1];
      expect(rule?.id).toBe(ruleId);
      expect(rule?.help?.text).toContain("Source: ");
      expect(["error", "warning", "note"]).toContain(level);
      expect(message.text).toBeTruthy();
      expect(locations?.[0]?.physicalLocation?.region?.startLine).toBeGreaterThan(0);
    }
    expect(run?.results?.map(({ ruleId }) => ruleId)).toContain("rake-over-limit");
  });

  it("shows what the file accepts as suppressed, with the reason", () => {
    const of = (file: string) =>
      sarif(path(file)).runs[0]?.results?.find(({ ruleId }) => ruleId === "rake-over-limit");
    expect(of("raked.chair")?.suppressions).toBeUndefined();
    expect(of("accepting.chair")?.suppressions).toEqual([
      { kind: "inSource", status: "accepted", justification: "for the stove end: leant in, not sat at" },
    ]);
  });

  it("keeps fingerprints while lines move and figures change, each its own", () => {
    const prints = (file: string) =>
      sarif(path(file)).runs[0]?.results?.map(({ ruleId, partialFingerprints }) => [
        ruleId,
        partialFingerprints?.["chairFact/v1"],
      ]) ?? [];
    const [before, after] = [
      new Map(prints("raked.chair") as [string, string][]),
      new Map(prints("moved.chair") as [string, string][]),
    ];
    expect(before.get("rake-over-limit")).toMatch(/^[0-9a-f]{32}$/);
    expect(after.get("rake-over-limit")).toBe(before.get("rake-over-limit"));
    const all = prints("raked.chair").map(([, print]) => print);
    expect(new Set(all).size).toBe(all.length);
  });

  it("names files by addresses that hold elsewhere", () => {
    const inside = sarif("tests/outside/../../samples/boathouse-mess-chair.chair", path("raked.chair"))
      .runs[0];
    const uris =
      inside?.results?.map(({ locations }) => locations?.[0]?.physicalLocation?.artifactLocation) ?? [];
    expect(uris).toContainEqual({ uri: "samples/boathouse-mess-chair.chair", uriBaseId: "SRCROOT" });
    const outside = uris.filter((each) => each?.uriBaseId === undefined);
    expect(outside.length).toBeGreaterThan(0);
    expect(outside.every((each) => each?.uri?.startsWith("file:///"))).toBe(true);
    const seen = JSON.stringify(inside?.originalUriBaseIds);
    expect(seen).not.toContain("file:");
  });

  it("writes into a file", () => {
    const out = path("log.sarif");
    expect(seatwright("check", path("raked.chair"), "--format", "sarif", "-o", out).out).toBe("");
    expect(JSON.parse(readFileSync(out, "utf8"))).toMatchObject({ version: "2.1.0" });
  });
});

describe("check --format annotations", () => {
  const read = (line: string) => {
    const [, command, properties = "", message = ""] = /^::(\w+) ([^:]*)::(.*)$/.exec(line) ?? [];
    const plain = (text: string) =>
      text.replace(/%(25|0D|0A|3A|2C)/g, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)));
    const pairs = properties.split(",").map((pair) => pair.split("=") as [string, string]);
    return {
      command,
      message: plain(message),
      ...Object.fromEntries(pairs.map(([name, value]) => [name, plain(value)])),
    };
  };

  it("gives one line a finding, with its place", () => {
    const { out, code } = seatwright("check", path("a,b%c:d.chair"), "--format", "annotations");
    const lines = out.trimEnd().split("\n").map(read);
    expect(code).toBe(1);
    expect(lines[0]).toMatchObject({
      command: "error",
      line: "3",
      endLine: "3",
      col: "3",
      endColumn: "10",
      title: "unknown-word",
      file: path("a,b%c:d.chair"),
    });
    expect(lines[0]?.message).toContain("section");
  });

  it("gives nothing for a chair without findings, and an error for a file that is not there", () => {
    expect(seatwright("check", messChair, "--format", "annotations").code).toBe(0);
    const { out, code } = seatwright("check", path("gone.chair"), "--format", "annotations");
    expect([code, read(out.trimEnd()).message]).toEqual([2, "there is no such file."]);
  });
});
