/**
 * The order of gluing up, a section each time something is glued.
 */
import type { Chair } from "../../chair/chair.ts";
import { printAngle, printLength } from "../../design/units.ts";
import { glueUpsTold } from "../../drawing/pictorial/glue-ups.ts";
import { framesOf } from "../../joinery/frames.ts";
import type { Report, Section } from "./report.ts";

/** The report of a chair, in the file's units. */
export function gluingUpReport(title: string, chair: Chair): Report {
  const mm = (length: number) => printLength(length, chair.design.units);
  const steps = glueUpsTold(chair).map(
    ({ title: name, lines }, k): Section => ({ heading: `${k + 1}. ${name}`, items: lines }),
  );
  const { locked } = framesOf(chair);
  const shut = locked.map(
    ({ joints }): Section => ({
      heading: "No order closes these",
      items: [
        joints.map(({ name, angle, strays, slack }) => [
          name,
          `${printAngle(angle)} off, strays ${mm(strays)} over its length; ${mm(slack)} can be taken up`,
        ]),
      ],
    }),
  );
  const none = steps.length + shut.length === 0;
  return {
    title,
    sections: none
      ? [{ heading: "Gluing up", items: ["Nothing is joined by a tenon."] }]
      : [...steps, ...shut],
    ending: [
      ...(none ? [] : ["Lengths are between the middles of the posts' ends."]),
      "A calculation is not a test: put each frame together dry before any glue.",
    ],
  };
}
