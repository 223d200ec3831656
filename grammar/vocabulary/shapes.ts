import type { RefKind, Shape, Slot } from "../row.ts";

/** Short builders for the shapes of rows, so that a row reads as the line it stands for. */

/** A marker word; with a label it becomes a fact. */
export function word(text: string, label?: string): Shape {
  return label === undefined ? { is: "word", word: text } : { is: "word", word: text, label };
}

function slot(kind: Slot, label: string): Shape {
  return { is: "slot", slot: kind, label };
}

export const length = (label: string): Shape => slot("length", label);
export const angle = (label: string): Shape => slot("angle", label);
export const count = (label: string): Shape => slot("count", label);
export const value = (label: string): Shape => slot("value", label);
export const text = (label: string): Shape => slot("text", label);
export const date = (label: string): Shape => slot("date", label);
export const newName: Shape = slot("name", "name");

/** A reference to something declared; `words` are words that may stand there instead. */
export function ref(kind: RefKind, label: string, ...words: string[]): Shape {
  const bare: Shape = { is: "slot", slot: "ref", label, ref: kind };
  return words.length === 0 ? bare : { ...bare, words };
}

/** A reference to something that may be called as one of the row's own words that only stand later. */
export function calledAlso(kind: RefKind, label: string, ...names: string[]): Shape {
  return { is: "slot", slot: "ref", label, ref: kind, names };
}

/** One word out of a few. */
export function choice(label: string, ...words: string[]): Shape {
  return { is: "slot", slot: "word", label, words };
}

export const seq = (...of: Shape[]): Shape => ({ is: "seq", of });
export const either = (...of: Shape[]): Shape => ({ is: "either", of });
export const clauses = (...of: Shape[]): Shape => ({ is: "clauses", of });
export const maybe = (...of: Shape[]): Shape => ({
  is: "maybe",
  of: of.length === 1 && of[0] ? of[0] : seq(...of),
});
export const list = (of: Shape): Shape => ({ is: "list", of });
export const nothing: Shape = { is: "seq", of: [] };

/** A word and what follows it: `out 205`. */
export const after = (marker: string, ...of: Shape[]): Shape => seq(word(marker), ...of);

/** Two lengths with `x` between them. */
export const across = (first: string, second: string): Shape => seq(length(first), word("x"), length(second));

/** A height along a post, or one of its ends. */
export const station = (label: string): Shape =>
  either(word("foot", label), word("top", label), length(label));

/** Where a centre line stands: `out 205, back 20`. */
export const place: Shape = clauses(after("out", length("out")), after("back", length("back")));

const ends: Shape[] = [
  after("at", either(after("most", value("high")), after("least", value("low")))),
  after("from", value("low"), word("to"), value("high")),
  after("<=", value("high")),
  after(">=", value("low")),
  after("<", value("below")),
  after(">", value("above")),
];
/** What a value must keep to: `at most 5.5kg`, `from 1deg to 4deg`, `>= 8`. */
export const bound: Shape = either(...ends, after("=", value("exactly")));

/** The same for what must hold; an equality may say how near. */
export const required: Shape = either(
  ...ends,
  after("=", value("exactly"), maybe(after("within", value("tolerance")))),
);

/** A species and what is known of the wood. */
export const wood: Shape = seq(
  ref("species", "species"),
  maybe(
    either(
      seq(after("moisture", value("moisture")), maybe(after("density", value("density")))),
      seq(after("density", value("density")), maybe(after("moisture", value("moisture")))),
    ),
  ),
);
