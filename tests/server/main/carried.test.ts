import { describe, expect, it } from "vitest";
import { withCarried } from "../../../server/main/carried.ts";
import { studied, studiedLate } from "../../check.ts";
import { sound } from "../strength/sound.ts";

const limit = "limit joint-overworked to 0.1\n";
const before = sound(limit);
const earlier = studiedLate(before);
const late = (
  { problems }: { problems: readonly { code: string; start: number; end: number }[] },
  text: string,
) =>
  problems.filter(({ code }) => code === "joint-overworked").map(({ start, end }) => text.slice(start, end));

describe("findings worked out late, while the text moves on", () => {
  it("stay on their text when something is typed above or below it", () => {
    const told = late(earlier, before);
    expect(told.length).toBeGreaterThan(0);
    for (const now of [`# a note\n${before}`, `${before}# a note\n`])
      expect(late(withCarried(studied(now), earlier), now)).toEqual(told);
  });

  it("go where their own text is changed, or the text has errors", () => {
    const renamed = before
      .replaceAll("joined plain-tenon", "joined other-tenon")
      .replace("joint plain-tenon", "joint other-tenon");
    expect(late(withCarried(studied(renamed), earlier), renamed)).toEqual([]);
    const broken = `${before}post {\n`;
    expect(late(withCarried(studied(broken), earlier), broken)).toEqual([]);
  });

  it("are not told twice once they are known anew", () => {
    const deep = studiedLate(before);
    expect(withCarried(deep, earlier)).toBe(deep);
  });
});
