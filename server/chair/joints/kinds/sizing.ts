/**
 * Sizes that several kinds of joint work out alike.
 */
import { sentence } from "../../../../grammar/sentences/sentence.ts";
import type { Size } from "../../../design/design.ts";
import { along } from "../../../geometry/vec.ts";
import type { SectionBox } from "../../chair.ts";
import type { Fault } from "../../fault.ts";
import type { JointSite } from "../joint-site.ts";
import type { TenonFrame } from "../joint-solid.ts";
import type { TenonSizes } from "./kind.ts";

/** How far the tenon's face lies from the part's outside face: as `set` says, else in the middle of the thickness. */
export function acrossThickness(site: JointSite, thick: number): { outside: number; inside: number } {
  const set = site.chosen.facts.set?.value;
  const outside = set?.from === "outside" ? set.distance : (site.thick - thick) / 2;
  return { outside, inside: site.thick - thick - outside };
}

/** `wide` defaults to the part less its shoulders; a given width without shoulders lies in the middle. */
export function acrossWidth(
  site: JointSite,
  frame: TenonFrame,
): { top: number; bottom: number; wide: number } {
  const { facts } = site.chosen;
  const top = facts.shoulderTop?.assumed ? undefined : facts.shoulderTop?.value;
  const bottom = facts.shoulderBottom?.assumed ? undefined : facts.shoulderBottom?.value;
  if (!facts.tenonWide) {
    return { top: top ?? 0, bottom: bottom ?? 0, wide: site.wide - (top ?? 0) - (bottom ?? 0) };
  }
  const wide = sizeOf(facts.tenonWide.value, site, frame, site.wide);
  return { wide, ...placedAcross(site, wide) };
}

/** Where stuff of this width lies: as the shoulders say, the top one first; without them in the middle. */
export function placedAcross(site: JointSite, wide: number): { top: number; bottom: number } {
  const { facts } = site.chosen;
  const top = facts.shoulderTop?.assumed ? undefined : facts.shoulderTop?.value;
  const bottom = facts.shoulderBottom?.assumed ? undefined : facts.shoulderBottom?.value;
  const spare = site.wide - wide;
  const above = top ?? (bottom === undefined ? spare / 2 : spare - bottom);
  return { top: above, bottom: spare - above };
}

/** A size in mm: of itself, or as a share of `own` (the part's) or of the member entered. */
export function sizeOf(size: Size, site: JointSite, frame: TenonFrame, own: number): number {
  if ("mm" in size) return size.mm;
  if (isOwn(size.of, site)) return size.share * own;
  const depth = site.wood.depthAlong(site.origin, frame.direction);
  return (
    size.share * site.wood.thicknessAcross(along(site.origin, frame.direction, depth / 2), frame.acrossThick)
  );
}

/** The length the text gives, or undefined; `depth` is how much wood there is. */
const givenLong = (size: Size | undefined, site: JointSite, depth: number): number | undefined =>
  size && ("mm" in size ? size.mm : size.share * (isOwn(size.of, site) ? site.stuff : depth));

/** That length, or right through where the text says so; without either it is told that none is said. */
export function tenonLong(
  size: Size | undefined,
  site: JointSite,
  depth: number,
  faults: Fault[],
): number | undefined {
  const own = givenLong(size, site, depth);
  const long = site.chosen.facts.through ? Math.max(depth, own ?? 0) : own;
  if (long !== undefined && long > 0) return long;
  return tell(site, faults, sentence("fault.tenon-no-length"));
}

/** One tenon in the middle. */
export const whole = ({ thick, wide }: TenonSizes): SectionBox => ({
  thick: [-thick / 2, thick / 2],
  wide: [-wide / 2, wide / 2],
});

/** Whether a share is of the part that has the tenon, not of the member it enters: a slat's `rail` is the one it enters. */
const isOwn = (of: "rail" | "post", site: JointSite): boolean => of === site.kind;

/** Tells once for each joint of the text why it cannot be cut. */
export function tell(site: JointSite, faults: Fault[], message: string): undefined {
  const told = faults.some(
    (f) => f.is === "not-buildable" && f.at === site.chosen.at && f.message === message,
  );
  if (!told) faults.push({ is: "not-buildable", part: site.part, at: site.chosen.at, message });
}
