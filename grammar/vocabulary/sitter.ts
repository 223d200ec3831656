import type { Row } from "../row.ts";
import { length, value } from "./shapes.ts";

const measure = (word: string, meaning: string, example: string): Row => ({
  owner: "sitter",
  word,
  shape: length("measure"),
  meaning,
  example,
});

/** One person's own measures, by the names of the body-size data. */
export const sitterRows: Row[] = [
  measure("stature", "The sitter's standing height without shoes.", "stature 1740"),
  measure(
    "popliteal-height",
    "From the floor to the underside of the thigh just behind the knee, sitting.",
    "popliteal-height 410",
  ),
  measure(
    "buttock-popliteal-length",
    "From the back of the hips to the back of the knee, sitting.",
    "buttock-popliteal-length 490",
  ),
  measure("hip-breadth-sitting", "The width of the hips, sitting.", "hip-breadth-sitting 390"),
  measure("thigh-clearance", "From the seat to the top of the thigh.", "thigh-clearance 170"),
  measure("elbow-rest-height", "From the seat to the underside of the elbow.", "elbow-rest-height 235"),
  measure(
    "shoulder-height-sitting",
    "From the seat to the top of the shoulder.",
    "shoulder-height-sitting 580",
  ),
  measure("sitting-height", "From the seat to the crown of the head.", "sitting-height 890"),
  measure(
    "forearm-forearm-breadth",
    "The width over both forearms, elbows at the sides.",
    "forearm-forearm-breadth 540",
  ),
  measure("bideltoid-breadth", "The width over both shoulders.", "bideltoid-breadth 480"),
  measure("shoes", "The height of the sitter's heels.", "shoes 25"),
  measure("clothing", "What the sitter's clothing adds to the breadth of the hips.", "clothing 25"),
  {
    owner: "sitter",
    word: "weight",
    shape: value("measure"),
    meaning: "The sitter's weight.",
    example: "weight 74kg",
  },
];
