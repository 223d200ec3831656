import { expect, test } from "vitest";
import { namesFrom, resolveNamed } from "../../../server/main/named-files.ts";

test.each([
  ["file:///mess/a.chair", "b.chair", "file:///mess/b.chair"],
  ["file:///mess/a.chair", "../b.chair", "file:///b.chair"],
  ["file:///mess/a.chair", "/other/b.chair", "file:///other/b.chair"],
  ["file:///mess/a.chair", "file:///other/b.chair", "file:///other/b.chair"],
  ["vscode-vfs://host/mess/a.chair", "b.chair", "vscode-vfs://host/mess/b.chair"],
])("from %s, %s may be named", (from, path, address) => {
  expect(resolveNamed(from, path)).toBe(address);
});

test.each([
  ["file:///mess/a.chair", "https://example.org/b.chair"],
  ["file:///mess/a.chair", "vscode-vfs://host/b.chair"],
  ["file:///mess/a.chair", "file://host/share/b.chair"],
  ["file:///mess/a.chair", "FILE://HOST/share/b.chair"],
  ["file:///mess/a.chair", "\\\\host\\share\\b.chair"],
  ["file:///mess/a.chair", "//host/share/b.chair"],
  ["file:///mess/a.chair", "\\\\?\\UNC\\host\\share\\b.chair"],
  ["file:///mess/a.chair", "command://b.chair"],
  ["vscode-vfs://host/mess/a.chair", "vscode-vfs://other/b.chair"],
  ["vscode-vfs://host/mess/a.chair", "file:///b.chair"],
  ["memfs:/a.chair", "memfs://b/a.chair"],
])("from %s, %s may not", (from, path) => {
  expect(resolveNamed(from, path)).toBeUndefined();
});

test("files are named from where a chair lies, the nearest first", () => {
  const names = namesFrom("file:///mess/room/a.chair", [
    "file:///mess/joints.chair",
    "file:///mess/room/a.chair",
    "file:///mess/room/my%20joints.chair",
    "file:///mess/room/old/b.chair",
    "file://host/mess/room/c.chair",
  ]);
  expect(names).toEqual(["my joints.chair", "../joints.chair", "old/b.chair"]);
});
