import type { Chair } from "../../../server/chair/chair.ts";
import { inner, minus, plus, size, type V } from "./vectors.ts";

/** How deep the seat is hollowed where a leg's line comes out: D·sin²(90°·t/L), t the distance to its edge less the rim. */
export function ownHollow(chair: Chair, [at, run]: [readonly [number, number, number], V]): number {
  const { design, plane, outline } = chair.seat!;
  const hollow = design.solid?.hollow?.value;
  if (!hollow) return 0;
  const up = [...plane.normal] as V;
  let deep = 0;
  for (let round = 0; round < 30; round++) {
    const gap = plane.offset - deep - inner(up, [...at] as V);
    // The place where the line is so deep, seen square to the top.
    const out = plus(plus([...at] as V, run, gap / inner(up, run)), up, deep);
    const away = outline.map((a, k) => {
      const [p, q] = [[...a] as V, [...outline[(k + 1) % outline.length]!] as V];
      const side = minus(q, p);
      const share = Math.min(1, Math.max(0, inner(minus(out, p), side) / inner(side, side)));
      return size(minus(out, plus(p, side, share)));
    });
    const t = Math.min(1, Math.max(0, (Math.min(...away) - hollow.rim) / hollow.over));
    deep = hollow.deep * Math.sin((Math.PI / 2) * t) ** 2;
  }
  return deep;
}
