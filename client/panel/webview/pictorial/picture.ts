/**
 * The pictorial view as SVG elements, which stay while it is turned: only what their lines are changes from frame to frame. What takes
 * longer (the areas that take a click, the flags) is made when it rests.
 */
import type { Looked } from "../../../../server/drawing/pictorial/look.ts";
import type { Point } from "../../../../server/drawing/sheet.ts";
import type { Fault } from "../../../../server/editor/faults.ts";
import { type Gravity, gravityOf } from "../flag-elements.ts";
import { captionLines } from "../lettering/picture-letters.ts";
import { captionDrop, LINE } from "../lettering/type-scale.ts";
import type { PartElements } from "../part-elements.ts";
import type { PictorialGiven } from "../pictorial-view.ts";
import { element, pathThrough } from "../svg.ts";
import { areasOf, down } from "./picture-areas.ts";

interface Shown {
  looked: Looked;
  caption: string;
  /** What is seen in the middle of its room. */
  middle: Point;
  room: { width: number; height: number };
  faults: readonly Fault[];
  /** Parts that are others than in the chair behind. */
  changed: ReadonlySet<string>;
  /** Pixels to the millimetre, and the height of figures in pixels. */
  scale: number;
  figures: number;
}

interface PictureElements {
  readonly element: SVGGElement;
  /** Shows the lines at once. */
  lines(shown: Shown): void;
  /** Shows the rest, once it is at rest. */
  rest(shown: Shown): void;
  /** All that is drawn of each part. */
  readonly parts: PartElements;
}

/** Nothing shown yet; `flagged` makes the flags of faulty parts. */
export function createPictureElements(flagged: PictorialGiven["flagged"]): PictureElements {
  const group = (name: string, ...children: SVGElement[]) => element("g", { class: name }, ...children);
  const hatched = group("hatched");
  const lines = group("lines");
  const areas = group("areas");
  const flags = group("flag-room");
  const inner = group("turned", hatched, lines, areas, flags);
  const caption = element("text", { class: "caption", "text-anchor": "middle" });
  const outer = group("view pictorial", inner, caption);
  /** Paths by kind and part. */
  const paths = new Map<string, SVGPathElement>();
  let parts: PartElements = new Map();

  /** Sets the paths of one kind, those of a part together; those of other parts go. */
  function setPaths(kind: string, found: ReadonlyMap<string, string>, classOf: (part: string) => string) {
    for (const [part, d] of found) {
      const key = `${kind} ${part}`;
      let path = paths.get(key);
      if (!path) {
        path = element("path", { "data-kind": kind, "data-of": part });
        paths.set(key, path);
        lines.append(path);
      }
      path.setAttribute("d", d);
      const marks = ["caret", "pointed-at"].filter((mark) => path.classList.contains(mark));
      const className = [classOf(part), ...marks].join(" ");
      if (path.getAttribute("class") !== className) path.setAttribute("class", className);
    }
    for (const [key, path] of paths) {
      const part = key.startsWith(`${kind} `) ? key.slice(kind.length + 1) : undefined;
      if (part === undefined || found.has(part)) continue;
      path.remove();
      paths.delete(key);
    }
  }

  function showLines({ looked, caption: words, middle, room, faults, changed, scale, figures }: Shown) {
    const grave = gravityOf(faults);
    inner.setAttribute(
      "transform",
      `translate(${room.width / 2 - middle[0]} ${room.height / 2 + middle[1]})`,
    );
    hatched.replaceChildren(...hatching(looked, grave));
    const classOf = (is: string) => (part: string) =>
      [
        is,
        ...(changed.has(part) ? ["changed"] : []),
        ...(grave.has(part) ? ["faulty", grave.get(part)] : []),
      ].join(" ");
    for (const is of ["edge", "outline"] as const)
      setPaths(is, joinedByPart(looked.strokes.filter((stroke) => stroke.is === is)), classOf(is));
    setPaths("tenon", joinedByPart(looked.tenons), () => "tenon");
    const x = room.width / 2;
    caption.setAttribute("font-size", String(figures / scale));
    caption.setAttribute("y", String(room.height + captionDrop(figures) / scale));
    caption.replaceChildren(
      ...captionLines(words, room.width * scale, figures).map((line, k) =>
        element("tspan", { x, dy: k === 0 ? 0 : `${LINE}em` }, line),
      ),
    );
  }

  return {
    element: outer,
    lines(shown) {
      outer.classList.add("turning");
      showLines(shown);
    },
    rest(shown) {
      showLines(shown);
      const { looked, faults, room, middle, scale } = shown;
      areas.replaceChildren(
        ...looked.shapes.map(({ part, outlines }) =>
          element("path", { class: "area", "data-part": part, d: shapeOf(outlines) }),
        ),
      );
      const [right, below] = [room.width / 2 - middle[0], room.height / 2 + middle[1]];
      const bounds = { left: -right, top: -below, right: room.width - right, foot: room.height - below };
      const made = faults.length > 0 ? flagged({ areas: areasOf(looked), faults, bounds, scale }) : [];
      flags.replaceChildren(...made);
      outer.classList.remove("turning");
      parts = new Map();
      for (const drawn of [...lines.children, ...areas.children] as SVGPathElement[]) {
        const part = drawn.dataset.part ?? drawn.dataset.of ?? "";
        parts.set(part, [...(parts.get(part) ?? []), drawn]);
      }
    },
    get parts() {
      return parts;
    },
  };
}

function joinedByPart(lines: readonly { part: string; points: readonly Point[] }[]): Map<string, string> {
  const found = new Map<string, string>();
  for (const { part, points } of lines)
    found.set(part, (found.get(part) ?? "") + pathThrough(points.map(down)));
  return found;
}

/** The pieces of a part as one shape: wherever they overlap it is filled once. */
const shapeOf = (outlines: readonly (readonly Point[])[]): string =>
  outlines.map((points) => pathThrough(points.map(down), true)).join("");

/** The faulty parts hatched where they can be seen: from the farthest of them on, each part is painted over those behind it. */
function hatching({ shapes }: Looked, grave: ReadonlyMap<string, Gravity>): SVGPathElement[] {
  const first = shapes.findIndex(({ part }) => grave.has(part));
  return (first < 0 ? [] : shapes.slice(first)).map(({ part, outlines }) =>
    element("path", { class: grave.get(part) ?? "cover", d: shapeOf(outlines) }),
  );
}
