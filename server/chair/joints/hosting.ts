import type { Vec3 } from "../../geometry/solid.ts";
import type { Member } from "../chair.ts";
import { blockHost } from "./block-host.ts";
import { bowHost } from "./bow-host.ts";
import type { Host } from "./host.ts";
import { postHost } from "./post-host.ts";
import { railHost } from "./rail-host.ts";
import { seatHost } from "./seat-host.ts";
import type { Wood } from "./wood.ts";

/**
 * Any member as another's end meets it. `station`: how far along a rail or slat from its first shoulder, mm; halfway unless given. The
 * others are met where their height, or their nearest face, tells.
 */
export function hostOf(member: Member, station?: number): Host {
  switch (member.is) {
    case "post":
      return postHost(member);
    case "rail":
    case "slat":
    case "stick":
      return railHost(member, station ?? member.length / 2);
    case "bow":
      return bowHost(member, station ?? member.path.length / 2);
    case "block":
      return blockHost(member);
    case "seat":
      return seatHost(member);
  }
}

/** The wood of a member about a point, as a joint sees it. */
export const woodOf = (member: Member, near: Vec3): Wood => hostOf(member).wood(near);
