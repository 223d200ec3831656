/**
 * What is lettered, as SVG elements in the sheet's millimetres.
 */

import { HALF_HIGH } from "../flag-places.ts";
import { element, pathThrough } from "../svg.ts";
import type { Placed } from "./search.ts";
import { LINE } from "./type-scale.ts";

/** Words, leaders and flags, from pixels at this scale; flags in a group of their own, over the rest. */
export function letteringElements(placed: readonly Placed[], scale: number): SVGGElement[] {
  const flags = placed.filter(isFlag);
  const words = placed.filter((one) => !isFlag(one));
  return [
    element("g", { class: "lettering" }, ...words.flatMap((one) => wordElements(one, scale))),
    element("g", { class: "flags" }, ...flags.map((one) => flagElement(one, scale))),
  ];
}

const isFlag = ({ label }: Placed) => label.kind.startsWith("flag ");
const mm = (px: number, scale: number) => Math.round((px / scale) * 100) / 100;

function wordElements({ label, lines, at, anchor, upright, leader }: Placed, scale: number): SVGElement[] {
  const [x, y] = [mm(at[0], scale), mm(at[1], scale)];
  const text = element("text", {
    class: label.kind,
    x,
    y,
    "font-size": mm(label.size, scale),
    "text-anchor": anchor,
    ...(upright && { transform: `rotate(-90 ${x} ${y})` }),
  });
  if (lines.length === 1) text.append(lines[0]!);
  else
    for (const [k, line] of lines.entries())
      text.append(element("tspan", { x, dy: k === 0 ? 0 : `${LINE}em` }, line));
  if (!leader) return [text];
  const line = leaderElement(leader, scale, "leader-to-words");
  // A leader that ends within an outline ends in a dot; one that ends on a line does not.
  return label.kind.includes("named") ? [line, leaderEnd(leader, scale, 1.7), text] : [line, text];
}

const leaderEnd = ([[x, y]]: NonNullable<Placed["leader"]>, scale: number, r: number) =>
  element("circle", { class: "leader-end", cx: mm(x, scale), cy: mm(y, scale), r: mm(r, scale) });

const leaderElement = (
  leader: NonNullable<Placed["leader"]>,
  scale: number,
  className: string,
  part?: string,
) =>
  element("path", {
    class: className,
    d: pathThrough(leader.map(([x, y]) => [x / scale, y / scale] as const)),
    ...(part !== undefined && { "data-part": part }),
  });

/** A flag of an error is pointed and filled, that of a warning rounded and open. */
function flagElement({ label, lines, at, box, leader }: Placed, scale: number): SVGGElement {
  const part = label.of ?? "";
  const half = (box.right - box.left) / 2;
  const high = HALF_HIGH;
  const d = label.kind.includes("error")
    ? `M${-half} 0L${-half + 5} ${-high}H${half - 5}L${half} 0L${half - 5} ${high}H${-half + 5}Z`
    : `M${-half + high} ${-high}H${half - high}A${high} ${high} 0 0 1 ${half - high} ${high}H${-half + high}A${high} ${high} 0 0 1 ${-half + high} ${-high}Z`;
  const at0 = `translate(${mm(at[0], scale)} ${mm(at[1], scale)}) scale(${1 / scale})`;
  return element(
    "g",
    { class: label.kind, "data-part": part },
    ...(leader ? [leaderElement(leader, scale, "leader", part), leaderEnd(leader, scale, 2.2)] : []),
    element(
      "g",
      { class: "board", transform: at0 },
      element("path", { d, "data-part": part }),
      element("text", { y: 4.5, "text-anchor": "middle", "font-size": label.size }, lines.join(" ")),
    ),
  );
}
