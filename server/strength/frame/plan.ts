/**
 * In which order a frame's nodes are taken out when it is solved, those with the fewest neighbours first (minimum degree, any text on sparse
 * matrices), so that few new ties come about.
 */

export interface Plan {
  /** Nodes in the order in which they are taken out; those that are kept come last, in the order given. */
  order: Int32Array;
  /** How many are taken out. */
  taken: number;
  /** Place of each node in the order. */
  place: Int32Array;
  /** For each place, the later places that it is tied to when it is taken out, rising. */
  later: Int32Array[];
  /** For each place, the earlier ones that are tied to it. */
  earlier: Int32Array[];
  /** Index of the first block of each place's column; its diagonal block is that of its place. */
  start: Int32Array;
  /** Blocks below the diagonal in all. */
  blocks: number;
}

/** A plan for so many nodes with these ties; `kept` are not taken out and count as tied to each other. */
export function planOf(
  count: number,
  ties: readonly (readonly [number, number])[],
  kept: readonly number[],
): Plan {
  const near = Array.from({ length: count }, () => new Set<number>());
  for (const [a, b] of ties) {
    if (a === b) continue;
    near[a]?.add(b);
    near[b]?.add(a);
  }
  const lists = near.map((set) => [...set]);
  const mark = new Int32Array(count).fill(-1);
  const out = new Uint8Array(count);
  for (const node of kept) out[node] = 1;
  const order = new Int32Array(count);
  const found: number[][] = [];
  const taken = count - kept.length;
  for (let step = 0; step < taken; step++) {
    let best = -1;
    for (let node = 0; node < count; node++)
      if (!out[node] && (best < 0 || (lists[node] as number[]).length < (lists[best] as number[]).length))
        best = node;
    out[best] = 1;
    order[step] = best;
    const mine = lists[best] as number[];
    found.push(mine);
    for (const node of mine) {
      const others = (lists[node] as number[]).filter((each) => each !== best);
      for (const each of others) mark[each] = node;
      for (const each of mine) if (each !== node && mark[each] !== node) others.push(each);
      for (const each of others) mark[each] = -1;
      lists[node] = others;
    }
  }
  for (const [k, node] of kept.entries()) {
    order[taken + k] = node;
    found.push(kept.slice(k + 1));
  }
  const place = new Int32Array(count);
  for (const [at, node] of order.entries()) place[node] = at;
  const later = found.map((nodes) => Int32Array.from(nodes, (node) => place[node] as number).sort());
  const before: number[][] = Array.from({ length: count }, () => []);
  const start = new Int32Array(count);
  let blocks = 0;
  for (const [at, places] of later.entries()) {
    start[at] = blocks;
    blocks += places.length;
    for (const each of places) before[each]?.push(at);
  }
  return { order, taken, place, later, earlier: before.map((each) => Int32Array.from(each)), start, blocks };
}
