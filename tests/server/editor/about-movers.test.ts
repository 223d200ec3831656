import { describe, expect, it } from "vitest";
import { aboutMovers } from "../../../server/editor/about/about-movers.ts";
import { valuesUnder } from "../../../server/editor/about/moved-values.ts";
import { hangsOn } from "../../../server/sensitivity/sensitivity.ts";
import { at, frame, type Placed } from "./frame.ts";
import { viewOf } from "./view.ts";

function movers({ view, offset }: Placed): string | undefined {
  const { tree, study } = view;
  const { design, chair } = study;
  const values = valuesUnder(view, offset);
  const steps = hangsOn({ tree, design, chair, values, rework: view.rework });
  let next = steps.next();
  while (!next.done) next = steps.next();
  return aboutMovers(next.value, { chair, unit: design.units, whole: true });
}

const requiring = (line: string) => movers(viewOf(`${frame}${line}\n`));

describe("what a value depends on", () => {
  it("is told for a value that is required, strongest first, in the file's units", () => {
    // 1 mm on a rail 432 mm from the other turns the seat by atan(1/416) or so: 0.14°.
    expect(requiring("require seat.sl|ope at most 4deg")).toMatch(
      /^What it depends on most:\n\n- 1 mm on `up` of `seat-(front|back)`: [+−]0\.1[34]°\n- 1 mm on `up`/,
    );
    expect(requiring("require seat.hei|ght at most 500")).toContain("- 1 mm on `seat-height`: +1 mm");
  });

  it("is told in inches for a file of inches, and of a let inside an expression", () => {
    const inches = viewOf(
      "units in\nlet h = 17\npost front pair {\n  section 1 1/2 x 1 1/2\n  foot out 8, back 1\n  height h\n  splay 3deg\n}\nlet twice = 2 * front.len|gth\n",
    );
    expect(movers(inches)).toMatch(/- 1\/16 in on `h`: \+0\.06\d in/);
  });

  it("is told on the seat's header for its sizes, on a post's name for its foot and on a rail's for its length", () => {
    const seat = movers(at("seat dr|op-in"));
    expect(seat).toMatch(/- `seat\.height` 428 mm; 1 mm on /);
    expect(seat).toMatch(/- `seat\.slope` 0°; /);
    expect(movers(at("post ba|ck"))).toContain("1° on `splay` of `back`: ");
    expect(movers(at("rail seat-fro|nt"))).toContain("1 mm on `foot out` of `front`: +2 mm");
  });

  it("is reported nothing else", () => {
    for (const place of [
      "section 40 x 4|0",
      "ra|il seat-front",
      "# Stands pl|umb",
      "joint rail-te|non",
      "jo|ined rail-tenon",
    ])
      expect(valuesUnder(at(place).view, at(place).offset), place).toEqual([]);
  });
});
