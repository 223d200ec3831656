import { describe, expect, it } from "vitest";
import type { Hover, MarkupContent } from "vscode-languageserver-types";
import {
  RANGE,
  type RangeResult,
  REACH,
  type ReachResult,
  VALUES,
  type ValuesResult,
} from "../../../server/main/protocol.ts";
import { services } from "../../../server/main/services.ts";
import { edited } from "../../../server/range/choice.ts";
import { plain, studied } from "../range/files.ts";
import { connect } from "./connected.ts";

const uri = "file:///mess/chair.chair";
const text = plain("trim back 10\nrequire seat.height at most 463.3\n");

describe("requests about ranges", { timeout: 120_000 }, () => {
  it("say how far a value may go, for the version it holds for", async () => {
    const c = await connect(services);
    c.open(uri, text);
    const range = await c.client.sendRequest<RangeResult>(RANGE, { uri, name: "seat-height" });
    expect(range).toMatchObject({ name: "seat-height", version: 1, low: 400, high: 480 });
    expect(range.bands.some(({ label }) => label.startsWith("requirement-not-met of seat.height"))).toBe(
      true,
    );
    expect(range.words).toContain("25 places tried");
    expect(await c.client.sendRequest(RANGE, { uri, name: "no-such" })).toBeNull();
    expect(await c.client.sendRequest(RANGE, { uri: "file:///mess/other.chair", name: "x" })).toBeNull();
    expect(await c.client.sendRequest(RANGE, {})).toBeNull();
  });

  it("are dropped when the text moves", async () => {
    const c = await connect(services);
    c.open(uri, text);
    await c.diagnosticsWhen((published) => published.version === 1);
    const asked = c.client.sendRequest<RangeResult | null>(RANGE, { uri, name: "seat-height" });
    c.change(uri, 2, text.replace("463.3", "470"));
    const answer = await asked;
    expect(answer === null || answer.version === 1).toBe(true);
    const again = await c.client.sendRequest<RangeResult>(RANGE, { uri, name: "seat-height" });
    expect(again.version).toBe(2);
  });

  it("list the values, and the choices that reach a figure with edits of that version", async () => {
    const c = await connect(services);
    c.open(uri, text);
    const values = await c.client.sendRequest<ValuesResult>(VALUES, { uri });
    expect(values.find(({ name }) => name === "seat.slope")).toMatchObject({ printed: "1.4°" });
    const found = await c.client.sendRequest<ReachResult>(REACH, { uri, asked: "seat.slope = 2deg" });
    const way = found.ways.find(({ title }) => title.startsWith("trim.back"));
    expect(way).toMatchObject({ title: "trim.back: 10 mm to 14", met: true });
    expect(studied(edited(text, way?.edits ?? [])).design.trims[0]?.length.value).toBe(14);
    const refused = await c.client.sendRequest<ReachResult>(REACH, { uri, asked: "seat.slope = 2mm" });
    expect(refused.refused).toContain("needs an angle");
  });
});

describe("hover on a value with a range", { timeout: 120_000 }, () => {
  it("says in a line where nothing is found", async () => {
    const c = await connect(services, { patience: 60_000 });
    c.open(uri, text);
    const line = text.split("\n").findIndex((each) => each.startsWith("let seat-height"));
    const told = await c.client.sendRequest<Hover>("textDocument/hover", {
      textDocument: { uri },
      position: { line, character: 6 },
    });
    expect((told.contents as MarkupContent).value).toContain("25 places tried");
  });
});
