/**
 * A part marked out in plan as the cutter saws it: x to the right, y up the page, z down from its upper face.
 */
import { lessThan, lofted, type Solid, together } from "../solids/manifold.ts";
import type { Read, SheetRead } from "./reading.ts";

export function cutFlat(sheet: SheetRead): Solid {
  const corners = sheet.all("corner");
  const layers = [...new Set(corners.map((corner) => corner.mark.datum))];
  const slabs = layers.map((layer) => {
    const of = (kind: string) => sheet.all(kind).filter((corner) => corner.mark.datum === layer);
    const numbers = [...new Set(of("opening").map((corner) => corner.number("number")))];
    const openings = numbers.map((number) =>
      of("opening").filter((corner) => corner.number("number") === number),
    );
    return openings.map(lofting).reduce(lessThan, lofting(of("corner")));
  });
  return together(slabs);
}

function lofting(corners: readonly Read[]): Solid {
  const top = corners.map((corner): [number, number] => [corner.long("right"), corner.long("up")]);
  const under = corners.map((corner): [number, number] => [
    corner.longOr("right below", corner.long("right")),
    corner.longOr("up below", corner.long("up")),
  ]);
  return lofted(top, under, corners[0]!.long("from"), corners[0]!.long("to"));
}
