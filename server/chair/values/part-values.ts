import { angleBetween } from "../../geometry/vec.ts";
import type { Chair, Joint, Post, Rail } from "../chair.ts";
import { railsAndSlats } from "../member.ts";

/** Puts down one value: the part's name, what follows it, the number. */
export type Put = (part: string, tail: string, number: number | undefined) => void;

/** Every value of the single parts, in the order to list them. */
export function partValues(chair: Pick<Chair, "posts" | "members" | "joints" | "floor">, put: Put): void {
  for (const post of chair.posts.values()) {
    postValues(post, chair, put);
  }
  for (const rail of railsAndSlats(chair)) railValues(rail, put);
}

function postValues(post: Post, chair: Pick<Chair, "joints" | "floor">, put: Put): void {
  put(post.name, "length", post.length);
  const foot = post.pieces[0];
  if (foot && !post.design.standsOn) {
    put(post.name, "foot-bevel", Math.PI / 2 - angleBetween(foot.direction, chair.floor.normal));
  }
  for (const joint of chair.joints.values()) {
    if (joint.part === post.name) jointValues(post.name, "top", joint, put);
  }
}

function railValues(rail: Rail, put: Put): void {
  put(rail.name, "length", rail.length);
  put(rail.name, "round-length", rail.roundLength);
  for (const end of rail.ends) {
    if (end.shoulder && !end.over) {
      put(rail.name, `${end.name}.face-bevel`, end.faceBevel);
      put(rail.name, `${end.name}.edge-bevel`, end.edgeBevel);
    }
    if (end.joint) jointValues(rail.name, end.name, end.joint, put);
  }
}

function jointValues(part: string, end: string, joint: Joint, put: Put): void {
  if (joint.shape === "none") return;
  put(part, `${end}.tenon-thick`, joint.thick);
  put(part, `${end}.tenon-wide`, joint.wide);
  put(part, `${end}.tenon-long`, joint.long);
  put(part, `${end}.mortise-wall`, joint.mortiseWall);
  put(part, `${end}.glue-area`, joint.glueArea);
}
