import { jointName } from "../../design/identity.ts";
import { faultsOf } from "../machinery/faults.ts";
import { plain } from "../machinery/names.ts";
import { named } from "../machinery/place.ts";
import type { Rule } from "../machinery/rule.ts";
import { length, tell } from "../machinery/say.ts";

export const railMissesPost: Rule = {
  code: "rail-misses-post",
  severity: "error",
  title: "Shoulder that runs off its post",
  explanation:
    "Part of the rail's end lies beside the face it should meet, or above or below it, so that the shoulder would stand open there. Set the rail further in, make it narrower at that end, or make the post bigger.",
  source: "It follows from the shape.",
  find({ chair }) {
    const { units } = chair.design;
    return faultsOf(chair, "rail-misses-post").map(({ fault, place }) => {
      const by = length(fault.by, units);
      const towards = plain(fault.towards);
      return tell(railMissesPost, place, {
        message: `${named(chair, fault.part)} runs ${by} off the face of ${towards} that it meets; move it that much, or make it narrower there.`,
        subject: jointName(fault.part, fault.towards),
        found: `${by} off`,
        allowed: `on the face of ${towards}`,
        badness: fault.by,
      });
    });
  },
};
