import type { RailEnd } from "../../../server/chair/chair.ts";
import type {
  Design,
  JointFacts,
  RailDesign,
  SlatDesign,
  StickDesign,
} from "../../../server/design/design.ts";

/** The facts of the joint at an end by the charter: the end's own line first, then its joint's, then the part's joint's. */
export function factsAt(
  design: Design,
  part: RailDesign | SlatDesign | StickDesign,
  end: RailEnd,
): JointFacts {
  const here = part.ends.filter(({ which }) =>
    [end.name, end.entered?.name, end.entered?.name.split(".")[0]].includes(which.value),
  );
  const name = here.find((candidate) => candidate.joined)?.joined?.value ?? part.joined?.value;
  return Object.assign({}, name ? design.joints.get(name) : {}, ...here.map((candidate) => candidate.joint));
}
