import type { Steps } from "../../../grammar/steps.ts";
import { boundingBox, boxesMeet, clip, faceArea, intersect, volume } from "../../geometry/convex.ts";
import type { Convex, Plane, Vec3 } from "../../geometry/solid.ts";
import { add, dot, negate, scale, sub, unit } from "../../geometry/vec.ts";
import type { Joint } from "../chair.ts";

/** mm³: less than this is a touch. */
const TOUCH = 1e-3;

/**
 * Cuts the ends of tenons that meet inside one member and are both to be mitred: each along the plane that halves the angle
 * between them, through where their middles cross, half the gap short of it. Tenons that do not meet keep their ends. The joints
 * are changed in place: their solids, volume and glue area. Rests after each member.
 */
export function* mitreTenons(joints: Iterable<Joint>): Steps<void> {
  const byMember = new Map<string, Joint[]>();
  for (const joint of joints) {
    if (!joint.facts.mitre || joint.tenon.length === 0) continue;
    const known = byMember.get(joint.entered.name);
    if (known) known.push(joint);
    else byMember.set(joint.entered.name, [joint]);
  }
  for (const group of byMember.values()) {
    group.forEach((a, i) => {
      for (const b of group.slice(i + 1)) mitrePair(a, b);
    });
    yield;
  }
}

function mitrePair(a: Joint, b: Joint): void {
  const plane = mitrePlane(a, b);
  if (!plane || !meet(a, b)) return;
  const gap = Math.max(a.facts.mitre?.value.gap ?? 0, b.facts.mitre?.value.gap ?? 0);
  cut(a, { normal: plane.normal, offset: plane.offset - gap / 2 });
  cut(b, { normal: negate(plane.normal), offset: -plane.offset - gap / 2 });
}

/** The plane that halves the angle between two tenons, looking out of the first; undefined when they go the same way. */
function mitrePlane(a: Joint, b: Joint): Plane | undefined {
  const apart = sub(a.direction, b.direction);
  if (dot(apart, apart) < 1e-6) return undefined;
  const normal = unit(apart);
  return { normal, offset: dot(normal, crossing(a, b)) };
}

/** Midway between the middles of two tenons where they come nearest. */
function crossing(a: Joint, b: Joint): Vec3 {
  const between = sub(b.root, a.root);
  const lean = dot(a.direction, b.direction);
  const det = 1 - lean * lean;
  const da = dot(between, a.direction);
  const db = dot(between, b.direction);
  // Nearly opposite tenons meet halfway between their roots.
  const t = det < 1e-6 ? da / 2 : (da - lean * db) / det;
  const s = det < 1e-6 ? -db / 2 : (lean * da - db) / det;
  return scale(add(add(a.root, scale(a.direction, t)), add(b.root, scale(b.direction, s))), 0.5);
}

const solids = (joint: Joint): Convex[] => (joint.haunch ? [...joint.tenon, joint.haunch] : joint.tenon);

function meet(a: Joint, b: Joint): boolean {
  return solids(a).some((one) =>
    solids(b).some((other) => {
      if (!boxesMeet(boundingBox(one), boundingBox(other))) return false;
      const shared = intersect(one, other);
      return shared !== null && volume(shared) > TOUCH;
    }),
  );
}

function cut(joint: Joint, plane: Plane): void {
  const whole = sum(joint.tenon);
  const tenon = joint.tenon.map((solid) => clip(solid, plane)).filter((solid) => solid !== null);
  const haunch = joint.haunch ? clip(joint.haunch, plane) : null;
  const left = sum(tenon);
  const cheeks = cheeksOf(joint, joint.tenon);
  if (cheeks > 0) joint.glueArea *= cheeksOf(joint, tenon) / cheeks;
  joint.volume += left - whole;
  if (joint.haunch) joint.volume += (haunch ? volume(haunch) : 0) - volume(joint.haunch);
  joint.tenon = tenon;
  if (haunch) joint.haunch = haunch;
  else delete joint.haunch;
}

/** The area of the faces along a tenon that are glued: of a squared one those across its thickness, mm². */
function cheeksOf({ shape, acrossThick, direction }: Joint, solids: readonly Convex[]): number {
  return solids.reduce((total, solid) => {
    const glued = solid.planes.map(({ normal }) =>
      shape === "round" ? Math.abs(dot(normal, direction)) < 0.5 : Math.abs(dot(normal, acrossThick)) > 0.9,
    );
    return total + glued.reduce((area, counts, face) => area + (counts ? faceArea(solid, face) : 0), 0);
  }, 0);
}

const sum = (some: readonly Convex[]): number => some.reduce((total, solid) => total + volume(solid), 0);
