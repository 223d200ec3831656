/**
 * A bow as it is made: the strip it is bent from, the form it is bent round, and the places of its bores along its centre line.
 */
import { nearestOnBow, tightestOf } from "../../chair/bows/bow.ts";
import { stripLength } from "../../chair/bows/strip.ts";
import type { Bow, Chair, Joint } from "../../chair/chair.ts";
import { bowEnd } from "../../chair/joints/bow-host.ts";
import type { Vec3 } from "../../geometry/solid.ts";
import { cross, dot, negate } from "../../geometry/vec.ts";
import { jointsAlong } from "./mouths.ts";
import type { BowBore, BowForm, Piece } from "./piece.ts";
import { coneOf } from "./seat-bores.ts";
import { letterOf } from "./setting-out.ts";

/** Every bow of a chair, in the order of the text; `every` so many mm of its centre line the form is given. */
export const bowPieces = (chair: Chair, every: number): { bow: Bow; piece: Piece }[] =>
  [...chair.bows.values()].map((bow) => ({ bow, piece: bowPiece(chair, bow, every) }));

function bowPiece(chair: Chair, bow: Bow, every: number): Piece {
  const { path, name, timber } = bow;
  const crown = bow.sizeAt(path.length / 2);
  const end = bow.sizeAt(0);
  const tapers = Math.abs(end.thick - crown.thick) > 1e-6 || Math.abs(end.wide - crown.wide) > 1e-6;
  const form: BowForm = {
    spots: formSpots(bow, every),
    along: path.length,
    between: 2 * path.at(0).u,
    radius: tightestOf(bow),
    ...(tapers && { ends: end }),
    feet: feetOf(chair, bow),
    bores: boresOf(chair, bow),
  };
  return {
    name,
    is: "bow",
    parts: [{ name, mirrored: false }],
    ...(timber && { timber: timber.species }),
    size: {
      long: stripLength(bow, chair),
      thick: Math.max(crown.thick, end.thick),
      wide: Math.max(crown.wide, end.wide),
      ...(bow.round !== undefined && { round: Math.max(crown.thick, end.thick) }),
    },
    faces: [],
    form,
    datums: [],
    ends: [],
    mortises: [],
    notes: [],
  };
}

/** Places of the centre line from the left end to the crown. */
function formSpots({ path }: Bow, every: number): BowForm["spots"] {
  const half = path.length / 2;
  const count = Math.max(2, Math.ceil(half / every));
  return Array.from({ length: count + 1 }, (_, k) => {
    const along = (half * k) / count;
    const { u, v } = path.at(along);
    return { along, across: u, rise: v };
  });
}

function feetOf(chair: Chair, bow: Bow): BowForm["feet"] {
  const normal = chair.seat?.plane.normal;
  return [...chair.joints.values()].flatMap((joint) => {
    if (joint.part !== bow.name || joint.shape === "none" || !normal) return [];
    const which = joint.end === "left" ? 0 : 1;
    const { out } = bowEnd(bow, which);
    const run = joint.long / Math.abs(dot(joint.direction, normal));
    const cone = coneOf(joint, run);
    return [
      {
        end: joint.end,
        enters: joint.entered.name,
        thick: joint.thick,
        wide: joint.wide,
        round: joint.shape === "round",
        long: joint.long,
        run,
        lean: Math.acos(Math.min(1, Math.abs(dot(out, normal)))),
        ...(cone && { cone }),
      },
    ];
  });
}

/** What is bored in it, along its centre line from the left end. */
function boresOf(chair: Chair, bow: Bow): BowBore[] {
  const found = jointsAlong(chair, bow.name).map((joint) => ({ joint, ...placeOf(bow, joint) }));
  found.sort((a, b) => a.along - b.along);
  return found.map(({ joint, ...place }, k) => ({ letter: letterOf(k), ...place }));
}

function placeOf(bow: Bow, joint: Joint): Omit<BowBore, "letter"> {
  const { s } = nearestOnBow(bow, joint.root, joint.direction);
  const run = bow.way(s);
  const out = cross(run, bow.normal);
  const isLying = Math.abs(bow.normal[2]) > Math.SQRT1_2;
  const top = bow.normal[isLying ? 2 : 1] > 0 ? bow.normal : negate(bow.normal);
  const [above, under] = isLying ? ["top", "bottom"] : ["back", "front"];
  const faces: readonly (readonly [string, Vec3, Vec3])[] = [
    ["outside", out, top],
    ["inside", negate(out), top],
    [above, top, out],
    [under, negate(top), out],
  ];
  const [face, normal, across] = faces.reduce((best, each) =>
    dot(each[1], joint.direction) < dot(best[1], joint.direction) ? each : best,
  );
  const inward = -dot(joint.direction, normal);
  return {
    for: joint.part,
    along: s,
    face,
    diameter: joint.thick,
    lean: {
      along: Math.atan2(dot(joint.direction, run), inward),
      across: Math.atan2(dot(joint.direction, across), inward),
    },
    towards: face === "outside" || face === "inside" ? above : "outside",
    ...(joint.kind === "passing" || joint.facts.through ? {} : { deep: joint.long / Math.max(0.1, inward) }),
  };
}
