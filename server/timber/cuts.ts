/**
 * What joints add to a member's body and take out of it: tenons, mortises, and where a board seat lies over it.
 */
import type { Chair, Joint, Member } from "../chair/chair.ts";
import { isEndKind } from "../chair/joints/kinds/index.ts";
import { twinName } from "../design/identity.ts";
import { measure } from "../geometry/convex.ts";
import type { Convex } from "../geometry/solid.ts";
import { boardOver, cutAway, isTurned, solidsOf, throughBoard } from "../solids/part-pieces.ts";
import { trimmedInHollow } from "../solids/through-hollow.ts";
import {
  type Boxed,
  boxed,
  insideOf,
  mirrored,
  type Scribed,
  type Share,
  sameButMirrored,
  scribe,
  sharedBy,
} from "./scribed.ts";

/** A solid that belongs to a member besides its body (a tenon), or is taken out of it (a mortise). */
export interface Cut extends Share {
  sign: 1 | -1;
}

/** Every member's tenons and mortises, by its name. */
export function cutsOf(chair: Chair): Map<string, Cut[]> {
  const cuts = new Cuts(chair);
  for (const member of chair.members.values()) cuts.underBoard(member);
  for (const joint of chair.joints.values()) cuts.joint(joint);
  return cuts.of;
}

class Cuts {
  readonly of = new Map<string, Cut[]>();
  readonly #chair: Chair;
  readonly #board: readonly Boxed[];
  readonly #boxes = new Map<string, Boxed[]>();
  readonly #scribed = new Map<string, Scribed>();

  constructor(chair: Chair) {
    this.#chair = chair;
    this.#board = (chair.seat?.body.pieces ?? []).map(boxed);
  }

  /** What a board seat takes out of a member that it lies over, or that comes through it. */
  underBoard(member: Member): void {
    const under = boardOver(this.#chair, member).length > 0 ? member.body.pieces : [];
    for (const piece of [...under, ...throughBoard(this.#chair, member)])
      this.#put(member.name, -1, sharedBy(piece, this.#board));
  }

  joint(joint: Joint): void {
    // The bodies of rails that cross have their notches already.
    if (joint.kind === "passing") this.#boreThrough(joint);
    else if (isEndKind(joint.kind)) this.#end(joint);
  }

  #boreThrough({ tenon, entered }: Joint): void {
    const bored = this.#chair.members.get(entered.name);
    if (!bored) return;
    for (const solid of tenon)
      this.#put(entered.name, -1, insideOf(solid, measure(solid), this.#woodOf(bored)));
  }

  #end(joint: Joint): void {
    const { part, entered } = joint;
    const trimmed = trimmedInHollow(this.#chair, joint)?.own.map(measure);
    if (trimmed) {
      this.#put(part, 1, trimmed);
      this.#put(entered.name, -1, trimmed);
      return;
    }
    const own = this.#chair.members.get(part);
    const solids = cutAway(solidsOf(joint), own ? boardOver(this.#chair, own) : []);
    const host = this.#chair.members.get(entered.name);
    if (host && isTurned(host)) this.#intoTurned(joint, solids, host);
    else this.#intoFlat(joint, solids, host);
  }

  #intoFlat({ part, entered }: Joint, solids: readonly Convex[], host: Member | undefined): void {
    for (const solid of solids) {
      const measured = measure(solid);
      this.#put(part, 1, [measured]);
      // What comes through, or stands out beside the wood, cuts nothing there.
      if (host) this.#put(entered.name, -1, insideOf(solid, measured, this.#woodOf(host)));
    }
  }

  #intoTurned(joint: Joint, solids: readonly Convex[], host: Member): void {
    const twin = this.#scribed.get(twinName(joint.name));
    const scribed =
      twin && sameButMirrored(this.#chair, joint)
        ? mirrored(twin)
        : scribe(this.#chair, joint, solids, this.#woodOf(host));
    this.#scribed.set(joint.name, scribed);
    this.#put(joint.part, 1, scribed.inside);
    this.#put(host.name, -1, scribed.inside);
    this.#put(joint.part, -1, scribed.taken);
  }

  #woodOf(host: Member): Boxed[] {
    const known = this.#boxes.get(host.name) ?? host.body.pieces.map(boxed);
    this.#boxes.set(host.name, known);
    return known;
  }

  #put(name: string, sign: Cut["sign"], shares: readonly Share[]): void {
    const some = shares
      .filter(({ volume }) => volume > 0)
      .map(({ volume, centroid }) => ({ sign, volume, centroid }));
    const known = this.of.get(name);
    if (known) known.push(...some);
    else if (some.length > 0) this.of.set(name, some);
  }
}
