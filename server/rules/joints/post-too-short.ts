import type { Fix } from "../../../grammar/problem.ts";
import { sentence } from "../../../grammar/sentences/sentence.ts";
import type { Chair, Post } from "../../chair/chair.ts";
import { stemOf } from "../../design/identity.ts";
import { millimetresIn } from "../../design/units.ts";
import { upOf } from "../machinery/faults.ts";
import { named, placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, lengthOrMore, listed, setOutOrMore, tell } from "../machinery/say.ts";

/** Rails that must lie over a post's top before the post is what is wrong, not a rail. */
const FEWEST = 2;

export const postTooShort: Rule = {
  code: "post-too-short",
  severity: "error",
  title: "Post that ends below its rails",
  explanation:
    "Rails are said to enter this post above its top. Usually its height is in another unit than the file's, or a digit is missing. While this stands, nothing else is said of the chair.",
  source: "It follows from the shape.",
  alone: true,
  find({ chair }) {
    const { units } = chair.design;
    return [...chair.posts.values()].flatMap((post) => {
      const over = railsOver(chair, post);
      if (over.size < FEWEST) return [];
      const highest = Math.max(...over.values());
      return tell(postTooShort, placeOf(chair.design, [post.design.height, post.design]), {
        message: sentence("post-too-short", {
          Post: named(chair, post.name),
          height: length(post.topHeight, units),
          rails: listed([...over.keys()]),
          highest: length(highest, units),
        }),
        otherwise: sentence("post-too-short.otherwise", { height: lengthOrMore(highest, units) }),
        subject: post.name,
        found: length(post.topHeight, units),
        allowed: sentence("figure.or-more", { figure: lengthOrMore(highest, units) }),
        badness: highest - post.topHeight,
        fixes: heights(chair, post, highest),
      });
    });
  },
};

/** Rails by name that should enter the post and lie over its top, each with the height of its upper edge, mm. */
function railsOver(chair: Chair, post: Post): Map<string, number> {
  const over = new Map<string, number>();
  for (const fault of chair.faults) {
    if (fault.is !== "end-reaches-nothing" || fault.towards !== post.name) continue;
    const up = upOf(chair, fault.part)?.value;
    if (up !== undefined && up > post.topHeight) over.set(stemOf(fault.part), up);
  }
  return over;
}

/** The same number in the unit that may have been meant, then the least height that all of them can enter. */
function heights({ design }: Chair, { design: post, topHeight }: Post, highest: number): Fix[] {
  const { height } = post;
  if (!height || height.assumed) return [];
  const { start, end } = height.at;
  const figure = String(Number((topHeight / millimetresIn(design.units)).toFixed(3)));
  const meant = (["cm", "in"] as const)
    .filter((unit) => unit !== design.units)
    .map((unit) => `${figure}${unit}`);
  const texts = [...meant, setOutOrMore(highest, design.units)];
  return texts.map((text) => ({
    title: sentence("fix.make-it", { it: text }),
    edits: [{ start, end, text }],
  }));
}
