/**
 * The frame at work, under the drawing while that is switched on: one load case at a time, the bent shape enlarged, in words below. A
 * script of its own, loaded when it is asked for.
 */
import type { DrawingParams } from "../../../../server/main/protocol.ts";
import { element, pathThrough } from "../svg.ts";

type Strength = NonNullable<DrawingParams["strength"]>;

export interface StrengthView {
  /** Its place has been shown or hidden; the drawing of now comes along. */
  turn(drawing: DrawingParams | undefined): void;
  /** A drawing has come. */
  show(drawing: DrawingParams | undefined): void;
}

/** Fills `place`. */
export function create(place: HTMLElement): StrengthView {
  let chosen: string | undefined;
  let latest: Strength | undefined;
  let lettered: (() => void) | undefined;

  function fill() {
    const [first] = latest?.cases ?? [];
    if (!latest || !first) {
      place.replaceChildren("Strength is worked out once there is a seat, or a load, on three feet or more.");
      return;
    }
    const one = latest.cases.find(({ name }) => name === chosen) ?? first;
    const select = document.createElement("select");
    select.setAttribute("aria-label", "Load case");
    for (const { name, title } of latest.cases) select.add(new Option(title, name, false, name === one.name));
    select.addEventListener("change", () => {
      chosen = select.value;
      fill();
      place.querySelector("select")?.focus();
    });
    const words = document.createElement("p");
    words.textContent = `${one.says} ${latest.says}`;
    const figures = document.createElement("p");
    const hardest = figuresOf(one).map(({ name, label }) => `${name} ${label}`);
    if (hardest.length > 0) figures.textContent = `Load over what it bears: ${hardest.join(", ")}.`;
    const { svg, letter } = picture(latest, one);
    lettered = letter;
    place.replaceChildren(select, svg, words, figures);
    letter();
  }

  // Letters keep their size on the screen, whatever room the picture has.
  new ResizeObserver(() => lettered?.()).observe(place);

  const show: StrengthView["show"] = (drawing) => {
    if (drawing?.strength) latest = drawing.strength;
    if (!place.hidden && drawing?.strength) fill();
  };
  return {
    turn(drawing) {
      if (place.hidden) return place.replaceChildren();
      if (place.childElementCount === 0) fill();
      show(drawing);
    },
    show,
  };
}

type Case = Strength["cases"][number];

interface Figure {
  name: string;
  label: string;
  at: readonly [number, number];
  /** How far from there it begins, mm. */
  off: number;
  kind: "part" | "joint";
}

/** What carries a figure, the hardest first. */
const figuresOf = ({ parts, joints }: Case): Figure[] =>
  [
    ...parts.flatMap(({ part, label, labelAt }): Figure[] =>
      label === undefined ? [] : [{ name: part, label, at: labelAt, off: 0, kind: "part" }],
    ),
    ...joints.flatMap(({ name, label, at, radius: off }): Figure[] =>
      label === undefined ? [] : [{ name, label, at, off, kind: "joint" }],
    ),
  ].sort((a, b) => Number.parseFloat(b.label) - Number.parseFloat(a.label));

/** Height of a figure on the screen, px; how wide one of its signs is, and how far it keeps from what it is of, as shares of that. */
const [LETTERS, WIDE, GAP] = [12, 0.6, 0.4];

/** The picture, and what letters it for the room that it has. */
function picture({ width, height }: Strength, one: Case): { svg: SVGSVGElement; letter(): void } {
  const figures = element("g", {});
  const svg = element(
    "svg",
    {
      viewBox: `0 0 ${width} ${height}`,
      role: "img",
      "aria-label": `${one.title}. ${one.says}`,
    },
    ...one.parts.map(({ part, points, weight }) => {
      const line = element("path", { d: pathThrough(points) }, element("title", {}, part));
      line.style.strokeWidth = weight.toFixed(1);
      return line;
    }),
    ...one.parts.map(({ bent }) => element("path", { class: "bent", d: pathThrough(bent) })),
    ...one.joints.map(({ name, at: [cx, cy], radius }) =>
      element("circle", { cx, cy, r: radius }, element("title", {}, name)),
    ),
    figures,
  );
  return {
    svg,
    letter() {
      const scale = Math.min(svg.clientWidth / width, svg.clientHeight / height);
      if (!(scale > 0)) return;
      const high = LETTERS / scale;
      const taken: { left: number; right: number; y: number }[] = [];
      const shown = figuresOf(one).flatMap(({ name, label, at: [x, y], off, kind }) => {
        const left = x + off + GAP * high;
        const right = left + label.length * WIDE * high;
        if (taken.some((other) => other.left < right && left < other.right && Math.abs(other.y - y) < high))
          return [];
        taken.push({ left, right, y });
        const attributes = { x: left, y, class: kind, "dominant-baseline": "central", "font-size": high };
        return element("text", attributes, element("title", {}, name), label);
      });
      figures.replaceChildren(...shown);
    },
  };
}
