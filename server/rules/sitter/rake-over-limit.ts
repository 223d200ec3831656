import { sentence } from "../../../grammar/sentences/sentence.ts";
import { printAngle } from "../../design/units.ts";
import { most, sourcesOf } from "../machinery/figures.ts";
import type { Rule } from "../machinery/rule.ts";
import { SAME_ANGLE } from "../machinery/say.ts";
import { leansOf } from "./rake.ts";
import { tellRake } from "./tell-rake.ts";

export const rakeOverLimit: Rule = {
  code: "rake-over-limit",
  severity: "warning",
  title: "Back leans too far",
  explanation:
    "Measured from square to the seat, as the chair stands. A dining or side chair whose back leans more than this lets its sitter slide forward and slump, and brings the load behind the back feet. Lessen the rake of the back posts, or let the seat's rails fall further to the back; `trim` leans seat and back alike. An `angle` of your own between the seat and a post, with a `limit`, is judged in place of the built-in figure; `limit rake-over-limit to 8deg` changes that. It is for grown sitters; other chairs are judged only by their own `angle`.",
  source: sourcesOf("seat-back-rake"),
  limit: { high: most("seat-back-rake"), dimension: "angle" },
  find({ chair, limit }) {
    return leansOf(chair).flatMap((lean) => {
      const high = lean.declared ? lean.declared.high : limit.high;
      if (high === undefined || lean.lean <= high + SAME_ANGLE) return [];
      return tellRake(rakeOverLimit, chair, lean, {
        word: "over",
        allowed: sentence("figure.or-less", { figure: printAngle(high) }),
        by: lean.lean - high,
      });
    });
  },
};
