import { describe, expect, it } from "vitest";
import { faultsOf, letterOf } from "../../../server/editor/faults.ts";
import { defaultSettings } from "../../../server/editor/settings.ts";
import { read } from "../../house/project-files.ts";
import { address, plainView } from "./view.ts";

const sample = read("samples/boathouse-mess-chair.chair");
const view = (text: string) => plainView(text, address);
const drawn = ({ study }: ReturnType<typeof view>) => {
  const { posts, rails, slats } = study.chair;
  return new Set([...posts.keys(), ...rails.keys(), ...slats.keys(), "seat"]);
};

describe("faults by part", () => {
  const thin = view(sample.replace("thick 1/3 of rail", "thick 1/6 of rail"));

  // So thin a tenon is too wide for its thickness as well.
  const alone = { "tenon-too-wide-for-thickness": "off" as const };

  it("name every part that the finding speaks of, with the post its end goes into", () => {
    const [fault] = faultsOf(thin, defaultSettings, drawn(thin));
    expect(fault).toMatchObject({ letter: "A", severity: "warning", code: "tenon-too-thin" });
    expect(fault?.message).toMatch(/tenon/);
    const parts = new Set(fault?.parts.map(({ part }) => part));
    for (const part of ["seat-front", "seat-back", "seat-side.left", "seat-side.right"])
      expect(parts).toContain(part);
    expect(parts).not.toContain("crest");
    expect(fault?.parts).toContainEqual({ part: "seat-side.left", towards: "front.left" });
    expect(sample.slice(fault?.at).startsWith("1/3 of rail")).toBe(true);
  });

  it("fall silent with the rule's setting, and are as grave as it says", () => {
    const off = { ...defaultSettings, rules: { ...alone, "tenon-too-thin": "off" as const } };
    expect(faultsOf(thin, off, drawn(thin))).toEqual([]);
    const loud = { ...defaultSettings, rules: { ...alone, "tenon-too-thin": "error" as const } };
    expect(faultsOf(thin, loud, drawn(thin))).toMatchObject([{ severity: "error" }]);
    const quiet = { ...defaultSettings, rules: { ...alone, "tenon-too-thin": "hint" as const } };
    expect(faultsOf(thin, quiet, drawn(thin))).toEqual([]);
  });

  it("speak of the part whose value a requirement is about, and of none when it is about the chair", () => {
    const given = view(
      sample
        .replace("weight at most 6.5kg", "weight at most 1kg")
        .replace("from 1deg to 4deg", "at most 1deg"),
    );
    const faults = faultsOf(given, defaultSettings, drawn(given));
    expect(faults.map(({ code, parts }) => [code, parts])).toEqual([
      ["requirement-not-met", []],
      ["requirement-not-met", [{ part: "seat" }]],
    ]);
  });

  it("are in broken text too, and mark only what is drawn", () => {
    const given = view(sample.replace("rail crest {", "rial crest {"));
    const faults = faultsOf(given, defaultSettings, drawn(given));
    expect(faults.length).toBeGreaterThan(0);
    for (const { parts } of faults) for (const { part } of parts) expect(drawn(given)).toContain(part);
  });

  it("are lettered as columns are", () => {
    expect([0, 25, 26, 27, 51, 52, 701, 702].map(letterOf)).toEqual([
      "A",
      "Z",
      "AA",
      "AB",
      "AZ",
      "BA",
      "ZZ",
      "AAA",
    ]);
  });
});
