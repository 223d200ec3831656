/** Units as the language spells them, and spellings that people bring from elsewhere. */

const units = new Set(["mm", "cm", "m", "in", "ft", "deg", "kg", "g", "lb", "N", "kN", "lbf", "%"]);

/** Other spellings, with the one the language uses. */
const spellings: Record<string, string> = {
  millimetre: "mm",
  millimetres: "mm",
  millimeter: "mm",
  millimeters: "mm",
  mms: "mm",
  MM: "mm",
  centimetre: "cm",
  centimetres: "cm",
  centimeter: "cm",
  centimeters: "cm",
  CM: "cm",
  metre: "m",
  metres: "m",
  meter: "m",
  meters: "m",
  inch: "in",
  inches: "in",
  ins: "in",
  '"': "in",
  "\u2033": "in",
  "\u201D": "in",
  feet: "ft",
  "'": "ft",
  "\u2032": "ft",
  "\u2019": "ft",
  degree: "deg",
  degrees: "deg",
  degs: "deg",
  "\u00B0": "deg",
  "\u00BA": "deg",
  kgs: "kg",
  Kg: "kg",
  KG: "kg",
  kilo: "kg",
  kilos: "kg",
  kilogram: "kg",
  kilograms: "kg",
  gram: "g",
  grams: "g",
  lbs: "lb",
  pound: "lb",
  pounds: "lb",
  newton: "N",
  newtons: "N",
  percent: "%",
};

export function isUnit(word: string): boolean {
  return units.has(word);
}

/** The language's spelling of a unit spelt otherwise, or undefined when it is not a unit at all. */
export function respelt(word: string): string | undefined {
  return Object.hasOwn(spellings, word) ? spellings[word] : undefined;
}

/** The unit a token stands for, whatever its spelling. */
export function unitOf(image: string): string {
  return respelt(image) ?? image;
}

export const unitNames: readonly string[] = [...units];
