import type { RoundStation } from "../../design/design.ts";

/** The diameter of turned stuff at a distance from its first end: straight from one given place to the next, and to `round` at ends that none names. */
export function diameterOn(
  round: number,
  stations: readonly RoundStation[],
  length: number,
  x: number,
): number {
  const inside = stations.filter(({ at }) => at > 0 && at < length);
  const first = stations.find(({ at }) => at === 0)?.diameter ?? round;
  const last = stations.find(({ at }) => at >= length)?.diameter ?? round;
  const all = [{ at: 0, diameter: first }, ...inside, { at: length, diameter: last }];
  const next = Math.max(
    1,
    all.findIndex(({ at }) => at >= x),
  );
  const to = x >= length ? all.length - 1 : next;
  const [a, b] = [all[to - 1]!, all[to]!];
  const share = Math.min(1, Math.max(0, (x - a.at) / (b.at - a.at)));
  return a.diameter + (b.diameter - a.diameter) * share;
}
