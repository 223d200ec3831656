import { sentence } from "../../../grammar/sentences/sentence.ts";
import { printAngle } from "../../design/units.ts";
import { least, sourcesOf } from "../machinery/figures.ts";
import type { Rule } from "../machinery/rule.ts";
import { SAME_ANGLE } from "../machinery/say.ts";
import { leansOf } from "./rake.ts";
import { tellRake } from "./tell-rake.ts";

export const rakeUnderLimit: Rule = {
  code: "rake-under-limit",
  severity: "warning",
  title: "Back too upright",
  explanation:
    "Measured from square to the seat, as the chair stands. A back that leans less than this pushes its sitter forward off the seat. Give the back posts more rake, or let the seat's rails fall less to the back; `trim` leans seat and back alike. An `angle` of your own between the seat and a post, with a `limit`, is judged in place of the built-in figure; `limit rake-under-limit to 4deg` changes that. It is for grown sitters; other chairs are judged only by their own `angle`.",
  source: sourcesOf("seat-back-rake"),
  limit: { low: least("seat-back-rake"), dimension: "angle" },
  find({ chair, limit }) {
    return leansOf(chair).flatMap((lean) => {
      const low = lean.declared ? lean.declared.low : limit.low;
      if (low === undefined || lean.lean >= low - SAME_ANGLE) return [];
      return tellRake(rakeUnderLimit, chair, lean, {
        word: "under",
        allowed: sentence("figure.or-more", { figure: printAngle(low) }),
        by: lean.lean - low,
      });
    });
  },
};
