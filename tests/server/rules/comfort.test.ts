import { describe, expect, it } from "vitest";
import { caution } from "../../../server/floor/editions.ts";
import { rules } from "../../../server/rules/index.ts";
import { check, messagesOf, otherwiseOf, studied } from "../../check.ts";
import { armFrame, backFrame, frame } from "../../plain-frame.ts";

const upright = backFrame("rake 6deg above 450");
const codes = (text: string) => studied(text).problems.map(({ code }) => code);
const forChildren = (text: string) => `sitter school-mark 6\n${text}`;

describe("the frames that the tests break", () => {
  it("are whole", () => {
    check(upright);
    check(armFrame("up 640"));
  });
});

describe("back-lean-outside", () => {
  const bowed = (by: number, where: string) =>
    upright.replace(
      "up 895\n  stand with posts",
      `up 895\n  bow ${by} back\n  stand with posts`.replace("back", where),
    );

  it("measures through the faces that are leant on, whatever the posts do", () => {
    // 45 mm of bow over 275 mm between the members: atan(45/275) is 9.3° more than the posts' 6°.
    const [message] = messagesOf(bowed(45, "back"), "back-lean-outside");
    expect(message).toMatch(
      /^The back leans 15\.\d° from square to the seat, measured from back-lower to crest; 15° or less is recommended\.$/,
    );
    expect(messagesOf(bowed(30, "front"), "back-lean-outside")[0]).toMatch(/; 3° or more is recommended/);
    expect(codes(bowed(20, "back"))).not.toContain("back-lean-outside");
  });

  it("leaves it to the rules about the posts when it is those that are out, and follows the file's limit", () => {
    expect(codes(backFrame("rake 20deg above 450"))).toContain("rake-over-limit");
    expect(codes(backFrame("rake 20deg above 450"))).not.toContain("back-lean-outside");
    const text = bowed(45, "back");
    expect(codes(`${text}limit back-lean-outside from 2deg to 20deg\n`)).not.toContain("back-lean-outside");
  });
});

describe("back-too-low and crest-at-shoulder-blades", () => {
  const ending = (up: number) =>
    upright.replace("up 895", `up ${up}`).replace("height 900", `height ${up + 5}`);

  it("tell how far above the seat the back ends, on its highest member", () => {
    const text = ending(720);
    const [problem] = studied(text).problems.filter(({ code }) => code === "back-too-low");
    expect(text.slice(problem!.start, problem!.end)).toBe("720");
    expect(problem!.message).toMatch(
      /^The back ends 28\d[\d.]* mm above the seat with a sitter on it; 300 mm or more is recommended\.$/,
    );
    expect(codes(ending(750))).toEqual([]);
    expect(codes(`${ending(720)}limit back-too-low to 250\n`)).toEqual([]);
  });

  it("keep the top edge off the tips of women's and men's shoulder blades", () => {
    // Medians of the survey, 563 and 607 or so, less 170 from the shoulder down: 393 and 435 mm above the seat.
    const tops = Array.from({ length: 40 }, (_, k) => 760 + 4 * k);
    const told = tops.filter((up) => codes(ending(up)).includes("crest-at-shoulder-blades"));
    expect(Math.min(...told)).toBeGreaterThan(440 + 393 - 26);
    expect(Math.max(...told)).toBeLessThan(440 + 440 + 24);
    expect(told.length).toBeGreaterThan(15);
  });

  it("goes by the sitter's own shoulders", () => {
    const own = (shoulder: number) => `sitter {\n  shoulder-height-sitting ${shoulder}\n}\n${ending(895)}`;
    const top = studied(ending(895)).chair.values.get("backrest.top")!.number - 440;
    expect(messagesOf(own(Math.round(top) + 170), "crest-at-shoulder-blades")).toHaveLength(1);
    expect(messagesOf(own(Math.round(top) + 220), "crest-at-shoulder-blades")).toEqual([]);
  });
});

describe("lumbar-unsupported", () => {
  it("wants something of the back from 150 to 250 mm above the seat, and says where it is", () => {
    expect(messagesOf(upright.replace("up 620", "up 800"), "lumbar-unsupported")).toEqual([
      "Nothing of the back lies from 150 mm to 250 mm above the seat with a sitter on it, where the small of the back is; it lies from 290.4 mm up.",
    ]);
    expect(messagesOf(upright.replace("up 620", "up 560"), "lumbar-unsupported")[0]).toMatch(
      /it lies up to 1\d\d[\d.]* mm and from 38\d[\d.]* mm up\.$/,
    );
  });
});

describe("arms", () => {
  it("are judged above the seat by the printed range, 178 to 250 mm", () => {
    expect(messagesOf(armFrame("up 700"), "arm-height-outside")).toEqual([
      "The arms lie 260 mm above the seat with a sitter on it; 250 mm or less is recommended.",
    ]);
    expect(messagesOf(armFrame("up 610"), "arm-height-outside")).toEqual([
      "The arms lie 170 mm above the seat with a sitter on it; 178 mm or more is recommended.",
    ]);
  });

  it("are judged by the sitter's own elbow when it is given", () => {
    const own = (elbow: number, up: number) =>
      codes(`sitter {\n  elbow-rest-height ${elbow}\n}\n${armFrame(`up ${up}`)}`);
    expect(own(240, 690)).not.toContain("arm-height-outside");
    expect(own(190, 690)).toContain("arm-height-outside");
  });

  it("go under a table, or the file says how high its own is", () => {
    const text = armFrame("up 670");
    expect(messagesOf(text, "arm-too-high-for-table")).toEqual([
      "The arms reach up to 670 mm from the floor; 650 mm or less is recommended.",
    ]);
    expect(codes(`${text}limit arm-too-high-for-table to 680\n`)).toEqual([]);
  });
});

describe("feet-cannot-draw-back", () => {
  const stretcher = (up: number, course = "across front") =>
    frame({ more: `rail stretcher {\n  ${course}\n  section 18 x 40\n  up ${up}\n  joined plain\n}\n` });

  it("finds a rail across the front, with how far back it would have to lie", () => {
    const [message] = otherwiseOf(stretcher(150), "feet-cannot-draw-back");
    const by = Number(/([\d.]+) mm further back/.exec(message ?? "")?.[1]);
    // By hand: the shin turns about the seat's edge, 440 up; the lower front arris of the rail lies 110 up.
    const knee = studied(stretcher(150)).chair.seat!.front.middle[1];
    const lower = 20 - 9 + by - knee;
    expect((lower * 440) / (440 - 110)).toBeCloseTo(100, 0);
  });

  it("says nothing of one further back, nor of the rails that the seat lies on", () => {
    expect(codes(frame())).toEqual([]);
    expect(codes(stretcher(150, "across back"))).not.toContain("feet-cannot-draw-back");
  });
});

describe("all of them", () => {
  it("are for grown sitters", () => {
    for (const text of [
      upright.replace("up 620", "up 800"),
      armFrame("up 700"),
      frame({ more: "rail s {\n  across front\n  section 18 x 40\n  up 150\n  joined plain\n}\n" }),
    ])
      expect(codes(forChildren(text))).toEqual([]);
  });
});

describe("every rule about standing and sitting", () => {
  it("says that a calculation is not a test, who tests, and what comes first", () => {
    const some = rules.filter(({ code }) =>
      /^(tips|seat-(too|slope|falls)|back-|crest-|loins-|arm-|feet-)/.test(code),
    );
    expect(some.length).toBeGreaterThan(15);
    for (const { code, explanation } of some) expect(explanation, code).toContain(caution);
    expect(caution).toMatch(
      /not a test.*children's.*standard in force.*competent laboratory; local codes come first\.$/,
    );
  });
});
