/**
 * What stands under the drawing while the pictorial view is shown: from which side, the joints, how far apart, and the glue-ups one by one
 * with what is said of each.
 */
import { eyes } from "../../../../server/drawing/pictorial/eye.ts";
import type { GlueUpTold } from "../../../../server/drawing/pictorial/glue-ups.ts";
import { nameOfEye, type Turned } from "./state.ts";

interface Controls {
  /** Shows how it is looked at and what glue-ups there are. */
  show(turned: Turned, glueUps: readonly GlueUpTold[], movable: boolean): void;
}

interface Asked {
  from(name: string): void;
  joints(on: boolean): void;
  apart(share: number): void;
  /** Another glue-up by its index; none for the whole chair. */
  glueUp(index: number | undefined): void;
  /** The next as they are glued, or the one before. */
  step(by: 1 | -1): void;
}

/** Fills `place`. */
export function createControls(place: HTMLElement, asked: Asked): Controls {
  const from = select("From");
  for (const name of Object.keys(eyes)) from.select.append(option(name, name.replace("-", " ")));
  const elsewhere = option("", "turned");
  from.select.append(elsewhere);
  from.select.title = "From which side it is seen; arrow keys on the view turn it by 15°, with Shift by 5°";
  from.select.addEventListener("change", () => asked.from(from.select.value));

  const joints = button("Joints", "See the tenons through the wood, dashed");
  joints.addEventListener("click", () => asked.joints(joints.getAttribute("aria-pressed") !== "true"));

  const apart = document.createElement("input");
  Object.assign(apart, { type: "range", min: "0", max: "100", step: "5" });
  const apartLabel = labelled("Apart", apart);
  apartLabel.title = "Take it apart along the lines of its glue-ups";
  apart.addEventListener("input", () => asked.apart(Number(apart.value) / 100));

  const steps = select("Gluing up");
  const back = button("‹", "The glue-up before this");
  const next = button("›", "The next glue-up");
  for (const [each, by] of [
    [back, -1],
    [next, 1],
  ] as const) {
    each.setAttribute("aria-label", each.title);
    each.addEventListener("click", () => asked.step(by));
  }
  steps.select.addEventListener("change", () =>
    asked.glueUp(steps.select.value === "" ? undefined : Number(steps.select.value)),
  );
  const gluing = document.createElement("div");
  gluing.append(steps.label, back, next);

  const row = document.createElement("div");
  row.className = "row";
  row.append(from.label, joints, apartLabel, gluing);
  const words = document.createElement("div");
  words.className = "glue-up";
  place.replaceChildren(row, words);
  let told: { glueUps: readonly GlueUpTold[]; glueUp: number | undefined } | undefined;

  return {
    show({ eye, apart: share, joints: on, glueUp }, glueUps, movable) {
      const name = nameOfEye(eye);
      elsewhere.hidden = name !== undefined;
      from.select.value = name ?? "";
      joints.setAttribute("aria-pressed", String(on));
      apartLabel.hidden = !movable;
      apart.value = String(Math.round(share * 100));
      apart.setAttribute("aria-valuetext", share === 0 ? "together" : `${apart.value} % apart`);
      gluing.hidden = glueUps.length === 0;
      const now = glueUp === undefined ? undefined : glueUps[glueUp];
      back.disabled = glueUp === undefined;
      if (told?.glueUps === glueUps && told.glueUp === glueUp) return;
      told = { glueUps, glueUp };
      steps.select.replaceChildren(
        option("", "whole chair"),
        ...glueUps.map(({ title }, k) => option(String(k), `${k + 1} of ${glueUps.length}: ${title}`)),
      );
      steps.select.value = now ? String(glueUp) : "";
      words.hidden = !now;
      words.replaceChildren(
        ...(now ? [made("h2", now.title), ...now.lines.map((line) => made("p", line))] : []),
      );
    },
  };
}

function select(words: string) {
  const made = document.createElement("select");
  return { select: made, label: labelled(words, made) };
}

function labelled(words: string, control: HTMLElement): HTMLLabelElement {
  const label = document.createElement("label");
  label.append(`${words} `, control);
  return label;
}

function option(value: string, words: string): HTMLOptionElement {
  const made = document.createElement("option");
  made.value = value;
  made.textContent = words;
  return made;
}

function button(words: string, title: string): HTMLButtonElement {
  const made = document.createElement("button");
  made.textContent = words;
  made.title = title;
  return made;
}

function made(name: "h2" | "p", words: string): HTMLElement {
  const element = document.createElement(name);
  element.textContent = words;
  return element;
}
