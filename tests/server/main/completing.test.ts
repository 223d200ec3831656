import { expect, it } from "vitest";
import type { CompletionItem } from "vscode-languageserver-types";
import { services } from "../../../server/main/services.ts";
import { frame } from "../../plain-frame.ts";
import { connect } from "./connected.ts";

const uri = "file:///mess/chair.chair";

/** The real services, counting the studies that are begun. */
function counted() {
  const begun: string[] = [];
  return {
    begun,
    services: {
      ...services,
      study: (asked: Parameters<typeof services.study>[0]) => {
        begun.push(asked.text);
        return services.study(asked);
      },
    },
  };
}

it("completes from the text as it is and what was known last, without a new study", async () => {
  const { begun, services: counting } = counted();
  const c = await connect(counting, { timing: { wait: 60_000, longest: 60_000 } });
  const asked = (line: number, character: number) =>
    c.client.sendRequest<CompletionItem[]>("textDocument/completion", {
      textDocument: { uri },
      position: { line, character },
    });
  const whole = frame();
  c.open(uri, whole);
  // Nothing is known yet, so this one waits for the study.
  const lines = whole.split("\n").length - 1;
  expect((await asked(lines, 0)).map(({ label }) => label)).toContain("rail");
  expect(begun).toEqual([whole]);

  c.change(uri, 2, `${whole}rail low {\n  across \n}\n`);
  const names = (await asked(lines + 1, 9)).map(({ label }) => label);
  expect(names).toContain("front");
  expect(names).toContain("back");
  c.change(uri, 3, `${whole}require \n`);
  const values = (await asked(lines, 8)).map(({ label }) => label);
  expect(values).toContain("seat.height");
  expect(begun).toEqual([whole]);
});

it("tells libraries from chairs by what they declare, open or not, and offers them first after `use`", async () => {
  const disk: Record<string, string> = {
    "file:///mess/a.chair": frame(),
    "file:///mess/b.chair": 'like "a.chair"\nlet deep = 40\n',
    "file:///mess/c.chair": "joint tight {\n  tenon thick 8, long 26\n}\nlet deep = 40\n",
  };
  const files = {
    read: (address: string) => disk[address],
    forget: () => {},
    list: async () => Object.keys(disk),
  };
  const c = await connect(services, { files });
  const offered = async (text: string, version: number) => {
    if (version === 1) c.open(uri, text);
    else c.change(uri, version, text);
    const items = await c.client.sendRequest<CompletionItem[]>("textDocument/completion", {
      textDocument: { uri },
      position: { line: 0, character: text.length - 1 },
    });
    return items
      .sort((a, b) => ((a.sortText ?? "") < (b.sortText ?? "") ? -1 : 1))
      .map(({ label, detail }) => [label, detail]);
  };
  expect(await offered('use ""', 1)).toEqual([
    ["c.chair", "joints and values"],
    ["a.chair", undefined],
    ["b.chair", undefined],
  ]);
  expect((await offered('like ""', 2)).map(([label]) => label)).toEqual(["a.chair", "b.chair", "c.chair"]);
});
