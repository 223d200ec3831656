import { sentence } from "../../../grammar/sentences/sentence.ts";
import type { Chair } from "../../chair/chair.ts";
import allowances from "../../sitter/allowances.json" with { type: "json" };
import { bodyOf } from "../../sitter/body.ts";
import { groups } from "../../sitter/body-sizes.ts";
import seats from "../../sitter/seats.json" with { type: "json" };
import { sizesOf } from "../../sitter/sizes.ts";
import { placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, lengthOrMore, SAME_LENGTH, tell } from "../machinery/say.ts";
import { comfortCaution, decidersOfTop, isForGrown } from "./comfort.ts";

export const crestAtShoulderBlades: Rule = {
  code: "crest-at-shoulder-blades",
  severity: "information",
  title: "Crest catches the shoulder blades",
  explanation: `A back whose top edge lies just where the shoulder blades end catches their tips as its sitter leans and turns. Let it end lower, at the small of the back, or reach well up behind the blades. The tips are taken from the shoulder's height of the middle sitter; for grown sitters. \`limit crest-at-shoulder-blades to 10mm\` changes how far from them the edge must lie. ${comfortCaution}`,
  source: `How far from the tips: ${seats.bladeEdge.source}. From the shoulder down to the tips: ${allowances.bladeBelowShoulder.value} mm, from memory. Shoulders: the survey's medians, women's and men's each by themselves.`,
  limit: { low: seats.bladeEdge.low, dimension: "length" },
  asksForMissing: true,
  find({ chair, limit: { low } }) {
    const top = isForGrown(chair) ? sizesOf(chair).backTop : undefined;
    if (top === undefined || low === undefined) return [];
    const off = tipsOf(chair).map((tip) => top - tip);
    const near = off.filter((by) => Math.abs(by) < low - SAME_LENGTH);
    if (near.length === 0) return [];
    const unit = chair.design.units;
    const nearest = near.reduce((a, b) => (Math.abs(b) < Math.abs(a) ? b : a));
    const up = Math.max(...off.map((by) => low - by));
    const down = Math.max(...off.map((by) => by + low));
    const side = nearest < 0 ? "under" : "over";
    return [
      tell(crestAtShoulderBlades, placeOf(chair.design, decidersOfTop(chair)), {
        message: sentence(`crest-at-shoulder-blades.${side}`, {
          near: length(Math.abs(nearest), unit),
          least: length(low, unit),
        }),
        otherwise: sentence("crest-at-shoulder-blades.otherwise", {
          up: lengthOrMore(up, unit),
          down: lengthOrMore(down, unit),
        }),
        subject: "seat",
        found: length(Math.abs(nearest), unit),
        allowed: sentence("figure.or-more", { figure: length(low, unit) }),
        badness: low - Math.abs(nearest),
      }),
    ];
  },
};

/** Heights of the lower tips of the shoulder blades above the seat, of each sitter meant, mm. */
function tipsOf({ design }: Chair): number[] {
  const sitter = design.sitter.value;
  const bodies =
    sitter.is === "adult" && !sitter.group
      ? groups.map((group) => bodyOf({ is: "adult", group }))
      : [bodyOf(sitter)];
  return bodies.map(
    ({ measures }) => measures["shoulder-height-sitting"] - allowances.bladeBelowShoulder.value,
  );
}
