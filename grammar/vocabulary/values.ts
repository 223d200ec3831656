import type { WordMeaning } from "../row.ts";

/** The worked-out values of the whole chair, seat, backrest and tipping by their whole names; a part's by its last word. */
const meanings: Record<string, string> = {
  height: "Height of the whole chair as it stands.",
  width: "Width of the whole chair.",
  depth: "Depth of the whole chair, front to back.",
  weight: "Weight of the whole chair.",
  joints: "How many joints the chair has.",
  "seat.height": "Height of the sitting surface at the middle of its front edge, unloaded, as it stands.",
  "seat.loaded-height": "The same under a sitter.",
  "seat.slope": "Slope of the sitting surface, positive when it falls to the back.",
  "seat.depth": "Depth of the sitting surface along the middle.",
  "seat.front-width": "Width of the sitting surface at its front edge.",
  "seat.back-width": "Width of the sitting surface at its back edge.",
  "backrest.rake": "Lean of the backrest, from square to the seat.",
  "backrest.top": "Height of the top of the backrest.",
  "tip.back": "How far the empty chair can be tilted backwards before it goes over.",
  "tip.front": "How far the empty chair can be tilted forwards before it goes over.",
  "tip.side": "How far the empty chair can be tilted sideways before it goes over.",
  "tip.back-margin": "Margin against tipping backwards under the standard loads.",
  "tip.front-margin": "Margin against tipping forwards under the standard loads.",
  "tip.side-margin": "Margin against tipping sideways under the standard loads.",
  "tip.leaning": "How far chair and sitter together can be tilted backwards before they go over.",
  "tip.leaning-margin":
    "Margin with a sitter rocking on the back legs: how far they can be tilted over how far people tilt.",
  "tip.child-margin": "Margin with a child kneeling on the seat and leaning over the back.",
  length:
    "Of a post, along its line; of a rail, between its shoulders along the top edge of the outside face.",
  "round-length": "Along the curve of a bowed rail.",
  "foot-bevel": "The cut of the foot, 90° when square.",
  "face-bevel":
    "On the outside face, between the top edge and the shoulder line, inside the rail; 90° when square.",
  "edge-bevel":
    "On the top edge, between the outside face and the shoulder line, inside the rail; 90° when square.",
  "tenon-thick": "Thickness of the tenon as cut.",
  "tenon-wide": "Width of the tenon as cut.",
  "tenon-long": "How deep the tenon goes, square to the face it enters; its end is parallel to that face.",
  "mortise-wall":
    "The least wood left beside the mortise, to the faces at its sides; in turned stuff where the mortise comes nearest the axis.",
  "glue-area": "Long grain to long grain in the joint: the cheeks as a rule, half the skin of a round tenon.",
};

export const valueWords: WordMeaning[] = Object.entries(meanings).map(([word, meaning]) => ({
  word,
  sort: "value",
  meaning,
}));
