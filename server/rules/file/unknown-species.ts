import { nearest } from "../../../grammar/nearest.ts";
import { sentence } from "../../../grammar/sentences/sentence.ts";
import { orList } from "../../../grammar/wording.ts";
import type { Design, Given, TimberDesign } from "../../design/design.ts";
import { speciesAliases, speciesList, speciesOf, speciesSource } from "../../timber/species.ts";
import { placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { tell } from "../machinery/say.ts";

export const unknownSpecies: Rule = {
  code: "unknown-species",
  severity: "warning",
  title: "Timber not in the table",
  explanation:
    "The species table has no wood of this name, so parts of it cannot be weighed, and how the chair tips is not known. Name one that it has, or say the density you weighed, in kilograms a cubic metre: `timber bog-oak density 750`.",
  source: `Species: ${speciesSource}`,
  find({ chair }) {
    const { design } = chair;
    return [...unknownTimbers(design)].map((timber) => {
      const { species } = timber.value;
      const near = nearest(species, [...speciesList.map(({ key }) => key), ...Object.keys(speciesAliases)]);
      const choices = speciesAliases[species] ?? (near ? (speciesAliases[near] ?? [near]) : []);
      const place = placeOf(design, [timber]);
      return tell(unknownSpecies, place, {
        message:
          choices.length > 1
            ? sentence("unknown-species.which", { species, choices: orList(choices) })
            : sentence("unknown-species", { species }),
        otherwise: sentence("unknown-species.otherwise"),
        subject: species,
        found: species,
        fixes: choices.map((choice) => ({
          title: sentence("fix.make-it", { it: choice }),
          edits: [{ start: place.start, end: place.end, text: choice }],
        })),
      });
    });
  },
};

/** Timbers of a file that the species table lacks and that have no density of their own. */
export function unknownTimbers(design: Design): ReadonlySet<Given<TimberDesign>> {
  const parts = [design.posts, design.rails, design.slats, design.sticks, design.bows, design.blocks].flatMap(
    (some): { timber?: Given<TimberDesign> }[] => [...some.values()],
  );
  const unknown = new Set<Given<TimberDesign>>();
  for (const { timber } of [design, ...parts, ...(design.seat ? [design.seat] : [])])
    if (timber && timber.value.density === undefined && !speciesOf(timber.value.species)) unknown.add(timber);
  return unknown;
}
