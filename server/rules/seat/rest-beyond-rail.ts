import { sentence } from "../../../grammar/sentences/sentence.ts";
import type { Rail } from "../../chair/chair.ts";
import { shapeOf } from "../../chair/rails/rail-outline.ts";
import type { Given, RestDesign } from "../../design/design.ts";
import { plain } from "../machinery/names.ts";
import { placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, SAME_LENGTH, tell } from "../machinery/say.ts";

export const restBeyondRail: Rule = {
  code: "rest-beyond-rail",
  severity: "error",
  title: "Rebate, groove or strip beyond its rail",
  explanation:
    "A rebate, a groove or a strip has to lie within the section of its rail, all along it: a rebate deeper than the rail cuts it in two, and a strip lower than the rail has nothing to be screwed to. A round rail has no flat face for any of them. Make it smaller or set it higher, or make the rail larger.",
  source: "Common practice: what is cut in a rail or fixed to it lies on its faces.",
  find({ chair }) {
    const { units } = chair.design;
    return [...chair.rails.values()].flatMap((rail) => {
      if (rail.design.is !== "rail") return [];
      return rail.design.rests.flatMap((rest) => {
        const place = placeOf(chair.design, [rest, rail.design]);
        const common = { rest: rest.value.is, rail: plain(rail.name) };
        if (rail.round !== undefined)
          return tell(restBeyondRail, place, {
            message: sentence("rest-beyond-rail.round", common),
            subject: rail.name,
            found: sentence("found.round-rail"),
            allowed: sentence("found.flat-faces"),
          });
        const worst = needs(rail, rest).reduce((a, b) => (b.needs - b.has > a.needs - a.has ? b : a));
        // A cut as deep as the wood leaves none.
        const over = worst.needs - worst.has;
        if (rest.value.is === "strip" ? over <= SAME_LENGTH : over < -SAME_LENGTH) return [];
        return tell(restBeyondRail, place, {
          message: sentence("rest-beyond-rail", {
            ...common,
            needs: length(worst.needs, units),
            which: worst.which,
            has: length(worst.has, units),
          }),
          otherwise: sentence("rest-beyond-rail.otherwise"),
          subject: rail.name,
          found: length(worst.needs, units),
          allowed: length(worst.has, units),
          badness: over,
        });
      });
    });
  },
};

interface Need {
  which: "thickness" | "width" | "length";
  needs: number;
  has: number;
}

const PLACES = [0, 0.25, 0.5, 0.75, 1];

/** How far into the rail's thickness and its width it reaches, and how much there is, at the least. */
function needs(rail: Rail, { value }: Given<RestDesign>): Need[] {
  const shape = shapeOf(rail);
  const least = (f: (x: number) => number) => Math.min(...PLACES.map((share) => f(share * rail.length)));
  const thickness = least(shape.thick);
  const width = least((x) => shape.top(x) - shape.bottom(x));
  const below = least((x) => -shape.bottom(x));
  const need = (which: Need["which"], needs: number, has: number): Need => ({ which, needs, has });
  if (value.is === "rebate")
    return [
      need("thickness", value.wide, thickness),
      need("width", value.deep, width),
      ...(value.to === undefined ? [] : [need("length", value.to, rail.length + 2 * SAME_LENGTH)]),
    ];
  if (value.is === "strip") return [need("width", value.at + value.wide, below)];
  if (value.face === "top" || value.face === "bottom")
    return [need("thickness", value.at + value.wide, thickness), need("width", value.deep, width)];
  return [need("width", value.at + value.wide, below), need("thickness", value.deep, thickness)];
}
