import { finish, type Steps } from "../../grammar/steps.ts";
import type { Chair, Joint } from "../chair/chair.ts";
import { kept, keptSteps } from "../chair/kept.ts";
import { type Bounds, boundingBox, boxesMeet, intersect, volume } from "../geometry/convex.ts";
import { distanceBetween } from "../geometry/distance.ts";
import type { Convex, Vec3 } from "../geometry/solid.ts";

/** Two tenons inside one member: how much of them is in the same place, or how much wood stands between them. */
interface Meeting {
  /** Full name of the member entered. */
  member: string;
  a: Joint;
  b: Joint;
  /** mm³ that both would fill. */
  overlap: number;
  /** Least wood between the mortises, mm; 0 when they meet. */
  wall: number;
  /** Where that is, as drawn. */
  place: Vec3;
}

/** mm³: less than this is a touch, not a meeting. */
const touch = 1e-3;

/** Mortises that one is found to be cut into by, of those that come after it; where there are more, they are all in one place. */
const MOST_MET = 8;

/** Mortises further apart than this do not concern each other unless somebody asks, mm. */
const near = 60;

/** Every pair of mortises of one member that meet or stand nearer to each other than `within` mm, nearest first. */
export const meetingsInside = (chair: Chair, within = near): Meeting[] =>
  finish(meetingsInsideSteps(chair, within));

/** The same, resting after each mortise. */
function* meetingsInsideSteps(chair: Chair, within: number): Steps<Meeting[]> {
  const byMember = new Map<string, Cut[]>();
  const put = (member: string, joint: Joint, solids: readonly Convex[]) => {
    const known = byMember.get(member);
    const cut = { joint, solids: solids.map((solid) => ({ solid, box: boundingBox(solid) })) };
    if (known) known.push(cut);
    else byMember.set(member, [cut]);
  };
  for (const joint of chair.joints.values()) {
    if (joint.tenon.length === 0) continue;
    put(joint.entered.name, joint, mortiseSolids(joint));
    if (joint.socket.length > 0) put(joint.part, joint, joint.socket);
  }
  const found: Meeting[] = [];
  for (const [member, cuts] of byMember) {
    for (const [i, a] of cuts.entries()) {
      yield;
      let met = 0;
      for (let j = i + 1; j < cuts.length && met < MOST_MET; j++) {
        const meeting = meetingOf(member, a, cuts[j]!, within);
        if (!meeting) continue;
        found.push(meeting);
        if (meeting.overlap > touch) met++;
      }
    }
  }
  return found.sort((x, y) => rounded(x.wall) - rounded(y.wall) || rounded(y.overlap) - rounded(x.overlap));
}

/** Twins differ by the rounding of the machine alone, and stay in the order of the joints. */
const rounded = (size: number): number => Math.round(size * 1e6);

/** What rules ask for as a rule, mm: found once a chair. */
const usual = 10;
const usualMeetings = (chair: Chair): Meeting[] => meetingsInside(chair, usual);
const usualSteps = (chair: Chair): Steps<Meeting[]> => meetingsInsideSteps(chair, usual);

/** The same as `meetingsInside`, for rules: several ask of one chair. */
export const meetingsWithin = (chair: Chair, within: number): readonly Meeting[] =>
  within > usual
    ? meetingsInside(chair, within)
    : kept(chair, usualMeetings).filter(({ wall, overlap }) => wall < within || overlap > 0);

/** The same, resting where they are found for the first time; for no more than the usual distance. */
export function* meetingsWithinSteps(chair: Chair, within: number): Steps<readonly Meeting[]> {
  const all = yield* keptSteps(chair, usualMeetings, usualSteps);
  return all.filter(({ wall, overlap }) => wall < within || overlap > 0);
}

/** The solids a joint's mortise takes out of the member entered: its tenons and its haunch. */
export function mortiseSolids(joint: Joint): Convex[] {
  return joint.haunch ? [...joint.tenon, joint.haunch] : joint.tenon;
}

interface Cut {
  joint: Joint;
  solids: { solid: Convex; box: Bounds }[];
}

function meetingOf(member: string, a: Cut, b: Cut, within: number): Meeting | undefined {
  let overlap = 0;
  let wall = Number.POSITIVE_INFINITY;
  let place: Vec3 = a.joint.root;
  for (const one of a.solids) {
    for (const other of b.solids) {
      if (!boxesMeet(one.box, other.box, within)) continue;
      const shared = boxesMeet(one.box, other.box) ? intersect(one.solid, other.solid) : null;
      const filled = shared ? volume(shared) : 0;
      if (filled > touch) {
        overlap += filled;
        place = shared!.points[0]!;
        wall = 0;
      } else if (wall > 0) {
        const { distance, onA } = distanceBetween(one.solid, other.solid);
        if (distance < wall) {
          wall = distance;
          place = onA;
        }
      }
    }
  }
  return wall < within || overlap > 0 ? { member, a: a.joint, b: b.joint, overlap, wall, place } : undefined;
}
