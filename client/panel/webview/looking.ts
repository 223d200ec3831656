/**
 * Looking at the sheet: all of it, one view, or wherever the maker has zoomed and moved to, by mouse, touchpad and keyboard.
 */
import type { Point } from "../../../server/drawing/sheet.ts";
import type { Laid } from "./arrange.ts";
import { type Frame, middle, moved, wholeFrame, zoomed } from "./frame.ts";
import { type LookName, lookNames } from "./showable.ts";

/** All views or one of them, and a frame of the maker's own on that. */
export interface Look {
  at: LookName;
  frame?: Frame;
}

/** A look that was kept, or all views. */
export function readLook(kept: unknown): Look {
  const { at, frame } = (typeof kept === "object" && kept !== null ? kept : {}) as Partial<Look>;
  const own = frame && Object.values(frame).every(Number.isFinite) ? { frame } : {};
  return at && lookNames.includes(at) ? { at, ...own } : { at: "all" };
}

interface Looking {
  /** Shows a sheet's elements in place of those before; the look stays. */
  show(sheet: Laid, svg: SVGSVGElement): void;
  /** Takes the sheet away. */
  clear(): void;
  /** The room there is, px. */
  readonly room: { width: number; height: number };
  /** Looks at once how much room there is, where the browser has not told yet. */
  measure(): void;
  /** Shows all, or one view. */
  at(name: LookName): void;
  /** The frame of the maker's own goes. */
  whole(): void;
  readonly look: Look;
  /** Nearer by a factor above 1, farther below it. */
  zoom(factor: number): void;
}

/** Looks at the sheet in `place`; `changed` hears of each new look. */
export function createLooking(given: {
  place: HTMLElement;
  look: Look;
  changed(look: Look, before: Look): void;
  /** The room has another size. */
  resized(): void;
  /** The sheet is looked at anew: how large a millimetre is, in pixels, and where its upper left corner is. */
  framed(scale: number, corner: Point): void;
  /** Whether a press on this place of the sheet takes hold of what is there; then `pulled` hears of each move, in pixels. */
  holds(at: Point): boolean;
  pulled(by: Point): void;
}): Looking {
  const { place, changed } = given;
  let look = given.look;
  let sheet: Laid | undefined;
  let svg: SVGSVGElement | undefined;
  let dragged: Point | undefined;
  let held = false;
  let room = { width: place.clientWidth, height: place.clientHeight };

  const frame = (of: Laid): Frame => look.frame ?? wholeFrame(of);

  function apply() {
    if (!sheet || !svg) return;
    const { x, y, width, height } = frame(sheet);
    svg.setAttribute("viewBox", `${x} ${y} ${width} ${height}`);
    // As the browser fits a view box into its room; asking it would have it lay out the page at every drawing.
    const scale = Math.min(room.width / width, room.height / height);
    if (scale > 0)
      given.framed(scale, [
        (room.width - width * scale) / 2 - x * scale,
        (room.height - height * scale) / 2 - y * scale,
      ]);
  }

  function turn(next: Look) {
    const before = look;
    look = next;
    if (before.at === next.at) apply();
    changed(look, before);
  }

  const at = (name: LookName) => turn({ at: name });
  const own = (next: Frame) => turn({ at: look.at, frame: next });

  function zoom(factor: number, about?: Point) {
    if (sheet) own(zoomed(frame(sheet), factor, about ?? middle(frame(sheet)), sheet));
  }

  /** By so many pixels of the screen. */
  function move([right, down]: Point) {
    const scale = svg?.getScreenCTM()?.a;
    if (sheet && scale) own(moved(frame(sheet), [right / scale, down / scale], sheet));
  }

  function onSheet({ clientX, clientY }: MouseEvent): Point | undefined {
    const matrix = svg?.getScreenCTM()?.inverse();
    if (!matrix) return undefined;
    const { x, y } = new DOMPoint(clientX, clientY).matrixTransform(matrix);
    return [x, y];
  }

  // A pinch on a touchpad arrives as a wheel with Ctrl held.
  place.addEventListener(
    "wheel",
    (event) => {
      event.preventDefault();
      if (event.ctrlKey || event.metaKey) zoom(Math.exp(-event.deltaY * WHEEL_ZOOM), onSheet(event));
      else move(event.shiftKey ? [event.deltaY, event.deltaX] : [event.deltaX, event.deltaY]);
    },
    { passive: false },
  );
  place.addEventListener("pointerdown", (event) => {
    if (event.button !== 0) return;
    const at = onSheet(event);
    dragged = [event.clientX, event.clientY];
    held = at !== undefined && given.holds(at);
  });
  // What is held keeps the keyboard that `holds` gave it.
  place.addEventListener("mousedown", (event) => held && event.preventDefault());
  place.addEventListener("pointermove", (event) => {
    if (!dragged || !event.buttons) return;
    const by: Point = [dragged[0] - event.clientX, dragged[1] - event.clientY];
    if (!place.hasPointerCapture(event.pointerId)) {
      if (Math.hypot(...by) < DRAG_BEGINS) return;
      place.setPointerCapture(event.pointerId);
    }
    if (held) given.pulled([-by[0], -by[1]]);
    else move(by);
    dragged = [event.clientX, event.clientY];
  });
  place.addEventListener("pointerup", () => {
    dragged = undefined;
    held = false;
  });
  place.addEventListener("keydown", (event) => {
    const action = actions[event.key];
    if (!action || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    action();
  });
  new ResizeObserver(([entry]) => {
    if (entry) room = entry.contentRect;
    given.resized();
    apply();
  }).observe(place);

  const actions: Record<string, () => void> = {
    "+": () => zoom(KEY_ZOOM),
    "=": () => zoom(KEY_ZOOM),
    "-": () => zoom(1 / KEY_ZOOM),
    "0": () => at("all"),
    "1": () => at("front"),
    "2": () => at("side"),
    "3": () => at("plan"),
    "4": () => at("pictorial"),
    ArrowLeft: () => move([-KEY_MOVE, 0]),
    ArrowRight: () => move([KEY_MOVE, 0]),
    ArrowUp: () => move([0, -KEY_MOVE]),
    ArrowDown: () => move([0, KEY_MOVE]),
  };

  return {
    show(nextSheet, nextSvg) {
      sheet = nextSheet;
      if (svg) svg.replaceWith(nextSvg);
      else place.prepend(nextSvg);
      svg = nextSvg;
      apply();
    },
    clear() {
      svg?.remove();
      svg = undefined;
      sheet = undefined;
    },
    at,
    whole() {
      if (look.frame) turn({ at: look.at });
    },
    zoom,
    measure() {
      room = { width: place.clientWidth, height: place.clientHeight };
    },
    get look() {
      return look;
    },
    get room() {
      return room;
    },
  };
}

const WHEEL_ZOOM = 0.002;
export const KEY_ZOOM = 1.25;
/** Pixels. */
const KEY_MOVE = 40;
/** Pixels the pointer goes before a press is a drag and not a click. */
const DRAG_BEGINS = 4;
