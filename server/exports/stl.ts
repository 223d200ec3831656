import type { Vec3 } from "../geometry/solid.ts";
import { cross, sub, unit } from "../geometry/vec.ts";
import type { ModelPart } from "./model.ts";

/** Before the count of triangles, by the format: 80 bytes that a reader passes over, and must not begin with "solid". */
const HEADER = 80;
const PER_TRIANGLE = 50;

/** Binary STL of one part in its own measure, mm. Coordinates are single precision; triangles that it makes into lines are left out. */
export function stl({ name, mesh }: ModelPart): Uint8Array {
  const points = mesh.points.map(([x, y, z]): Vec3 => [Math.fround(x), Math.fround(y), Math.fround(z)]);
  const key = points.map((p) => p.join(" "));
  const triangles = mesh.triangles.filter(
    ([a, b, c]) => key[a] !== key[b] && key[b] !== key[c] && key[c] !== key[a],
  );
  const bytes = new Uint8Array(HEADER + 4 + PER_TRIANGLE * triangles.length);
  const view = new DataView(bytes.buffer);
  bytes.set(new TextEncoder().encode(`Seatwright: ${name}, mm`).subarray(0, HEADER));
  view.setUint32(HEADER, triangles.length, true);
  let at = HEADER + 4;
  for (const [a, b, c] of triangles) {
    const [p, q, r] = [points[a]!, points[b]!, points[c]!];
    const normal = unit(cross(sub(q, p), sub(r, p)));
    for (const value of [...normal, ...p, ...q, ...r]) {
      view.setFloat32(at, value, true);
      at += 4;
    }
    at += 2;
  }
  return bytes;
}
