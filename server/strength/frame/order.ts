/**
 * An order of the nodes that keeps those that are tied near each other (reverse Cuthill–McKee): the matrix then has a narrow skyline.
 */

/** For each node its new place. `ties` are pairs of nodes. */
export function narrowOrder(count: number, ties: readonly (readonly [number, number])[]): number[] {
  const near: number[][] = Array.from({ length: count }, () => []);
  for (const [a, b] of ties) {
    near[a]?.push(b);
    near[b]?.push(a);
  }
  const degree = (node: number) => near[node]?.length ?? 0;
  const seen = new Array<boolean>(count).fill(false);
  const order: number[] = [];
  const starts = Array.from({ length: count }, (_, node) => node).sort(
    (a, b) => degree(a) - degree(b) || a - b,
  );
  for (const start of starts) {
    if (seen[start]) continue;
    seen[start] = true;
    let next = order.length;
    order.push(start);
    for (; next < order.length; next++) {
      const here = order[next] ?? 0;
      const fresh = [...new Set(near[here] ?? [])].filter((node) => !seen[node]);
      for (const node of fresh.sort((a, b) => degree(a) - degree(b) || a - b)) {
        seen[node] = true;
        order.push(node);
      }
    }
  }
  const place = new Array<number>(count).fill(0);
  for (const [at, node] of order.reverse().entries()) place[node] = at;
  return place;
}
