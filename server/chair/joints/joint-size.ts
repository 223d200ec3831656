import type { Size } from "../../design/design.ts";
import { along, dot } from "../../geometry/vec.ts";
import type { Fault, Joint } from "../chair.ts";
import type { JointSite } from "./joint-site.ts";
import type { TenonFrame } from "./joint-solid.ts";

export interface TenonSizes {
  shape: "rectangular" | "round" | "forked";
  /** mm; both the diameter of a round one; of dowels the width over all. */
  thick: number;
  wide: number;
  shoulders: Joint["shoulders"];
}

/** The tenon's section and what is left of the part around it; undefined when no tenon was asked for or its thickness is nowhere given. */
export function tenonSizes(site: JointSite, frame: TenonFrame, faults: Fault[]): TenonSizes | undefined {
  const { facts } = site.chosen;
  if (facts.dowels) return dowelSizes(site, facts.dowels.value, faults);
  if (facts.bridle) return forkSizes(site, frame, faults);
  if (facts.round) return roundSizes(site, facts.round.value.diameter);
  if (!facts.tenonThick && !facts.tenonLong && !facts.tenonWide) return undefined;
  if (site.round !== undefined && (facts.tenonThick === undefined || facts.tenonThick.value === "full")) {
    return roundSizes(site, site.round);
  }
  if (!facts.tenonThick) {
    tell(site, faults, "its tenon has no thickness: say `thick` in the joint");
    return undefined;
  }
  const given = facts.tenonThick.value;
  const thick = given === "full" ? site.stuff : sizeOf(given, site, frame, site.stuff);
  if (!(thick > 0)) {
    tell(site, faults, "its tenon comes to no thickness");
    return undefined;
  }
  const { top, bottom, wide } = widthOf(site, frame);
  if (!(wide > 0)) {
    tell(site, faults, "its shoulders leave no width for a tenon");
    return undefined;
  }
  const set = facts.set?.value;
  const outside = set?.from === "outside" ? set.distance : (site.thick - thick) / 2;
  return {
    shape: "rectangular",
    thick,
    wide,
    shoulders: { outside, inside: site.thick - thick - outside, top, bottom },
  };
}

/** How deep the tenon goes, square to the face; right through when the text says so. `depth` is how much wood there is. */
export function longOf(site: JointSite, depth: number, faults: Fault[]): number | undefined {
  const { facts } = site.chosen;
  // Half of a dowel is in either part; a fork goes over the whole of what it meets.
  if (facts.dowels) return facts.dowels.value.long / 2;
  if (facts.bridle && depth > 0) return depth;
  const given = facts.round?.value.long ?? facts.tenonLong?.value;
  const own =
    given && ("mm" in given ? given.mm : given.share * (isOwn(given.of, site) ? site.stuff : depth));
  const long = facts.through ? Math.max(depth, own ?? 0) : own;
  if (long !== undefined && long > 0) return long;
  tell(site, faults, "its tenon has no length: say `long` in the joint");
  return undefined;
}

/** Dowels spread evenly over the width that the shoulders leave. */
function dowelSizes(
  site: JointSite,
  { count, diameter, long }: { count: number; diameter: number; long: number },
  faults: Fault[],
): TenonSizes | undefined {
  if (!(diameter > 0 && long > 0)) return undefined;
  const { facts } = site.chosen;
  const [top, bottom] = [facts.shoulderTop?.value ?? 0, facts.shoulderBottom?.value ?? 0];
  const step = (site.wide - top - bottom) / count;
  if (step <= diameter) {
    tell(site, faults, "its dowels have no room side by side: take fewer or thinner ones");
    return undefined;
  }
  const set = facts.set?.value;
  const outside = set?.from === "outside" ? set.distance : (site.thick - diameter) / 2;
  const beside = (step - diameter) / 2;
  return {
    shape: "round",
    thick: diameter,
    wide: diameter + (count - 1) * step,
    shoulders: {
      outside,
      inside: site.thick - diameter - outside,
      top: top + beside,
      bottom: bottom + beside,
    },
  };
}

/** A third of the rail is left out between the fork's tines, unless the text says how much. */
function forkSizes(site: JointSite, frame: TenonFrame, faults: Fault[]): TenonSizes | undefined {
  const given = site.chosen.facts.tenonThick?.value;
  const thick = given && given !== "full" ? sizeOf(given, site, frame, site.stuff) : site.stuff / 3;
  const { top, bottom, wide } = widthOf(site, frame);
  const set = site.chosen.facts.set?.value;
  const outside = set?.from === "outside" ? set.distance : (site.thick - thick) / 2;
  const inside = site.thick - thick - outside;
  if (Math.abs(dot(frame.acrossThick, site.wood.grain)) > Math.SQRT1_2) {
    tell(
      site,
      faults,
      "a fork here would cut through what it goes over: its slot must run with the grain there",
    );
    return undefined;
  }
  if (thick > 0 && wide > 0 && outside > 0 && inside > 0)
    return { shape: "forked", thick, wide, shoulders: { outside, inside, top, bottom } };
  tell(site, faults, "its end is too thin for a fork");
  return undefined;
}

function roundSizes(site: JointSite, diameter: number): TenonSizes | undefined {
  if (!(diameter > 0)) return undefined;
  const { facts } = site.chosen;
  const set = facts.set?.value;
  const outside = set?.from === "outside" ? set.distance : (site.thick - diameter) / 2;
  const spare = site.wide - diameter;
  const top =
    facts.shoulderTop?.value ?? (facts.shoulderBottom ? spare - facts.shoulderBottom.value : spare / 2);
  return {
    shape: "round",
    thick: diameter,
    wide: diameter,
    shoulders: { outside, inside: site.thick - diameter - outside, top, bottom: spare - top },
  };
}

/** `wide` defaults to the part less its shoulders; a given width without shoulders lies in the middle. */
function widthOf(site: JointSite, frame: TenonFrame): { top: number; bottom: number; wide: number } {
  const { facts } = site.chosen;
  const top = facts.shoulderTop?.assumed ? undefined : facts.shoulderTop?.value;
  const bottom = facts.shoulderBottom?.assumed ? undefined : facts.shoulderBottom?.value;
  if (!facts.tenonWide) {
    return { top: top ?? 0, bottom: bottom ?? 0, wide: site.wide - (top ?? 0) - (bottom ?? 0) };
  }
  const wide = sizeOf(facts.tenonWide.value, site, frame, site.wide);
  const spare = site.wide - wide;
  const above = top ?? (bottom === undefined ? spare / 2 : spare - bottom);
  return { top: above, bottom: spare - above, wide };
}

function sizeOf(size: Size, site: JointSite, frame: TenonFrame, own: number): number {
  if ("mm" in size) return size.mm;
  if (isOwn(size.of, site)) return size.share * own;
  const depth = site.wood.depthAlong(site.origin, frame.direction);
  return (
    size.share * site.wood.thicknessAcross(along(site.origin, frame.direction, depth / 2), frame.acrossThick)
  );
}

/** Whether a share is of the part that has the tenon, not of the member it enters: a slat's `rail` is the one it enters. */
const isOwn = (of: "rail" | "post", site: JointSite): boolean => of === site.kind;

function tell(site: JointSite, faults: Fault[], message: string): void {
  if (faults.some((f) => f.is === "not-buildable" && f.at === site.chosen.at && f.message === message))
    return;
  faults.push({ is: "not-buildable", part: site.part, at: site.chosen.at, message });
}
