import { describe, expect, it } from "vitest";
import type { Hover, MarkupContent } from "vscode-languageserver-types";
import { services } from "../../../server/main/services.ts";
import { frame } from "../editor/frame.ts";
import { connect } from "./connected.ts";

const uri = "file:///mess/chair.chair";
const text = `${frame}require seat.slope at most 4deg\n`;
const position = { line: text.split("\n").length - 2, character: 12 };

async function hovered(patience: number): Promise<string> {
  const c = await connect(services, { patience });
  c.open(uri, text);
  const told = await c.client.sendRequest<Hover>("textDocument/hover", { textDocument: { uri }, position });
  expect(c.logged).toEqual([]);
  return (told.contents as MarkupContent).value;
}

describe("hover on a value", () => {
  it("tells the value and then what it depends on", async () => {
    const says = await hovered(60_000);
    expect(says).toContain("Slope of the sitting surface");
    expect(says).toMatch(/What it depends on most:\n\n- 1 mm on `up` of `seat-(front|back)`: /);
    expect(says).not.toContain("Only the nearest");
  });

  it("tells the value alone, or what is known by then and says so, when there was no time", async () => {
    const says = await hovered(0);
    expect(says).toContain("Slope of the sitting surface");
    expect(says.includes("Only the nearest figures")).toBe(says.includes("What it depends on most"));
  });

  it("is answered from the text of its version although that is typed in meanwhile", async () => {
    const c = await connect(services, { patience: 60_000 });
    c.open(uri, text);
    const asked = c.client.sendRequest<Hover>("textDocument/hover", { textDocument: { uri }, position });
    c.change(uri, 2, text.replace("at most 4deg", "at most 3deg"));
    expect(((await asked).contents as MarkupContent).value).toContain("seat.slope");
    await c.diagnosticsWhen((published) => published.version === 2);
  });
});
