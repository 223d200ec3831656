/**
 * Addresses against Node's WHATWG URL, whose parser shares nothing with the library that spells them here.
 */
import fc from "fast-check";
import { expect, test } from "vitest";
import { resolveAddress, sameAddress } from "../../server/main/addresses.ts";

const segment = fc
  .array(fc.constantFrom(..."a b C é 木 + ( ) ~ - _ 7 chair mess.chair".split(" "), " "), {
    minLength: 1,
    maxLength: 3,
  })
  .map((some) => some.join(""))
  // A URL drops spaces at its end.
  .filter((text) => text.trim() === text && !/^\.+$/.test(text));
const path = fc.array(segment, { minLength: 1, maxLength: 4 }).map((some) => some.join("/"));
const start = fc.constantFrom("file:///", "file:///srv/", "file://server/share/", "http://host:8080/");

/** Host and path as they read with nothing encoded. */
const read = (uri: string) => {
  const { host, pathname } = new URL(uri);
  return [host, decodeURIComponent(pathname)];
};

test("name the same place as what was written", () => {
  fc.assert(
    fc.property(start, path, (root, name) => {
      expect(read(sameAddress(root + name))).toEqual(read(root + name));
    }),
    { numRuns: 1000, seed: 5 },
  );
});

test("are spelt once, however much of them is encoded", () => {
  fc.assert(
    fc.property(start, path, (root, name) => {
      const encoded = name.split("/").map(encodeURIComponent).join("/");
      expect(sameAddress(root + encoded)).toBe(sameAddress(root + name));
      expect(sameAddress(sameAddress(root + name))).toBe(sameAddress(root + name));
    }),
    { numRuns: 1000, seed: 7 },
  );
});

test("of a file named in another are those that a URL gives", () => {
  const named = fc.tuple(fc.constantFrom("", "../", "../../", "./", "/"), path).map((some) => some.join(""));
  fc.assert(
    fc.property(start, path, named, (root, from, name) => {
      expect(read(resolveAddress(root + from, name))).toEqual(read(new URL(name, root + from).href));
    }),
    { numRuns: 1000, seed: 6 },
  );
});
