import type { LengthUnit, LoadDesign, PushTarget } from "../../design/design.ts";
import { printLength, printQuantity } from "../../design/units.ts";

/** A load of the maker's own, a short line for each push, then what holds the feet and how often it comes. */
export function aboutLoad({ pushes, stops, times }: LoadDesign, unit: LengthUnit): string[] {
  const lines = pushes.map(
    ({ force, way, target }) =>
      `${printQuantity({ number: force.value, dimension: "force" }, unit)} ${way.value} on ${spot(target.value, unit)}`,
  );
  if (stops) lines.push(`Stops at the ${stops.value.join(" and ")}`);
  if ((times?.value ?? 1) > 1) lines.push(`${times?.value} times`);
  return lines;
}

function spot(target: PushTarget, unit: LengthUnit): string {
  const mm = (number: number) => printLength(number, unit);
  if (target.is === "seat") {
    const { out, back } = target;
    const places = [
      ...(out === undefined ? [] : [`${mm(out)} out`]),
      ...(back === undefined ? [] : [`${mm(back)} back`]),
    ];
    return places.length > 0 ? `the seat, ${places.join(", ")}` : "the middle of the seat";
  }
  const { part } = target;
  const name = part.side ? `${part.name}.${part.side}` : part.name;
  if (target.kind === "post")
    return target.height === undefined ? `the top of ${name}` : `${name}, ${mm(target.height)} up`;
  const { station } = target;
  if (!station) return `the middle of ${name}`;
  return "mm" in station
    ? `${name}, ${mm(station.mm)} along`
    : `${name} at ${Number(station.share.toFixed(3))}`;
}
