import { describe, expect, it } from "vitest";
import {
  bothNames,
  covers,
  isRight,
  jointId,
  jointName,
  type PartId,
  partId,
  partName,
  partsNamed,
  readPart,
  twinName,
  withoutSides,
} from "../../../server/design/identity.ts";

const ids: [string, PartId][] = [
  ["crest", { stem: "crest", side: "middle" }],
  ["front.left", { stem: "front", side: "left" }],
  ["back-slat.3", { stem: "back-slat", row: 3, side: "middle" }],
  ["ladder.12.right", { stem: "ladder", row: 12, side: "right" }],
  // A name may hold a side's word, or a number, without being sided or one of a row.
  ["left", { stem: "left", side: "middle" }],
  ["right-arm-2.left", { stem: "right-arm-2", side: "left" }],
];

describe("a part's identity", () => {
  it.each(ids)("prints as %s and is read from it", (name, id) => {
    expect(partName(id)).toBe(name);
    expect(partId(name)).toEqual(id);
  });

  it("heads the name of a value", () => {
    expect(readPart("seat-side.left.front.tenon-thick")).toEqual({
      id: { stem: "seat-side", side: "left" },
      rest: ["front", "tenon-thick"],
    });
  });

  it("has a mirrored twin, whose twin it is", () => {
    for (const [name] of ids) expect(twinName(twinName(name))).toBe(name);
    expect(twinName("ladder.12.right")).toBe("ladder.12.left");
    expect(twinName("crest")).toBe("crest");
  });

  it("covers both sides of a pair and all members of a row, and no other part of a longer name", () => {
    expect(covers("front", "front.left")).toBe(true);
    expect(covers("ladder", "ladder.12.right")).toBe(true);
    expect(covers("ladder.12", "ladder.12.right")).toBe(true);
    expect(covers("ladder.1", "ladder.12.right")).toBe(false);
    expect(covers("front.left", "front.right")).toBe(false);
    expect(covers("front", "front-rail.left")).toBe(false);
  });
});

describe("a joint's identity", () => {
  const name = jointName("seat-side.left", "front.left");

  it("prints as the part and what it enters, and is read from that", () => {
    expect(name).toBe("seat-side.left to front.left");
    expect(jointId(name)).toEqual({ part: partId("seat-side.left"), into: partId("front.left") });
    expect(jointId("front.left")).toBeUndefined();
    expect(jointId("a to b to c")).toBeUndefined();
  });

  it("is reported without sides, or mirrored, as its parts are", () => {
    expect(withoutSides(name)).toBe("seat-side to front");
    expect(twinName(name)).toBe("seat-side.right to front.right");
    expect(isRight(name)).toBe(false);
    expect(isRight(twinName(name))).toBe(true);
  });

  it("stands beside another in one subject, whose parts are all told", () => {
    expect(partsNamed(bothNames(name, "crest"))).toEqual(["seat-side.left", "front.left", "crest"]);
    expect(withoutSides(bothNames("front.left", "front.right"))).toBe("front and front");
  });
});
