import { expect, it } from "vitest";
import { parse } from "../../../grammar/parser.ts";
import { finish } from "../../../grammar/steps.ts";
import { vocabulary } from "../../../grammar/vocabulary/index.ts";
import { choicesOf } from "../../../server/range/choice.ts";
import { movingTextSteps } from "../../../server/range/moving.ts";
import { plain, samples, studied } from "./files.ts";

/** Bare millimetres, centimetres with angles, inches. */
const some = ["mess-armchair.chair", "harbour-chair.chair", "joined-stool.chair"];

it.each<[string, string]>([
  ["plain", plain()],
  ...some.map((name) => [name, samples[name]!] as [string, string]),
])("%s: each figure that is set gives the tree of its text", (_, text) => {
  const { tree, design } = studied(text);
  const choices = choicesOf(tree, design).map((choice) => ({ choice, low: choice.low, high: choice.high }));
  const wrong = choices.flatMap((one, k) => {
    // A share: each of them takes two readings.
    if (k % 16 !== 3) return [];
    const other = choices[(k + 7) % choices.length]!;
    const moved = other === one ? [one] : [one, other];
    const moving = finish(movingTextSteps(text, moved));
    // A place in between, then one after it, so that what the first left behind would show.
    return [0.3, 0.9].flatMap((share) => {
      const places = moved.map(({ low, high }) => low + share * (high - low));
      const { text: now, tree: set } = moving(places);
      const read = parse(now, vocabulary);
      const kept = places.every((place) => now.includes(Number(place.toFixed(9)).toString()));
      return kept && (!set || sameTrees(set, read)) ? [] : [one.choice.name];
    });
  });
  expect(wrong).toEqual([]);
  const [first] = choices.filter(({ low }) => low > 0);
  if (first) expect(finish(movingTextSteps(text, [first]))([first.low]).tree).toBeDefined();
});

/** By what they hold; a statement's owner goes round in circles. */
function sameTrees(a: object, b: object): boolean {
  const leave = (key: string, value: unknown) => (key === "owner" || key === "row" ? undefined : value);
  return JSON.stringify(a, leave) === JSON.stringify(b, leave);
}
