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
    place.replaceChildren(select, picture(latest, one), words);
  }

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

function picture({ width, height, words }: Strength, one: Strength["cases"][number]): SVGSVGElement {
  const label = (text: string | undefined, [x, y]: readonly [number, number], kind: string) =>
    text === undefined ? [] : [element("text", { x, y, class: kind, "text-anchor": "middle" }, text)];
  return element(
    "svg",
    {
      viewBox: `0 0 ${width} ${height}`,
      "font-size": words,
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
    ...one.parts.flatMap(({ label: text, labelAt }) => label(text, labelAt, "part")),
    ...one.joints.flatMap(({ label: text, labelAt }) => label(text, labelAt, "joint")),
  );
}
