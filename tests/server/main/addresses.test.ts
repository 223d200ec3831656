import { describe, expect, it } from "vitest";
import { resolveAddress, sameAddress } from "../../../server/main/addresses.ts";

describe("addresses", () => {
  it("are the same however a client writes them", () => {
    expect(sameAddress("file:///c%3A/mess/a.chair")).toBe(sameAddress("file:///C:/mess/a.chair"));
    expect(sameAddress("file:///mess/a b.chair")).toBe(sameAddress("file:///mess/a%20b.chair"));
    expect(sameAddress("untitled:Untitled-1")).toBe("untitled:Untitled-1");
    expect(sameAddress("not an address")).toBe("not an address");
  });

  it.each([
    ["file:///mess/a.chair", "joints.chair", "file:///mess/joints.chair"],
    ["file:///mess/a.chair", "../lib/joints.chair", "file:///lib/joints.chair"],
    ["file:///mess/a.chair", "..\\lib\\joints.chair", "file:///lib/joints.chair"],
    ["memfs:/ws/a.chair", "b/joints.chair", "memfs:/ws/b/joints.chair"],
    ["file:///mess/a.chair", "memfs:///ws/x.chair", "memfs:///ws/x.chair"],
  ])("of a file named in %s as %s", (from, path, expected) => {
    expect(sameAddress(resolveAddress(from, path))).toBe(sameAddress(expected));
  });

  it("never fail on what is not an address", () => {
    for (const from of ["", "untitled:Untitled-1", "::", "file:///mess/a.chair"]) {
      for (const path of ["", "..", "%", "\0", "a/../../../..", "://"])
        expect(typeof resolveAddress(from, path)).toBe("string");
    }
  });
});
