import { describe, expect, test } from "vitest";
import { mended, read, values } from "./read.ts";

const frame = `post back pair { section 40 x 40; foot out 150, back 300; height 900 }
post front pair { section 40 x 40; foot out 150, back 0; height 430 }
rail crest { across back; section 20 x 60; up 880 }
rail arm pair { from front to back; section 20 x 40; up 400 }
seat board { on arm; thick 20 }
`;
const faults = (text: string, before = frame) =>
  read(before + text).problems.map(({ code, start, end }) => `${code}: ${(before + text).slice(start, end)}`);
const loadsOf = (text: string) => values(read(frame + text).loads);

describe("a load of one's own", () => {
  test("with everything", () => {
    const text = `# Two on one side of the bench
load two {
  push 500N down on seat at out 120, back 150
  push 0.3kN out on arm at 1/2
  push 100lbf back on crest at 80
  push 200N forward on back.left at 700
  push 150N up on back
  stops front, back
  times 2000
}
`;
    expect(read(frame + text).problems).toEqual([]);
    expect(loadsOf(text)).toMatchObject({
      two: {
        is: "load",
        description: "Two on one side of the bench",
        times: 2000,
        stops: ["front", "back"],
        pushes: [
          { force: 500, way: "down", target: { is: "seat", out: 120, back: 150 } },
          {
            force: 300,
            way: "out",
            target: { is: "member", kind: "rail", part: { name: "arm" }, station: { share: 0.5 } },
          },
          { way: "back", target: { kind: "rail", part: { name: "crest" }, station: { mm: 80 } } },
          { way: "forward", target: { kind: "post", part: { name: "back", side: "left" }, height: 700 } },
          { way: "up", target: { kind: "post", part: { name: "back" } } },
        ],
      },
    });
    expect(read(frame + text).loads.get("two")?.pushes[2]?.force.value).toBeCloseTo(444.822, 3);
  });

  test("in an inch file places are inches and forces what they say", () => {
    const design = read(`units in\n${frame}load l {\n  push 100lbf down on seat at out 4 1/2\n}\n`);
    const push = design.loads.get("l")?.pushes[0];
    expect(values(push?.target)).toEqual({ is: "seat", out: 114.3 });
  });

  test("a weight offers the force it is; a bare number and a length are refused; so are nothing and a car", () => {
    const line = (force: string) => `load l {\n  push ${force} down on seat\n}\n`;
    expect(faults(line("50kg"))).toEqual(["wrong-unit: 50kg"]);
    expect(mended(frame + line("50kg"), "wrong-unit")[0]).toContain("push 490N down on seat");
    expect(mended(`units in\n${line("50lb")}`, "wrong-unit")[0]).toContain("push 50lbf down on seat");
    expect(faults(line("500"))).toEqual(["wrong-unit: 500"]);
    expect(mended(frame + line("500"), "wrong-unit")[0]).toContain("push 500N down");
    expect(faults(line("0N"))).toEqual(["impossible-size: 0N"]);
    expect(faults(line("900kN"))).toEqual(["impossible-size: 900kN"]);
  });

  test("targets that are none", () => {
    const push = (rest: string) => `load l {\n  push 100N ${rest}\n}\n`;
    expect(faults(push("down on crst"))).toEqual(["unknown-name: crst"]);
    expect(mended(frame + push("down on crst"), "unknown-name")[0]).toContain("down on crest");
    expect(faults(`joint j { tenon thick 8, long 20 }\n${push("down on j")}`)).toEqual(["wrong-kind: j"]);
    expect(faults(push("out on crest"))).toEqual(["wrong-kind: out"]);
    expect(mended(frame + push("out on crest"), "wrong-kind")[0]).toContain("push 100N left on crest");
    expect(faults(push("down on seat at 1/2"))).toEqual(["wrong-kind: 1/2"]);
    expect(faults(push("down on crest at out 20"))).toHaveLength(1);
    const without = frame.replace(/seat board.*\n/, "");
    expect(faults(push("down on seat"), without)).toEqual(["unknown-name: seat"]);
  });

  test("a name belongs to one thing", () => {
    expect(faults("load crest {\n  push 100N down on seat\n}\n")).toEqual(["duplicate-name: crest"]);
  });
});

describe("strength and climate", () => {
  test("are read; the climate as shares of one", () => {
    const design = read("strength severe\nclimate humidity 30% to 70%\n");
    expect(design.strength?.value).toBe("severe");
    expect(design.climate?.value).toMatchObject({ of: "humidity", low: 0.3 });
    expect(design.climate?.value.high).toBeCloseTo(0.7, 12);
    expect(read("climate moisture 6% to 14%\n").climate?.value).toEqual({
      of: "moisture",
      low: 0.06,
      high: 0.14,
    });
    expect(read("").climate).toBeUndefined();
  });

  test("a climate the wrong way round, beyond what there is, or without its percent sign", () => {
    expect(faults("climate humidity 70% to 30%\n", "")).toEqual(["impossible-size: 70% to 30%"]);
    expect(mended("climate humidity 70% to 30%\n", "impossible-size")).toEqual([
      "climate humidity 30% to 70%\n",
    ]);
    expect(faults("climate humidity 30% to 99%\n", "")).toEqual(["impossible-size: 30% to 99%"]);
    expect(faults("climate humidity -5% to 40%\n", "")).toEqual(["impossible-size: -5% to 40%"]);
    expect(mended("climate humidity 30 to 70\n", "wrong-unit")).toEqual(["climate humidity 30% to 70\n"]);
    // Nobody's wood lives at 65 % moisture; the air does.
    expect(mended("climate moisture 35% to 65%\n", "impossible-size")).toEqual([
      "climate humidity 35% to 65%\n",
    ]);
  });
});

describe("files that start from each other", () => {
  const base = `${frame}strength public
climate humidity 30% to 50%
load lean {
  push 300N back on crest
}
`;
  test("like takes over all three, and a load's pushes are replaced together", () => {
    const design = read(
      'like "base.chair"\nload lean {\n  push 400N back on crest\n  push 10N down on seat\n}\n',
      { "base.chair": base },
    );
    expect(design.strength?.value).toBe("public");
    expect(design.climate?.value.high).toBe(0.5);
    expect(design.loads.get("lean")?.pushes.map(({ force }) => force.value)).toEqual([400, 10]);
  });

  test("without takes a load away; use brings in loads and climate, not the level", () => {
    const without = read('like "base.chair"\nwithout lean\n', { "base.chair": base });
    expect(without.problems).toEqual([]);
    expect(without.loads.size).toBe(0);
    const used = read(`use "base.chair"\n${frame}`, { "base.chair": base });
    expect([...used.loads.keys()]).toEqual(["lean"]);
    expect(used.climate?.value.low).toBe(0.3);
    expect(used.strength).toBeUndefined();
  });
});
