/**
 * What the text says of the rebates and grooves cut along a rail, and of the strips fixed to it.
 */
import type { Given, RestDesign } from "./design.ts";
import type { Item } from "./merge.ts";
import { factOf, length, linesOf, type Reading, spanOf } from "./reading.ts";

/** In the order of the text, rebates first, then grooves, then strips. */
export function readRests(reading: Reading, item: Item): Given<RestDesign>[] {
  const read = (word: string, one: (line: Item) => RestDesign | undefined) =>
    linesOf(item, word).flatMap((line): Given<RestDesign>[] => {
      const value = one(line);
      const at = spanOf(
        [factOf(line, "wide"), factOf(line, "deep") ?? factOf(line, "thick")],
        line.statement,
      );
      return value
        ? [{ value, at, ...(line.source.file === undefined ? {} : { file: line.source.file }) }]
        : [];
    });
  const size = (line: Item, label: string) => length(reading, line, label, "positive")?.value;
  const place = (line: Item, label: string) => length(reading, line, label, "not negative")?.value;
  const named = <T extends string>(line: Item, label: string, ...names: readonly [T, ...T[]]): T =>
    names.find((each) => each === factOf(line, label)?.name) ?? names[0];
  return [
    ...read("rebate", (line) => {
      const [wide, deep] = [size(line, "wide"), size(line, "deep")];
      if (wide === undefined || deep === undefined) return undefined;
      const [from, to] = [place(line, "from"), place(line, "to")];
      return {
        is: "rebate",
        wide,
        deep,
        face: named(line, "face", "inside", "outside"),
        edge: named(line, "edge", "top", "bottom"),
        ...(from === undefined || to === undefined
          ? {}
          : { from: Math.min(from, to), to: Math.max(from, to) }),
      };
    }),
    ...read("groove", (line) => {
      const [wide, deep, at] = [size(line, "wide"), size(line, "deep"), place(line, "at")];
      if (wide === undefined || deep === undefined || at === undefined) return undefined;
      return {
        is: "groove",
        wide,
        deep,
        at,
        face: named(line, "face", "inside", "outside", "top", "bottom"),
      };
    }),
    ...read("strip", (line) => {
      const [wide, thick, at] = [size(line, "wide"), size(line, "thick"), place(line, "at")];
      if (wide === undefined || thick === undefined || at === undefined) return undefined;
      return { is: "strip", wide, thick, at, face: named(line, "face", "inside", "outside") };
    }),
  ];
}
