/**
 * A slider for each adjustable value: graduated as a rule is in the file's units, moved by mouse, touch or keyboard.
 */
import type { Adjustable } from "../../../server/editor/adjustable.ts";
import type { RangeResult } from "../../../server/main/protocol.ts";
import { graduations } from "./graduations.ts";
import { rangeBars } from "./range-bars.ts";
import { createRun, type Run } from "./slider-run.ts";
import { element } from "./svg.ts";

interface Sliders {
  /** The values of one version of the text. */
  show(adjustables: readonly Adjustable[], version: number): void;
  /** How far one of them may go. */
  range(range: RangeResult): void;
  /** Those of another chair come next. */
  forget(): void;
}

interface Shown {
  made: Adjustable;
  holder: HTMLElement;
  input: HTMLInputElement;
  output: HTMLOutputElement;
  run: Run;
  bars?: HTMLElement;
}

/** How long the text has to rest before ranges are asked for anew, ms. */
const RESTS = 500;

/** No rules yet; `moved` hears each place a value is moved to, and where it was let go. */
export function createSliders(given: {
  place: HTMLElement;
  moved(name: string, value: number, done: boolean): void;
  /** Asks how far a value may go. */
  ranged(name: string): void;
}): Sliders {
  const { place, moved, ranged } = given;
  const shown = new Map<string, Shown>();
  /** The values whose rule was touched: their ranges are shown. */
  const touched = new Set<string>();
  let version: number | undefined;
  let waits: ReturnType<typeof setTimeout> | undefined;

  function touch(name: string) {
    if (touched.has(name)) return;
    touched.add(name);
    ranged(name);
  }

  /** The text has moved on: what was shown no longer holds, but under a rule that is being moved it stays until it is let go. */
  function moveOn() {
    for (const one of shown.values()) if (!one.run.going) bare(one);
    clearTimeout(waits);
    waits = setTimeout(() => {
      for (const name of touched) if (shown.has(name)) ranged(name);
    }, RESTS);
  }

  function bare(one: Shown) {
    one.bars?.remove();
    one.input.removeAttribute("aria-describedby");
    delete one.bars;
  }

  function make(each: Adjustable): Shown {
    const holder = document.createElement("div");
    holder.className = "slider";
    const label = document.createElement("label");
    const name = document.createElement("span");
    name.textContent = each.name;
    const output = document.createElement("output");
    const input = document.createElement("input");
    input.type = "range";
    input.id = `rule-${each.name}`;
    label.htmlFor = input.id;
    label.title = each.plain
      ? (each.description ?? "")
      : "Worked out from other values: change it in the text.";
    label.append(name, output);
    const run = createRun((value, done) => moved(each.name, value, done));
    input.addEventListener("input", () => {
      saying(input, output, printed(each, input.valueAsNumber));
      run.moved(input.valueAsNumber);
    });
    // Chromium sends "change" at each arrow key, and none when a drag ends where it began.
    input.addEventListener("pointerdown", run.pressed);
    input.addEventListener("focus", () => touch(each.name));
    for (const end of ["pointerup", "pointercancel", "blur"]) input.addEventListener(end, run.released);
    holder.append(label, input, graduationsElement(each));
    place.append(holder);
    return { made: each, holder, input, output, run };
  }

  return {
    range(range) {
      const one = shown.get(range.name);
      if (!one || range.version !== version) return;
      bare(one);
      const id = `range-${range.name}`;
      one.bars = rangeBars(range, id);
      one.input.setAttribute("aria-describedby", id);
      one.holder.append(one.bars);
    },
    forget() {
      clearTimeout(waits);
      for (const { holder } of shown.values()) holder.remove();
      shown.clear();
      touched.clear();
      version = undefined;
    },
    show(adjustables, next) {
      if (version !== undefined && next !== version) moveOn();
      version = next;
      const names = new Set(adjustables.map((each) => each.name));
      for (const [name, { holder, made }] of shown) {
        const now = adjustables.find((each) => each.name === name);
        if (names.has(name) && now && sameRule(now, made)) continue;
        holder.remove();
        shown.delete(name);
      }
      for (const each of adjustables) {
        const one = shown.get(each.name) ?? make(each);
        shown.set(each.name, one);
        const { input, output, run } = one;
        input.min = String(each.low);
        input.max = String(each.high);
        input.step = String(each.step);
        input.disabled = !each.plain;
        if (run.going) continue;
        input.value = String(each.value);
        saying(input, output, printed(each, each.value));
      }
      place.hidden = adjustables.length === 0;
    },
  };
}

/** Shows the value, and has a screen reader say it with its unit. */
function saying(input: HTMLInputElement, output: HTMLOutputElement, value: string) {
  output.textContent = value;
  input.setAttribute("aria-valuetext", value);
}

function sameRule(a: Adjustable, b: Adjustable): boolean {
  return a.low === b.low && a.high === b.high && a.unit === b.unit && a.plain === b.plain;
}

/** The value as the maker would say it. */
function printed({ unit }: Adjustable, value: number): string {
  if (unit === "in") {
    const sixteenths = Math.round(value * 16);
    const whole = Math.trunc(sixteenths / 16);
    let part = Math.abs(sixteenths % 16);
    let of = 16;
    while (part && part % 2 === 0) {
      part /= 2;
      of /= 2;
    }
    return `${part ? `${whole ? `${whole} ` : ""}${part}/${of}` : whole} in`;
  }
  const rounded = Number(value.toFixed(2));
  return unit === "deg" ? `${rounded}°` : unit ? `${rounded} ${unit}` : String(rounded);
}

/** Half a slider's knob: the rule's ends stand under the knob's middle. */
const KNOB = 8;

function graduationsElement(each: Adjustable): SVGSVGElement {
  const marks = graduations(each);
  const at = (share: number) => `calc(${KNOB}px + (100% - ${2 * KNOB}px) * ${share})`;
  const svg = element("svg", { "aria-hidden": "true" });
  for (const { share, size, label } of marks) {
    const line = element("line", { y1: 0, y2: size === "long" ? 10 : size === "middle" ? 7 : 4 });
    line.style.transform = `translateX(${at(share)})`;
    svg.append(line);
    if (label === undefined) continue;
    const text = element(
      "text",
      { y: 21, "text-anchor": share < 0.05 ? "start" : share > 0.95 ? "end" : "middle" },
      label,
    );
    text.style.transform = `translateX(${share < 0.05 ? "0px" : share > 0.95 ? "100%" : at(share)})`;
    svg.append(text);
  }
  return svg;
}
