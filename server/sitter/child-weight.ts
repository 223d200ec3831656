import data from "./child-weights.json" with { type: "json" };

/** Weights of one sex at one age, kg: 5th, 50th and 95th percentile. */
type Percentiles = [number, number, number];

/**
 * Weights in kg of children at a birthday, boys and girls together: the lighter sex's 5th percentile, the mean of both medians, the
 * heavier sex's 95th percentile; under 8 boys' alone. Straight between the ages of the table, and that of its ends beyond them.
 */
export function childWeight(age: number): Percentiles {
  const ages = data.ages.map((row) => ({ age: row.age, kg: bothSexes(row) }));
  const clamped = Math.min(Math.max(age, ages[0]!.age), ages[ages.length - 1]!.age);
  const above = ages.find((row) => row.age >= clamped) ?? ages[ages.length - 1]!;
  const below = [...ages].reverse().find((row) => row.age <= clamped) ?? ages[0]!;
  const t = above.age > below.age ? (clamped - below.age) / (above.age - below.age) : 0;
  return [0, 1, 2].map((i) => below.kg[i]! + t * (above.kg[i]! - below.kg[i]!)) as Percentiles;
}

function bothSexes({ boys, girls = boys }: { boys: number[]; girls?: number[] }): Percentiles {
  const [low, middle, high] = boys.map((kg, k) => [kg, girls[k]!] as const) as [Pair, Pair, Pair];
  return [Math.min(...low), (middle[0] + middle[1]) / 2, Math.max(...high)];
}

type Pair = readonly [number, number];
