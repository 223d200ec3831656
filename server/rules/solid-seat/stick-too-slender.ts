import { sentence } from "../../../grammar/sentences/sentence.ts";
import { shapeOf } from "../../chair/rails/rail-outline.ts";
import type { StickDesign } from "../../design/design.ts";
import { most, sourcesOf } from "../machinery/figures.ts";
import { named, placeOf } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, lengthOrMore, SAME_LENGTH, tell } from "../machinery/say.ts";

export const stickTooSlender: Rule = {
  code: "stick-too-slender",
  severity: "warning",
  title: "Stick too slender for its length",
  explanation:
    "A long thin stick bends away under the back that leans on it and breaks at its foot. Its length from the seat to its head, or to the bow that it goes through if that is more, is compared with its diameter where it is stoutest. Make it thicker, or hold it with a bow halfway. `limit stick-too-slender to 50` changes how many diameters long it may be. A calculation is not a test: try a doubtful stick in the hand.",
  source: sourcesOf("stick-slenderness"),
  limit: { high: most("stick-slenderness"), dimension: "number" },
  find({ chair, limit }) {
    const { units } = chair.design;
    const allowed = limit.high ?? most("stick-slenderness");
    return [...chair.sticks.values()].flatMap((stick) => {
      if (stick.side === "right") return [];
      const design = stick.design as StickDesign;
      const shape = shapeOf(stick);
      const places = [0, ...shape.bends, stick.length];
      const stoutest = Math.max(...places.map((x) => shape.outside(x) - shape.inside(x)));
      const held = stick.passes ? along(stick.start, stick.passes.at) : 0;
      const free = Math.max(held, stick.length - held);
      const needed = free / allowed;
      if (stoutest >= needed - SAME_LENGTH) return [];
      return tell(stickTooSlender, placeOf(chair.design, [design.round, design]), {
        message: sentence("stick-too-slender", {
          Stick: named(chair, stick.name),
          long: length(free, units),
          stout: length(stoutest, units),
          least: lengthOrMore(needed, units),
        }),
        otherwise: sentence("stick-too-slender.otherwise"),
        subject: stick.name,
        found: length(stoutest, units),
        allowed: `${lengthOrMore(needed, units)} or more`,
        badness: needed - stoutest,
      });
    });
  },
};

const along = (a: readonly number[], b: readonly number[]): number =>
  Math.hypot(a[0]! - b[0]!, a[1]! - b[1]!, a[2]! - b[2]!);
