import { jointName } from "../../design/identity.ts";
import type { EndKind } from "../../design/joint-facts.ts";
import { volume } from "../../geometry/convex.ts";
import { flipped, lineMeets } from "../../geometry/plane.ts";
import type { Convex } from "../../geometry/solid.ts";
import { along, cross, dot, negate, scale, unit } from "../../geometry/vec.ts";
import type { Joint } from "../chair.ts";
import type { Fault } from "../fault.ts";
import type { JointSite } from "./joint-site.ts";
import { slopedPrism, type TenonFrame } from "./joint-solid.ts";
import { jointKinds, kindAsked } from "./kinds/index.ts";
import type { Cut, Form } from "./kinds/kind.ts";

/** A tenon that meets the face at less than this from along it (sine of 3°) cannot be cut. */
const ALONG_FACE = 0.05;

/**
 * The joint at a site, as cut. Its shape is `none` where the text gives no tenon, or too little to cut one; the latter is added to `faults`.
 *
 * `long` is how deep the tenon goes, square to the face it enters, on its middle; its end is parallel to that face, so it lies
 * equally deep all over. In line with the rail, thickness and width are square to the rail. A tenon square to the face keeps its
 * cheeks along the shoulder line of the rail's outside face.
 */
export function jointAt(site: JointSite, faults: Fault[]): Joint {
  const { facts } = site.chosen;
  const asked = kindAsked(facts, site);
  const kind = asked && jointKinds[asked];
  if (!asked || !kind) return plainJoint(site);
  tellRefused(site, asked, faults);
  const frame = frameAt(site, kind.square === true || facts.line?.value === "square");
  const sizes = frame && kind.sizes(site, frame, faults);
  if (!frame || !sizes) return plainJoint(site);
  const { form } = kind;
  const { thick, wide, shoulders } = sizes;
  const off = along(
    scale(site.out, site.thick / 2 - shoulders.outside - thick / 2),
    site.up,
    site.wide / 2 - shoulders.top - wide / 2,
  );
  const root = lineMeets(site.shoulder, along(site.origin, off, 1), site.inward) ?? site.origin;
  frame.root = root;
  const slant = Math.abs(dot(frame.direction, site.shoulder.normal));
  const depthThere = site.wood.depthAlong(root, frame.direction) * slant;
  const long = kind.long(site, depthThere, faults);
  if (long === undefined) return plainJoint(site);
  const run = long / slant;
  const overHollow = site.wood.beginsAlong?.(root, frame.direction) ?? 0;
  const sections = kind.sections(sizes, facts);
  const cuts = sections.map(
    (section): Cut => ({
      section,
      thick: section.thick[1] - section.thick[0],
      wide: section.wide[1] - section.wide[0],
      tip: section.tip ?? 1,
      run,
      glued: Math.max(0, Math.min(run, depthThere / slant) - overHollow),
    }),
  );
  const tenon = sections.flatMap((section) => form.solid(frame, section, long) ?? []);
  const haunch = kind.haunched ? haunchOf(site, frame, { thick, wide, top: shoulders.top }) : undefined;
  const walls = cuts.map((cut, k) => (tenon[k] ? wallAt(site, frame, form, tenon[k], cut) : 0));
  const wall = walls.length === 0 ? 0 : Math.min(...walls);
  return {
    ...plainJoint(site),
    facts,
    kind: asked,
    shape: form.name,
    thick,
    wide,
    long,
    direction: frame.direction,
    root,
    acrossThick: frame.acrossThick,
    acrossWide: frame.acrossWide,
    shoulders,
    tenon,
    sections,
    ...(kind.separate ? socketOf(site, frame, form, cuts, long) : {}),
    ...(haunch ? { haunch } : {}),
    volume:
      cuts.reduce((sum, cut, k) => sum + volumeOf(form, cut, tenon[k]), 0) + (haunch ? volume(haunch) : 0),
    mortiseWall: kind.open ? Math.max(0, wall) : wall,
    depthThere,
    ...(overHollow > 0 ? { overHollow: overHollow * slant } : {}),
    glueArea: cuts.reduce((sum, cut, k) => sum + form.glued(frame, cut, site.wood.grain, walls[k] ?? 0), 0),
  };
}

/** mm³. A cone's ends slant to its axis, so it is measured as it is cut. */
const volumeOf = (form: Form, cut: Cut, solid: Convex | undefined): number =>
  cut.tip < 1 && solid ? volume(solid) : form.area(cut) * cut.run;

/** Which way the tenon goes and how its section lies; undefined when it would run along the face. */
function frameAt(site: JointSite, square: boolean): TenonFrame | undefined {
  const { shoulder, out, up, inward, origin: root } = site;
  const { facts } = site.chosen;
  if (square) {
    const direction = negate(shoulder.normal);
    const lengthwise = unit(cross(shoulder.normal, out));
    const acrossWide = dot(lengthwise, up) < 0 ? negate(lengthwise) : lengthwise;
    const across = cross(acrossWide, direction);
    return {
      root,
      shoulder,
      direction,
      acrossWide,
      acrossThick: dot(across, out) < 0 ? negate(across) : across,
    };
  }
  const { bow } = site;
  const turn = facts.withBow?.value && bow ? 2 * Math.atan((2 * bow.rise) / bow.length) : 0;
  const axis = bow?.towards === "up" ? up : out;
  const direction = along(scale(inward, Math.cos(turn)), axis, -Math.sin(turn));
  if (dot(direction, shoulder.normal) > -ALONG_FACE) return undefined;
  const turned = along(scale(axis, Math.cos(turn)), inward, Math.sin(turn));
  const frame = { root, shoulder, direction, acrossThick: out, acrossWide: up };
  return axis === up ? { ...frame, acrossWide: turned } : { ...frame, acrossThick: turned };
}

/** The tongue that fills the top shoulder, beside the tenon; a sloped one runs out at the rail's edge. */
function haunchOf(
  site: JointSite,
  frame: TenonFrame,
  tenon: { thick: number; wide: number; top: number },
): Convex | undefined {
  const haunch = site.chosen.facts.haunch?.value;
  const wide = Math.min(haunch?.wide ?? tenon.top, tenon.top);
  if (!haunch || !(wide > 0) || !(haunch.long > 0)) return undefined;
  return slopedPrism(
    frame,
    { thick: [-tenon.thick / 2, tenon.thick / 2], wide: [tenon.wide / 2, tenon.wide / 2 + wide] },
    haunch.long,
    haunch.sloped ? 0 : haunch.long,
  );
}

/** Facts that its kind cannot have, each told on its own place. */
function tellRefused({ part, chosen }: JointSite, kind: EndKind, faults: Fault[]): void {
  for (const fact of jointKinds[kind].refuses ?? []) {
    const at = chosen.facts[fact]?.at;
    if (!at || faults.some((fault) => fault.is === "fact-refused" && fault.at === at)) continue;
    faults.push({ is: "fact-refused", part, at, kind, fact });
  }
}

/** The mortise in the part's own end, as the tongue's other half fills it, and the least wood left beside it. */
function socketOf(
  site: JointSite,
  frame: TenonFrame,
  form: Form,
  cuts: readonly Cut[],
  long: number,
): Pick<Joint, "socket" | "socketWall"> {
  const back: TenonFrame = {
    ...frame,
    direction: negate(frame.direction),
    shoulder: flipped(frame.shoulder),
  };
  const solids = cuts.map((cut) => form.solid(back, cut.section, long));
  const own = { ...site, shoulder: back.shoulder, wood: site.own };
  const walls = cuts.flatMap((cut, k) => (solids[k] ? wallAt(own, back, form, solids[k], cut) : []));
  return { socket: solids.filter((solid) => solid !== undefined), socketWall: Math.min(...walls) };
}

const middleOf = ([low, high]: [number, number]): number => (low + high) / 2;

function wallAt(site: JointSite, frame: TenonFrame, form: Form, tenon: Convex, cut: Cut): number {
  const off = along(
    scale(frame.acrossThick, middleOf(cut.section.thick)),
    frame.acrossWide,
    middleOf(cut.section.wide),
  );
  const root = lineMeets(site.shoulder, along(frame.root, off, 1), frame.direction) ?? frame.root;
  return site.wood.wallBeside({
    tenon,
    root,
    tip: along(root, frame.direction, cut.run),
    direction: frame.direction,
    face: site.shoulder.normal,
    // A slanting end runs out by no more than the section's half size over the slant.
    reach:
      cut.run / 2 +
      Math.hypot(cut.thick, cut.wide) / 2 / Math.abs(dot(frame.direction, site.shoulder.normal)),
    atTip: cut.tip,
    support: (w) =>
      form.support(
        Math.abs(dot(w, frame.acrossThick)) * (cut.thick / 2),
        Math.abs(dot(w, frame.acrossWide)) * (cut.wide / 2),
      ),
  });
}

/** A joint with nothing cut: the ends just meet. */
function plainJoint(site: JointSite): Joint {
  const { chosen } = site;
  return {
    name: jointName(site.part, site.entered.name),
    part: site.part,
    end: site.end,
    entered: site.entered,
    facts: chosen.facts,
    ...(chosen.design === undefined ? {} : { design: chosen.design }),
    at: chosen.at,
    kind: "none",
    shape: "none",
    thick: 0,
    wide: 0,
    long: 0,
    direction: site.inward,
    root: site.origin,
    acrossThick: site.out,
    acrossWide: site.up,
    shoulders: { outside: 0, inside: 0, top: 0, bottom: 0 },
    tenon: [],
    socket: [],
    sections: [],
    volume: 0,
    mortiseWall: 0,
    depthThere: 0,
    glueArea: 0,
  };
}
