import { describe, expect, it } from "vitest";
import { wasteRows } from "../../../grammar/vocabulary/board.ts";
import { allowancesOf } from "../../../server/boards/allowances.ts";
import { stockList } from "../../../server/boards/plan.ts";
import { printLength } from "../../../server/design/units.ts";
import { studied } from "../../check.ts";
import { read } from "../../house/project-files.ts";

const files = { "boathouse-joints.chair": read("samples/boathouse-joints.chair") };

describe("what is usual where the file says nothing", () => {
  it("is of an inch workshop in a file in inches, of a metric one in the others", () => {
    expect(allowancesOf({ units: "in" })).toEqual({
      saw: 3.175,
      plane: 1.5875,
      ends: 50.8,
      jointing: 0.79375,
    });
    expect(allowancesOf({ units: "cm" })).toEqual({ saw: 3, plane: 2, ends: 50, jointing: 1 });
  });

  it("is what the reference says", () => {
    const [metric, inches] = [allowancesOf({ units: "mm" }), allowancesOf({ units: "in" })];
    for (const { word, default: preset } of wasteRows) {
      const name = word as keyof typeof metric;
      const of = (mm: number, units: "mm" | "in") => printLength(mm, units).replace(" ", "");
      expect(preset).toBe(`${word} ${of(metric[name], "mm")}; in a file in inches ${of(inches[name], "in")}`);
    }
  });

  it("is boards of ten feet, or of three metres", () => {
    const usual = (sample: string) =>
      stockList(studied(read(`samples/${sample}.chair`), files).chair).wood.find(
        ({ from }) => from === "usual",
      );
    const stool = usual("joined-stool");
    expect([stool!.long / 25.4, stool!.wide / 25.4]).toEqual([120, 7.5]);
    expect(usual("chart-stool")).toMatchObject({ long: 3000, wide: 190 });
  });
});
