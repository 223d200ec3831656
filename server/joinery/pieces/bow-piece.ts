/**
 * A bow as it is made: the strip it is bent from, the form it is bent round, and the places of its bores along its centre line.
 */
import { tightestOf } from "../../chair/bows/bow.ts";
import { stripLength } from "../../chair/bows/strip.ts";
import type { Bow, Chair } from "../../chair/chair.ts";
import { bowEnd } from "../../chair/joints/bow-host.ts";
import { cross, dot, negate } from "../../geometry/vec.ts";
import { boresOf } from "./bow-bores.ts";
import type { BowForm, Piece } from "./piece.ts";
import { coneOf } from "./seat-bores.ts";

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
    lean: Math.atan2(path.at(0).du, path.at(0).dv),
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
    const into = dot(out, normal) > 0 ? normal : negate(normal);
    const outside = cross(bow.way(which * bow.path.length), bow.normal);
    const back = bow.normal[1] > 0 ? bow.normal : negate(bow.normal);
    const inward = dot(out, into);
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
        lean: {
          outward: Math.atan2(dot(into, outside), inward),
          back: Math.atan2(dot(into, back), inward),
        },
        ...(cone && { cone }),
      },
    ];
  });
}
