import type { Chair, Joint } from "../../chair/chair.ts";
import { isEndKind } from "../../chair/joints/kinds/index.ts";
import { jointName } from "../../design/identity.ts";
import { height, planeAt } from "../../geometry/plane.ts";
import type { Convex, Plane, Vec3 } from "../../geometry/solid.ts";
import { dot, negate } from "../../geometry/vec.ts";

/** Joints whose mortises are in a member, in the order of the chair. */
export const jointsInto = (chair: Chair, member: string): Joint[] =>
  [...chair.joints.values()].filter(({ entered, kind }) => entered.name === member && isEndKind(kind));

/** The joint that a part's end is cut for. */
export const jointOf = (chair: Chair, part: string, entered: string | undefined): Joint | undefined =>
  entered === undefined ? undefined : chair.joints.get(jointName(part, entered));

/** The side of a tenon or haunch that lies in the face entered: the mortise's mouth, and the plane of that face looking out. */
export function mouthOf(solid: Convex, joint: Joint): { ring: Vec3[]; plane: Plane } | undefined {
  let best = -1;
  let least = -0.05;
  for (const [k, plane] of solid.planes.entries()) {
    const rate = dot(plane.normal, joint.direction);
    if (rate < least && Math.abs(height(plane, joint.root)) < 1e-3) {
      least = rate;
      best = k;
    }
  }
  const face = solid.faces[best];
  if (!face) return undefined;
  // It looks out of the tenon, back towards the part that has it.
  return { ring: face.map((k) => solid.points[k]!), plane: solid.planes[best]! };
}

/** The face entered, looking out of the member; square to the tenon where it has none. */
export const faceEntered = (joint: Joint): Plane =>
  (joint.tenon[0] && mouthOf(joint.tenon[0], joint)?.plane) ?? planeAt(joint.root, negate(joint.direction));

/** How deep a tenon or haunch goes, square to the face entered, at its deepest. */
export const depthOf = (solid: Convex, face: Plane): number =>
  Math.max(...solid.points.map((p) => -height(face, p)));

/** Whether a tenon's end was cut to pass another: it does not lie along the face entered. */
export const isMitred = (joint: Joint): boolean => {
  const face = faceEntered(joint);
  if (joint.sections[0]?.tip !== undefined) return false;
  return joint.tenon.some((solid) =>
    solid.planes.some(
      ({ normal }) => dot(normal, joint.direction) > 0.05 && dot(normal, face.normal) > -0.999_999,
    ),
  );
};

/** The same with the bores that sticks go through, which belong to no end. */
export const jointsAlong = (chair: Chair, member: string): Joint[] =>
  [...chair.joints.values()].filter(
    ({ entered, kind }) => entered.name === member && (isEndKind(kind) || kind === "passing"),
  );
