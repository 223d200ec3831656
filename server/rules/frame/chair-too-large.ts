import type { Span } from "../../../grammar/problem.ts";
import { sentence } from "../../../grammar/sentences/sentence.ts";
import type { Tree } from "../../../grammar/tree.ts";
import type { Chair } from "../../chair/chair.ts";
import type { LengthUnit } from "../../design/design.ts";
import { printLength, printQuantity } from "../../design/units.ts";
import { plain } from "../machinery/names.ts";
import { placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { tell } from "../machinery/say.ts";

/** Larger or heavier than any chair, mm and kg. */
const WIDEST = 3000;
const HEAVIEST = 60;

export const chairTooLarge: Rule = {
  code: "chair-too-large",
  severity: "warning",
  title: "Larger than any chair",
  explanation:
    "The chair is wider, deeper or higher than 3 m, or heavier than 60 kg. Usually the unit is not the one meant: lengths without a unit are in the file's `units`. While this stands, nothing else is said of the chair. `limit chair-too-large to 4000mm` allows a wider one, and one heavier in proportion.",
  source: "common practice: no seat for one or for several in a row is built larger in one piece.",
  limit: { high: WIDEST, dimension: "length" },
  alone: true,
  find({ chair, tree, limit }) {
    const { units } = chair.design;
    const size = (["width", "depth", "height"] as const)
      .map((name) => ({ name, mm: chair.values.get(name)?.number ?? 0 }))
      .reduce((a, b) => (b.mm > a.mm ? b : a));
    const weight = chair.values.get("weight")?.number ?? 0;
    const most = limit.high ?? WIDEST;
    // Where a larger chair is allowed it may be heavier in proportion.
    const heaviest = HEAVIEST * Math.max(1, most / WIDEST);
    const heavy = size.mm <= most && weight > heaviest;
    if (size.mm <= most && !heavy) return [];
    const kg = (number: number) => printQuantity({ number, dimension: "mass" }, units);
    const found = heavy ? kg(weight) : printLength(size.mm, units);
    const allowed = heavy ? kg(heaviest) : printLength(most, units);
    const word = unitsWord(tree);
    const says = sentence(heavy ? "chair-too-large.weight" : `chair-too-large.${size.name}`, {
      found,
      allowed,
      units,
    });
    const longest = longestPart(chair);
    return [
      tell(chairTooLarge, placeOf(chair.design, [word && { at: word }, { at: chair.design.titleAt }]), {
        message: [says, ...(longest ? [sayLongest(longest, units)] : [])].join(" "),
        subject: "chair",
        found,
        allowed: sentence("figure.or-less", { figure: allowed }),
        badness: heavy ? weight - heaviest : size.mm - most,
        fixes: word
          ? others(units).map((unit) => ({
              title: sentence("fix.write-units", { unit }),
              edits: [{ ...word, text: unit }],
            }))
          : [],
        otherwise: sentence("chair-too-large.otherwise"),
      }),
    ];
  },
};

const sayLongest = ({ name, mm }: { name: string; mm: number }, units: LengthUnit): string =>
  sentence("chair-too-large.longest", { part: plain(name), long: printLength(mm, units) });

/** The longest part of the chair by its length along itself. */
function longestPart({ posts, rails, values }: Chair): { name: string; mm: number } | undefined {
  return [...posts.keys(), ...rails.keys()]
    .map((name) => ({ name, mm: values.get(`${name}.length`)?.number ?? 0 }))
    .reduce<{ name: string; mm: number } | undefined>((a, b) => (b.mm > (a?.mm ?? 0) ? b : a), undefined);
}

const others = (unit: LengthUnit): LengthUnit[] =>
  (["mm", "cm", "in"] as const).filter((each) => each !== unit);

/** Where the file gives its unit. */
function unitsWord(tree: Tree): Span | undefined {
  const fact = tree.statements.find(({ word }) => word?.text === "units")?.match?.facts[0];
  return fact && { start: fact.start, end: fact.end };
}
