/**
 * Under an adjustable value's rule: the stretch where nothing is found as a heavy line, below it one hatched bar for each finding with its
 * name and figure.
 */
import type { RangeResult } from "../../../server/main/protocol.ts";

/** Half a slider's knob: the rule's ends stand under the knob's middle. */
const KNOB = 8;
/** Bars shown; the sentence that is spoken holds them all. */
const MOST = 4;

/** The bars of one range; `id` is given to the sentence that says it all, for the slider's spoken label. */
export function rangeBars(range: RangeResult, id: string): HTMLElement {
  const { low, high, free, bands } = range;
  const holder = document.createElement("div");
  holder.className = "range-bars";
  const line = row("free-stretches");
  for (const [from, to] of free) line.append(stretch("free", from, to, { low, high }));
  holder.append(line);
  for (const band of bands.slice(0, MOST)) {
    const bar = row("band");
    bar.title = band.message;
    bar.append(stretch(`bar ${band.severity}`, band.from, band.to, { low, high }));
    const label = document.createElement("span");
    label.className = "band-label";
    label.textContent = band.label;
    // A label begins under its bar where there is room to its right, else it ends under the bar's end.
    if ((band.from + band.to) / 2 > (low + high) / 2) label.classList.add("to-the-right");
    bar.append(label);
    holder.append(bar);
  }
  const words = document.createElement("p");
  words.id = id;
  words.className = bands.length > MOST ? "range-more" : "spoken-only";
  words.textContent = range.words;
  holder.append(words);
  return holder;
}

function row(name: string): HTMLElement {
  const made = document.createElement("div");
  made.className = name;
  return made;
}

function stretch(name: string, from: number, to: number, { low, high }: { low: number; high: number }) {
  const made = document.createElement("span");
  made.className = name;
  const share = (place: number) => Math.min(1, Math.max(0, (place - low) / (high - low || 1)));
  made.style.left = `calc(${KNOB}px + (100% - ${2 * KNOB}px) * ${share(from)})`;
  made.style.width = `max(3px, calc((100% - ${2 * KNOB}px) * ${share(to) - share(from)}))`;
  return made;
}
