import type { WordMeaning } from "../row.ts";
import { valueWords } from "./values.ts";

type Sort = WordMeaning["sort"];

function sorted(sort: Sort, meanings: Record<string, string>): WordMeaning[] {
  return Object.entries(meanings).map(([word, meaning]) => ({
    word,
    sort,
    meaning,
  }));
}

const directions = sorted("direction", {
  out: "Distance from the chair's centre line, towards the side.",
  back: "Distance back from the front line, towards the back of the chair.",
  up: "Height above the floor.",
  front: "Towards the front of the chair.",
  forward: "The end named goes towards the front of the chair.",
  in: "Towards the centre line of the chair.",
  inside: "The face that looks to the middle of the chair.",
  outside: "The face that looks away from the middle of the chair.",
  left: "The sitter's left.",
  right: "The sitter's right.",
  side: "Seen from the side.",
});

const units = sorted("unit", {
  mm: "Millimetres.",
  cm: "Centimetres, ten millimetres each.",
  m: "Metres.",
  in: "Inches of 25.4 mm; fractions as `3/8in` and `1 1/4in`.",
  ft: "Feet of twelve inches.",
  deg: "Degrees; every angle carries it, unless it is a slope such as `1:8`.",
  kg: "Kilograms.",
  g: "Grams.",
  lb: "Pounds of 0.45359237 kg.",
  N: "Newtons.",
  kN: "Kilonewtons, a thousand newtons each.",
  lbf: "Pounds of force, the weight of one pound.",
  "%": "A hundredth part.",
});

const functions = sorted("function", {
  min: "The least of the values.",
  max: "The greatest of the values.",
  abs: "The value without its sign.",
  round: "The nearest whole number, or with a second value the nearest multiple of it.",
  sin: "The sine of an angle.",
  cos: "The cosine of an angle.",
  tan: "The tangent of an angle.",
  atan: "The angle whose tangent this is.",
});

const choices = sorted("choice", {
  adult: "Grown people of the body-size data.",
  women: "Women of the body-size data.",
  men: "Men of the body-size data.",
  child: "Children of an age in whole years, from one to another.",
  "en-1022-2018": "EN 1022:2018, the stability of seats, users to 110 kg.",
  "iso-7174-1-1988": "ISO 7174-1:1988, the stability of chairs and stools.",
  "school-mark": "A size mark of school furniture, by number.",
  "drop-in": "A loose frame that drops in between the rails.",
  board: "A solid wooden seat.",
  woven: "Cord, rush or bark woven over the rails.",
  upholstered: "Webbing and stuffing fixed to the rails.",
  pva: "White or yellow wood glue.",
  hide: "Hot or liquid hide glue, which can be undone.",
  urea: "Urea resin glue.",
  epoxy: "Epoxy resin.",
  none: "No glue.",
  rails: "The rails that carry the seat.",
  strips: "Strips fixed to the rails.",
  rebates: "Steps cut along the rails' edges.",
  grooves: "Grooves cut along the rails.",
  quarter: "Sawn with the rings upright to the face.",
  flat: "Sawn with the rings lying along the face; of a rail, its face level.",
  rift: "Sawn with the rings slanting to the face.",
  plumb: "Straight up and down.",
  flush: "In one plane with the posts' outside faces.",
  inset: "Set in from the posts' outside faces.",
  centred: "In the middle.",
  square: "At right angles to the face it enters, or to the post.",
  "in-line": "Along the rail.",
  full: "As thick as the rail: no shoulder at either face.",
  wedged: "Spread by wedges from outside.",
  sloped: "Running out to nothing at the shoulder.",
});

const markers = sorted("marker", {
  x: "Between two sizes: `40 x 40`.",
  by: "In `side by side`: next to each other across the board.",
  edge: "The edge of a board.",
  pair: "A left one and its mirrored right twin.",
  within: "The range in which the value may be moved.",
  above: "From that height up; of an arch, the top edge.",
  below: "From that height down; of an arch, the lower edge.",
  over: "The length of the fair curve; or lying on the tops.",
  keeping: "Faces that stay straight.",
  foot: "The post's lower end.",
  top: "The upper end or edge.",
  bottom: "The lower edge.",
  even: "With equal steps or gaps.",
  ends: "Both ends.",
  end: "The second end.",
  posts: "The posts that the rail enters.",
  with: "Together with; or by means of.",
  bow: "The curve of a bowed rail.",
  on: "What it stands on, or which part is meant.",
  into: "The member that the tenon goes into.",
  at: "At that place; before `most` and `least`, a limit.",
  most: "No more than.",
  least: "No less than.",
  from: "Where it starts.",
  to: "Where it ends.",
  of: "A part of what: `1/3 of rail`.",
  rail: "Of a size: the thickness or width of the rail that is joined.",
  post: "Of a size: the depth of the post behind the shoulder.",
  seen: "The direction from which an angle is seen.",
  because: "The reason, which stays in the file.",
  thick: "Thickness.",
  wide: "Width.",
  long: "Length; of a tenon how deep it goes, square to the face it enters.",
  round: "A diameter.",
  gap: "The space left between.",
  draw: "How far the peg's holes are offset to pull the shoulder up.",
  setback: "Distance from the shoulder.",
  moisture: "How much water the wood holds, as a share of its dry weight.",
  density: "Weight of the wood, a bare number of kilograms a cubic metre.",
  seat: "The sitting surface.",
  floor: "The level floor.",
});

/** Words that do not begin a line but have a meaning to show. */
export const words: WordMeaning[] = [
  ...directions,
  ...units,
  ...functions,
  ...choices,
  ...markers,
  ...valueWords,
];
