import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { boardsOutput } from "../../../../server/main/cli/schema-boards.ts";
import { chairs, messChair, seatwright } from "./bench.ts";

const at = chairs({
  "eight.chair": `${readFileSync(messChair, "utf8").replace("accept ", "make 8\naccept ")}
board thick { size 3000 x 240 x 50; count 6; wane 10; price 80; defect at 800 long 60 from edge 60 wide 40 "knot" }
board thin { size 2800 x 200 x 32; count 10 }
`,
  "inches.chair": `units in
post leg { section 1 1/2 x 1 1/2; foot out 0, back 0; height 17 }
timber white-oak
yard oak { thick 1, 2; long 96 to 144; wide 5 to 9; price 12 }
`,
  "empty.chair": "units mm\n",
});

describe("seatwright boards", () => {
  test("the stock list and the plan as text", () => {
    const { code, out } = seatwright("boards", at("eight.chair"));
    expect(code).toBe(0);
    expect(out).toContain("Stock list for 8 chairs");
    expect(out).toMatch(/from 50 mm +back +16 +white-ash/);
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

  test("nothing to saw is said and is not a fault", () => {
    const { code, out } = seatwright("boards", at("empty.chair"));
    expect([code, out]).toEqual([0, expect.stringContaining("There is nothing to saw yet.")]);
  });
});
