import { sentence } from "../../../grammar/sentences/sentence.ts";
import type { Chair } from "../../chair/chair.ts";
import { railNamed } from "../../chair/member.ts";
import { jointName } from "../../design/identity.ts";
import { height } from "../../geometry/plane.ts";
import { dot } from "../../geometry/vec.ts";
import { faultsOf, upOf } from "../machinery/faults.ts";
import { plain } from "../machinery/names.ts";
import { named, type Place, placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, tell } from "../machinery/say.ts";

export const railMissesPost: Rule = {
  code: "rail-misses-post",
  severity: "error",
  title: "Shoulder that runs off its post",
  explanation:
    "Part of the rail's end lies beside the face it should meet, or above or below it, so that the shoulder would stand open there. Set the rail further in, make it narrower at that end, or make the post bigger.",
  source: "It follows from the shape.",
  find({ chair }) {
    const { units } = chair.design;
    return faultsOf(chair, "rail-misses-post").map(({ fault, place }) => {
      const by = length(fault.by, units);
      const towards = plain(fault.towards);
      const side = sideOf(chair, fault.part, fault.end, fault.towards);
      const values = { Rail: named(chair, fault.part), by, host: towards };
      return tell(railMissesPost, placeOn(chair, fault.part, side, place), {
        message: side ? sentence(`rail-misses-post.${side}`, values) : sentence("rail-misses-post", values),
        otherwise: chair.sticks.has(fault.part)
          ? sentence("rail-misses-post.otherwise.stick", { host: towards })
          : sentence(`rail-misses-post.otherwise.${side ?? "outside"}`, { by }),
        subject: jointName(fault.part, fault.towards),
        found: sentence("found.off", { by }),
        allowed: sentence("found.on-face", { host: towards }),
        badness: fault.by,
      });
    });
  },
};

/** Its height is at fault where it stands over or under the face; beside it, whatever else carries it sideways comes after its place. */
function placeOn(chair: Chair, part: string, side: Side | undefined, place: Place): Place {
  const design = railNamed(chair, part)?.design;
  const others = (place.deciders ?? []).map((at) => ({ at }));
  const up = upOf(chair, part);
  if (side === "upper" || side === "lower") return up ? placeOf(chair.design, [up, ...others]) : place;
  const bow = design?.is === "rail" ? design.bow : undefined;
  return bow && bow.file === undefined ? { ...place, deciders: [...(place.deciders ?? []), bow.at] } : place;
}

type Side = "outside" | "inside" | "upper" | "lower";

/** Over which edge of the face it meets a rail's end stands; nothing where the post has no flat faces. */
function sideOf(chair: Chair, part: string, end: string, host: string): Side | undefined {
  const rail = railNamed(chair, part);
  const cut = rail?.ends.find(({ name }) => name === end);
  const { shoulder } = cut ?? {};
  const post = chair.posts.get(host);
  if (!rail || !cut || !shoulder || !post) return undefined;
  let worst: { off: number; side: Side } | undefined;
  for (const corner of cut.corners) {
    const near = post.pieces.find(({ from, to }) => corner[2] >= from && corner[2] <= to) ?? post.pieces[0];
    for (const face of Object.values(near?.faces ?? {})) {
      if (dot(face.normal, shoulder.normal) > 0.7) continue;
      const off = height(face, corner);
      const outward = dot(face.normal, rail.outward);
      const side = Math.abs(outward) > 0.5 ? (outward > 0 ? "outside" : "inside") : undefined;
      if (side && off > (worst?.off ?? 0)) worst = { off, side };
    }
    const [top, bottom] = [corner[2] - post.topHeight, post.footHeight - corner[2]];
    if (top > (worst?.off ?? 0)) worst = { off: top, side: "upper" };
    if (bottom > (worst?.off ?? 0)) worst = { off: bottom, side: "lower" };
  }
  return worst?.side;
}
