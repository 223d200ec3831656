import { describe, expect, it } from "vitest";
import { balanceOf, endlessOf } from "../../../../server/floor/tips.ts";
import { reckonOutput } from "../../../../server/main/cli/schema.ts";
import { services } from "../../../../server/main/services.ts";
import { chairs, messChair, mistyped, ranBy, seatwright } from "./bench.ts";

const path = chairs({
  "stool.chair": mistyped,
  "inches.chair":
    'chair "Block"\nunits in\npost leg {\n  section 1 1/2 x 1 1/2\n  foot out 0, back 0\n  height 17 3/8\n  rake 10deg\n}\n',
});

describe("seatwright reckon", () => {
  it("lists every value by its dotted name in the file's units", () => {
    const { out, code } = seatwright("reckon", messChair);
    expect(out.split("\n")[0]).toBe("Boathouse mess chair");
    expect(out).toMatch(/^ {2}seat\.height +439\.7 mm$/m);
    expect(out).toMatch(/^ {2}seat-side\.left\.front\.edge-bevel +85\.3° \(1:12\.1\)$/m);
    expect(code).toBe(0);
  });

  it("prints inches as fractions where the file says inches", () => {
    // 17 3/8 in ÷ cos 10° = 17.643 in: to the nearest sixty-fourth 17 41/64.
    expect(seatwright("reckon", path("inches.chair")).out).toMatch(/^ {2}leg\.length +17 41\/64 in$/m);
  });

  it("gives JSON that fits its schema", () => {
    const { out } = seatwright("reckon", messChair, "--format", "json");
    const output = reckonOutput.parse(JSON.parse(out));
    expect(output.chair).toBe("Boathouse mess chair");
    expect(output.values["seat.slope"]).toEqual({ value: expect.closeTo(1.3, 1), unit: "deg" });
    expect(output.values["seat-front.length"]).toEqual({ value: 370, unit: "mm" });
    expect(output.values.joints).toEqual({ value: 24, unit: "1" });
  });

  it("names the values that are not finite", () => {
    // A chair with feet far out in front: no load lifts its back legs.
    const endless: typeof services = {
      ...services,
      *study(asked) {
        const study = yield* services.study(asked);
        const { chair } = study;
        const balance = balanceOf(chair);
        const cases = balance.cases.map((one) =>
          one.way === "front" ? { ...one, margin: Number.POSITIVE_INFINITY } : one,
        );
        const names = endlessOf({ ...balance, cases });
        return { ...study, chair: { ...chair, endless: names } };
      },
    };
    const { error, code } = ranBy(endless, "reckon", messChair);
    expect(error).toMatch(/^.*boathouse-mess-chair\.chair: not finite, so left out: tip\.front-margin\.\n$/);
    expect(code).toBe(0);
    expect(seatwright("reckon", messChair).error).toBe("");
  });

  it("gives what can be worked out of a broken file, says that values may be missing, and ends with 1", () => {
    const { out, error, code } = seatwright("reckon", path("stool.chair"));
    expect(out).toContain("Stool");
    expect(error).toMatch(
      /stool\.chair: \d errors?, so values may be missing; "seatwright check" tells\.\n$/,
    );
    expect(code).toBe(1);
  });

  it("calls a chair without a title by its file", () => {
    const untitled = chairs({ "plain.chair": "units mm\n" });
    expect(JSON.parse(seatwright("reckon", untitled("plain.chair"), "--format", "json").out).chair).toBe(
      "plain.chair",
    );
  });
});
