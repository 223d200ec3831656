/**
 * Scripts of the page that are loaded when they are first asked for, from where the page says, by the page's own word.
 */
import type { BoardsGiven, BoardsView } from "./boards/main.ts";
import type { Pictorial, PictorialGiven } from "./pictorial-view.ts";
import type { StrengthView } from "./strength/main.ts";

/** The page's own script, known only while it runs for the first time. */
const page = document.currentScript as HTMLScriptElement;

/** What each gives, by its name on the page. */
interface OnDemand {
  /** What turns the chair. */
  pictorial(given: PictorialGiven): Pictorial;
  /** What shows the boards. */
  boards(given: BoardsGiven): BoardsView;
  /** What shows the frame at work. */
  strength(place: HTMLElement): StrengthView;
}

/** What they leave behind. */
declare global {
  var seatwright_pictorial: { create: OnDemand["pictorial"] } | undefined;
  var seatwright_boards: { create: OnDemand["boards"] } | undefined;
  var seatwright_strength: { create: OnDemand["strength"] } | undefined;
}

/** Loads one, or takes it from where it was loaded before. */
export function loaded<Name extends keyof OnDemand>(name: Name): Promise<OnDemand[Name]> {
  return new Promise((done, failed) => {
    const there = (): OnDemand[Name] | undefined =>
      globalThis[`seatwright_${name}`]?.create as OnDemand[Name] | undefined;
    const settle = () => {
      const create = there();
      if (create) done(create);
      else failed(new Error(`No script for ${name}.`));
    };
    if (there()) return settle();
    const script = document.createElement("script");
    script.nonce = page.nonce;
    script.src = page.dataset[name] ?? "";
    script.onload = script.onerror = settle;
    document.head.append(script);
  });
}
