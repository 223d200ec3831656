import { sentence } from "../../../grammar/sentences/sentence.ts";
import { valueRow } from "../../../grammar/vocabulary/values.ts";
import type { Chair } from "../../chair/chair.ts";
import { isRight, readPart } from "../../design/identity.ts";
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
      const meant = valuesNear(chair, subject);
      if (meant.length > 0)
        return tell(requirementNotJudged, place, {
          message: sentence("requirement-not-judged.near", { subject }),
          subject,
          fixes: meant.map((text) => ({
            title: sentence("fix.change-to", { text }),
            edits: [{ ...line.subjectAt, text }],
          })),
        });
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

/** Values that are offered, at most. */
const OFFERED = 4;

/** Values of the same part, or of its ends, that end in the same word: `seat-side.front.tenon-long` for `seat-side.tenon-long`. */
function valuesNear(chair: Chair, subject: string): string[] {
  const { id, rest } = readPart(subject);
  const word = rest.at(-1);
  if (word === undefined) return [];
  return [...chair.values.keys()]
    .filter((name) => {
      const other = readPart(name);
      const isSide = id.side === "middle" ? !isRight(name) : other.id.side === id.side;
      return other.id.stem === id.stem && isSide && other.rest.at(-1) === word;
    })
    .slice(0, OFFERED);
}
