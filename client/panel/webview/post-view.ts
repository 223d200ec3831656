/**
 * A post from each of its faces, under the drawing while that is switched on: the post that the caret is in, or was in last.
 */

import { tickLines } from "../../../server/drawing/ticks.ts";
import type { DrawingParams } from "../../../server/main/protocol.ts";
import { letteringElements } from "./lettering/elements.ts";
import { type Measure, TICK } from "./lettering/type-scale.ts";
import { at, type Faces, postLaid } from "./post-layout.ts";
import { element, pathThrough } from "./svg.ts";

interface PostView {
  /** It is switched on or off. */
  turn(on: boolean): void;
  /** The caret is in these parts. */
  caret(parts: readonly string[]): void;
  /** A drawing has come. */
  show(drawing: DrawingParams): void;
  /** Another chair is shown from now on. */
  forget(): void;
  /** The post to ask for; none while it is off. */
  readonly wanted: string | undefined;
}

/** Fills `place`; `asks` is called when another post is chosen. */
export function createPostView(given: {
  place: HTMLElement;
  asks(post: string | undefined): void;
  measure: Measure;
}): PostView {
  const { place, asks, measure } = given;
  let shown: Faces | undefined;
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

  function draw() {
    if (!on || !shown) return;
    const name = document.createElement("h2");
    name.textContent = shown.post;
    place.replaceChildren(name, facesElement(shown, Math.max(200, place.clientWidth), measure));
  }
  new ResizeObserver(draw).observe(place);

  return {
    turn(now) {
      on = now;
      place.hidden = !on;
      if (!on) {
        shown = undefined;
        place.replaceChildren();
      }
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
      shown = faces;
      draw();
    },
    forget() {
      posts = [];
      chosen = undefined;
      asked = undefined;
      shown = undefined;
      place.replaceChildren();
    },
    get wanted() {
      return wanted();
    },
  };
}

function facesElement(faces: Faces, width: number, measure: Measure): SVGSVGElement {
  const laid = postLaid(faces, width, measure);
  const { scale } = laid;
  const said = faces.faces.map(
    ({ caption, mouths }) =>
      `${caption}: ${mouths.map(({ part, label }) => `${part} ${label}`).join(", ") || "none"}`,
  );
  const sections = faces.sections.map(({ label }) => label).join(", ");
  return element(
    "svg",
    {
      viewBox: `0 0 ${laid.width} ${laid.height}`,
      width: laid.width,
      height: laid.height,
      role: "img",
      "aria-label": `${faces.post}, ${faces.overall.label} over all, ${sections}; mortises from the foot. ${said.join("; ")}.`,
    },
    element("title", {}, faces.post),
    ...laid.faces.map(({ face, foot }) =>
      element(
        "g",
        {},
        ...(["hidden", "edge", "mouth", "peg"] as const).map((is) =>
          element("path", {
            class: is,
            d: face.strokes
              .filter((stroke) => stroke.is === is)
              .map(({ points }) => pathThrough(points.map(at(foot, scale))))
              .join(""),
          }),
        ),
      ),
    ),
    element(
      "g",
      { class: "dimension" },
      element("path", { d: pathThrough(laid.overall.line) }),
      element("path", {
        class: "ticks",
        d: tickLines(laid.overall.line, TICK)
          .map((ends) => pathThrough(ends))
          .join(""),
      }),
    ),
    ...letteringElements(laid.placed, 1),
  );
}
