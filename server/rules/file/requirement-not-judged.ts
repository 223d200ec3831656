import { sentence } from "../../../grammar/sentences/sentence.ts";
import { valueRow } from "../../../grammar/vocabulary/values.ts";
import { balanceOf, endlessOf } from "../../floor/tips.ts";
import { placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { tell } from "../machinery/say.ts";
import { valueIn } from "./requirement-not-met.ts";
import { unknownTimbers } from "./unknown-species.ts";

export const requirementNotJudged: Rule = {
  code: "requirement-not-judged",
  severity: "information",
  title: "Requirement that cannot be judged",
  explanation:
    "The value that a `require` line asks for cannot be worked out from what the file says, so nobody knows whether it holds: a weight needs the `timber` of every part, a seat's values need a `seat`, a backrest's a back.",
  source: "The language.",
  asksForMissing: true,
  late: "too",
  find({ chair, late }) {
    return chair.design.requires.flatMap((line) => {
      if (!line.bound || valueIn(chair, line)) return [];
      // What is worked out last is not known yet.
      if (!late && valueRow(line.subject)?.late) return [];
      // That a timber is not in the table is reported by itself.
      if (/^(weight|tip\.|strength\.)|\.demand$/.test(line.subject) && unknownTimbers(chair.design).size > 0)
        return [];
      const place = placeOf(chair.design, [
        { at: line.subjectAt, ...(line.file === undefined ? {} : { file: line.file }) },
      ]);
      const { subject } = line;
      const endless = subject.startsWith("tip.") && endlessOf(balanceOf(chair)).includes(subject);
      const key =
        subject === "weight"
          ? "requirement-not-judged.timber"
          : endless
            ? "requirement-not-judged.endless"
            : "requirement-not-judged";
      return tell(requirementNotJudged, place, {
        message: sentence(key, { subject }),
        otherwise: sentence("requirement-not-judged.otherwise"),
        subject,
      });
    });
  },
};
