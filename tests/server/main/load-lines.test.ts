/**
 * `load`, `strength` and `climate` through the language server, in inches and in a chair that starts from another: half-typed lines,
 * hovers with what is worked out late, renaming, definitions, layout.
 */
import { beforeAll, describe, expect, it } from "vitest";
import type {
  CompletionItem,
  Diagnostic,
  Hover,
  Location,
  MarkupContent,
  TextEdit,
  WorkspaceEdit,
} from "vscode-languageserver-types";
import { services } from "../../../server/main/services.ts";
import { type Connected, connect, noFiles } from "./connected.ts";

const base = `units in
timber white-ash moisture 9%
joint plain { tenon thick 5/16in, long 1in; shoulders top 3/8in, bottom 1/4in; mitre }
post front pair { section 1 5/8in x 1 5/8in; foot out 8in, back 3/4in; height 17in }
post back pair { section 1 5/8in x 1 5/8in; foot out 8in, back 16 1/2in; height 34in }
rail seat-front { across front; section 7/8in x 2 3/8in; up 16 1/2in; joined plain }
rail seat-side pair { from front to back; section 7/8in x 2 3/8in; up 16 1/2in; joined plain }
rail seat-back { across back; section 7/8in x 2 3/8in; up 16 1/2in; joined plain }
rail crest { across back; section 7/8in x 2 3/8in; up 33in; joined plain }
seat board { on seat-front, seat-side, seat-back; thick 3/4in }
`;
const loads = `strength public
climate humidity 30% to 60%
# Leant on
load lean {
  push 60lbf back on crest at 4 1/2in
  push 120lbf down on seat at out 2in, back 8in
  times 2000
}
load haul {
  push 100lbf up on seat
}
`;

let c: Connected;
beforeAll(async () => {
  const read = (address: string) => (address.endsWith("/base.chair") ? base + loads : undefined);
  c = await connect(services, {
    files: { ...noFiles, read },
    capabilities: { textDocument: { hover: { contentFormat: ["markdown"] } } },
  });
});

let opened = 0;
/** A document with the text, the cursor taken out; where it was. */
function at(marked: string, name = `chair-${++opened}`) {
  const offset = marked.indexOf("|");
  const text = marked.replace("|", "");
  const uri = `file:///mess/${name}.chair`;
  c.open(uri, text);
  const lines = text.slice(0, offset).split("\n");
  return {
    text,
    place: {
      textDocument: { uri },
      position: { line: lines.length - 1, character: lines.at(-1)?.length ?? 0 },
    },
  };
}

const errorsOf = async (uri: string): Promise<Diagnostic[]> =>
  (await c.diagnosticsWhen((each) => each.uri === uri)).diagnostics.filter(({ severity }) => severity === 1);

const push = "  push 60lbf ";
const halfTyped: [line: string, offered: string[], never: string[]][] = [
  ["load pull {\n  |\n}", ["push", "stops", "times"], ["rail"]],
  ["load pull {\n  pu|\n}", ["push"], ["post"]],
  ["load pull {\n  push 60|\n}", ["lbf", "N", "kN"], ["mm", "deg", "kg"]],
  [`load pull {\n${push}|\n}`, ["down", "up", "forward", "back", "out", "in", "left", "right"], ["on"]],
  [`load pull {\n${push}back |\n}`, ["on"], ["crest"]],
  [`load pull {\n${push}back on |\n}`, ["seat", "crest", "seat-side", "back"], ["plain", "lean"]],
  [`load pull {\n${push}down on seat at |\n}`, ["out", "back"], []],
  [`load pull {\n${push}down on seat at out 2in, |\n}`, ["back"], ["out"]],
  [`load pull {\n${push}back on crest\n  stops |\n}`, ["front", "back", "left", "right"], ["up"]],
  ["strength |", ["domestic", "public", "severe"], ["push"]],
  ["strength pub|", ["public"], ["push"]],
  ["climate |", ["humidity", "moisture"], ["push"]],
  ["climate humidity 30|", ["%"], ["mm", "N"]],
  ["climate humidity 30% |", ["to"], ["%"]],
];

describe.each([
  ["of the chair itself", base],
  ["of one that starts from another", 'units in\nlike "base.chair"\n'],
])("half-typed lines %s", (_, head) => {
  it.each(halfTyped)("%j", async (line, offered, never) => {
    const { place } = at(`${head}${line}\n`);
    const items = await c.client.sendRequest<CompletionItem[]>("textDocument/completion", place);
    const labels = items.map(({ label }) => label);
    expect(labels).toEqual(expect.arrayContaining(offered));
    expect(labels.filter((label) => never.includes(label))).toEqual([]);
    // Nothing but what is half-typed is at fault.
    const first = head.split("\n").length - 1;
    for (const { range } of await errorsOf(place.textDocument.uri))
      expect(range.start.line).toBeGreaterThanOrEqual(first);
  });
});

describe("wrong lines", () => {
  it.each([
    ["load pull {\n  push 60 back on crest\n}", /lbf|N/],
    ["load pull {\n  push 60lb back on crest\n}", /^This is a weight.* weighs 60 lbf \(267 N\)/],
    ["load pull {\n  push 60lbf back on crst\n}", /crest/],
    ["load pull {\n  push 60lbf out on crest\n}", /pair|side/],
    ["load pull {\n  times 0\n  push 60lbf back on crest\n}", /times|1/],
    ["strength hard", /`domestic`, `public` or `severe`/],
    ["climate humidity 60% to 30%", /ends before it begins/],
    ["climate humidity 30 to 60%", /write it on both/],
  ])("%j has one finding, on itself", async (line, says) => {
    const { place } = at(`|${base}${line}\n`);
    const errors = await errorsOf(place.textDocument.uri);
    expect(errors.map(({ message }) => message)).toEqual([expect.stringMatching(says)]);
    expect(errors[0]?.range.start.line).toBeGreaterThanOrEqual(base.split("\n").length - 1);
  });
});

describe("hovers", () => {
  /** Asked again until the hover says it: what is late comes after the findings. */
  async function toldOf(marked: string, part: string): Promise<string> {
    const { place } = at(marked);
    for (;;) {
      const told = await c.client.sendRequest<Hover | null>("textDocument/hover", place);
      const says = (told?.contents as MarkupContent | undefined)?.value ?? "";
      if (says.includes(part)) return says;
    }
  }

  it("of a load tell its pushes in the file's units, and what they do once that is worked out", async () => {
    const says = await toldOf(base + loads.replace("load lean", "load le|an"), "hardest");
    expect(says).toContain("60 lbf (267 N) back on crest, 4 1/2 in along");
    expect(says).toContain("120 lbf (534 N) down on the seat, 2 in out, 8 in back");
    expect(says).toMatch(/Works \S+.* hardest, at \d\.\d\d/);
    expect(says.split("\n").filter((line) => line !== "").length).toBeLessThanOrEqual(12);
    expect(await toldOf(base + loads.replace("load haul", "load ha|ul"), "lifted")).toMatch(
      /lifted off the floor: what pushes it up is \d+ lbf \(\d+ N\) more than it weighs/,
    );
  });

  it("of the words have examples in the file's units", async () => {
    expect(await toldOf(base + loads.replace("push 60lbf", "pu|sh 60lbf"), "push")).toContain(
      "push 110lbf down on seat at out 4 3/4, back 6",
    );
    expect(await toldOf(base + loads.replace("strength", "stren|gth"), "strength")).toContain("domestic");
    expect(await toldOf(base + loads.replace("humidity", "humi|dity"), "humidity")).toContain("air");
  });
});

describe("names", () => {
  it("of loads and what they push are renamed and found, from a push too", async () => {
    const { text, place } = at(base + loads.replace("on crest at", "on cr|est at"), "renamed");
    const edit = await c.client.sendRequest<WorkspaceEdit>("textDocument/rename", {
      ...place,
      newName: "comb",
    });
    expect(edit.changes?.[place.textDocument.uri]).toHaveLength(2);
    const found = await c.client.sendRequest<Location[]>("textDocument/definition", place);
    const line = text.split("\n").findIndex((each) => each.startsWith("rail crest"));
    expect([found].flat()[0]?.range.start.line).toBe(line);
    const uses = await c.client.sendRequest<Location[]>("textDocument/references", {
      ...place,
      context: { includeDeclaration: true },
    });
    expect(uses).toHaveLength(2);
  });

  it("are laid out, fractions of an inch as they are", async () => {
    const { text, place } = at(
      "|units in\nload lean {\npush   60lbf back on crest at 4 1/2\n  stops  back , front\n}\n",
    );
    const edits = await c.client.sendRequest<TextEdit[]>("textDocument/formatting", {
      textDocument: place.textDocument,
      options: { tabSize: 2, insertSpaces: true },
    });
    const lines = text.split("\n");
    const offset = ({ line, character }: { line: number; character: number }) =>
      lines.slice(0, line).reduce((sum, each) => sum + each.length + 1, 0) + character;
    const tidy = edits
      .map(({ range, newText }) => ({ start: offset(range.start), end: offset(range.end), newText }))
      .sort((a, b) => b.start - a.start)
      .reduce((all, { start, end, newText }) => all.slice(0, start) + newText + all.slice(end), text);
    expect(tidy).toBe("units in\nload lean {\n  push 60lbf back on crest at 4 1/2\n  stops back, front\n}\n");
  });
});
