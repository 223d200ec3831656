/**
 * A post from each of its faces, under the drawing while that is switched on: the post that the caret is in, or was in last.
 */
import type { DrawingParams } from "../../../server/main/protocol.ts";
import { element, pathThrough } from "./svg.ts";

type Faces = NonNullable<DrawingParams["faces"]>;

interface PostView {
  /** It is switched on or off. */
  turn(on: boolean): void;
  /** The caret is in these parts. */
  caret(parts: readonly string[]): void;
  /** A drawing has come. */
  show(drawing: DrawingParams): void;
  /** The post to ask for; none while it is off. */
  readonly wanted: string | undefined;
}

/** Fills `place`; `asks` is called when another post is chosen. */
export function createPostView(given: {
  place: HTMLElement;
  asks(post: string | undefined): void;
}): PostView {
  const { place, asks } = given;
  let on = false;
  let posts: string[] = [];
  let chosen: string | undefined;
  let asked: string | undefined;

  const wanted = () => (on ? (chosen ?? posts[0]) : undefined);
  function ask() {
    const post = wanted();
    if (post === asked) return;
    asked = post;
    asks(post);
  }

  return {
    turn(now) {
      on = now;
      place.hidden = !on;
      if (!on) place.replaceChildren();
      ask();
    },
    caret(parts) {
      chosen = parts.find((part) => posts.includes(part)) ?? chosen;
      ask();
    },
    show({ told = [], faces, sheet }) {
      if (sheet) posts = told.filter(({ title }) => title.startsWith("post ")).map(({ part }) => part);
      if (!posts.includes(chosen ?? "")) chosen = undefined;
      ask();
      if (on && faces) place.replaceChildren(facesElement(faces));
    },
    get wanted() {
      return wanted();
    },
  };
}

function facesElement({ post, words: size, width, height, faces }: Faces): SVGSVGElement {
  const said = faces.map(
    ({ caption, words }) => `${caption}: ${words.map(({ text }) => text).join(", ") || "none"}`,
  );
  return element(
    "svg",
    {
      viewBox: `0 0 ${width} ${height}`,
      "font-size": size,
      role: "img",
      "aria-label": `${post}, mortises from the foot. ${said.join("; ")}.`,
    },
    element("title", {}, post),
    ...faces.map(({ caption, captionAt: [x, y], strokes, words }) =>
      element(
        "g",
        {},
        ...(["hidden", "edge", "mouth", "peg"] as const).map((is) =>
          element("path", {
            class: is,
            d: strokes
              .filter((stroke) => stroke.is === is)
              .map(({ points }) => pathThrough(points))
              .join(""),
          }),
        ),
        element("text", { class: "caption", x, y }, caption),
        ...words.map(({ text, at }) =>
          element("text", { x: at[0], y: at[1], "text-anchor": "middle" }, text),
        ),
      ),
    ),
  );
}
