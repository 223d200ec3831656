import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { boardsOutput } from "../../../../server/main/cli/schema-boards.ts";
import { chairs, messChair, ranInTime, seatwright } from "./bench.ts";

const make = (
  count: number,
) => `${readFileSync(messChair, "utf8").replace("accept ", `make ${count}\naccept `)}
board thick { size 3000 x 240 x 50; count 6; wane 10; price 80; defect at 800 long 60 from edge 60 wide 40 "knot" }
board thin { size 2800 x 200 x 32; count 10 }
`;

const at = chairs({
  "eight.chair": make(8),
  "two.chair": make(2),
  "inches.chair": `units in
post leg { section 1 1/2 x 1 1/2; foot out 0, back 0; height 17 }
timber white-oak
yard oak { thick 1, 2; long 96 to 144; wide 5 to 9; price 12 }
`,
  "bent.chair": `timber white-ash
post back pair { section 36 x 36; foot out 175, back 452; height 500; kick 6deg below 150 over 50 }
board plank { size 900 x 200 x 50; defect at 800 long 40 from edge 150 wide 20 "knot" }
`,
  "empty.chair": "units mm\n",
});

describe("seatwright boards", () => {
  test("the stock list and the plan as text", () => {
    const { code, out } = seatwright("boards", at("two.chair"));
    expect(code).toBe(0);
    expect(out).toContain("Stock list for 2 chairs");
    expect(out).toMatch(/50 mm +back +4 +white ash/);
    expect(out).toContain("no plan of this kind can use less than");
    expect(out).toMatch(/The boards cost at least \d/);
  }, 60_000);

  test("JSON keeps to its schema, all pieces are there, and the bound is under what is used", () => {
    const { code, out } = seatwright("boards", at("eight.chair"), "--format", "json");
    expect(code).toBe(0);
    const output = boardsOutput.strict().parse(JSON.parse(out));
    const cut = output.plan.boards.flatMap(({ pieces }) => pieces);
    for (const { name, number } of output.parts)
      expect([name, cut.filter(({ part }) => part === name).length]).toEqual([name, number]);
    expect(output.plan.lacking).toEqual([]);
    expect(output.plan.bound).toBeLessThanOrEqual(output.plan.used);
    expect(output.plan.bound).toBeGreaterThan(output.plan.used * 0.8);
  }, 60_000);

  test("a yard in inches: what to ask for in board feet", () => {
    const { out } = seatwright("boards", at("inches.chair"));
    expect(out).toContain("To ask for at the yard");
    expect(out).toMatch(/2 in thick +\d+\.\d board feet/);
  });

  test("pages: each board with its pieces, and curves at full size, as SVG and as PDF", async () => {
    const folder = at("pages");
    const { code, out } = await ranInTime("boards", at("bent.chair"), "--format", "svg", "-o", folder);
    expect([code, out]).toEqual([0, expect.stringMatching(/: 5 pages, 3 of them at full size/)]);
    const names = readdirSync(folder).sort();
    expect(names.map((name) => name.slice(3))).toEqual([
      "stock.svg",
      "boards-plank.svg",
      "check.svg",
      "back-2-1.svg",
      "back-2-2.svg",
    ]);
    const board = readFileSync(join(folder, names[1]!), "utf8");
    for (const words of [
      "plank: 900 mm × 200 mm × 50 mm",
      "1 back",
      "2 back",
      "knot",
      "grain",
      "Cuts: 1 crosscut",
    ])
      expect(board).toContain(words);
    const pdf = at("boards.pdf");
    expect((await ranInTime("boards", at("bent.chair"), "--format", "pdf", "-o", pdf)).code).toBe(0);
    expect(readFileSync(pdf, "latin1")).toMatch(/^%PDF-/);
    const text = at("boards.json");
    expect((await ranInTime("boards", at("bent.chair"), "--format", "json", "-o", text)).code).toBe(0);
    boardsOutput.strict().parse(JSON.parse(readFileSync(text, "utf8")));
  }, 60_000);

  test("a paper that is not known, one without pages, a place that cannot be written: misuse", async () => {
    const codes = [
      await ranInTime("boards", at("bent.chair"), "--format", "pdf", "--paper", "a7"),
      await ranInTime("boards", at("bent.chair"), "--paper", "a4"),
      await ranInTime("boards", at("bent.chair"), "--format", "pdf", "-o", at("no/such/folder.pdf")),
      await ranInTime("boards", at("none.chair")),
    ].map(({ code, error }) => [code, error.length > 0]);
    expect(codes).toEqual(codes.map(() => [2, true]));
  });

  test("nothing to saw is said and is not a fault", () => {
    const { code, out } = seatwright("boards", at("empty.chair"));
    expect([code, out]).toEqual([0, expect.stringContaining("There is nothing to saw yet.")]);
  });
});
