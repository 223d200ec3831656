/**
 * A part marked out in plan as the cutter saws it: x to the right, y up the page, z down from its upper face.
 */
import { lofted, type Solid, together } from "../solids/manifold.ts";
import type { SheetRead } from "./reading.ts";

export function cutFlat(sheet: SheetRead): Solid {
  const corners = sheet.all("corner");
  const layers = [...new Set(corners.map((corner) => corner.mark.datum))];
  const slabs = layers.map((layer) => {
    const own = corners.filter((corner) => corner.mark.datum === layer);
    const top = own.map((corner): [number, number] => [corner.long("right"), corner.long("up")]);
    const under = own.map((corner): [number, number] => [
      corner.longOr("right below", corner.long("right")),
      corner.longOr("up below", corner.long("up")),
    ]);
    return lofted(top, under, own[0]!.long("from"), own[0]!.long("to"));
  });
  return together(slabs);
}
