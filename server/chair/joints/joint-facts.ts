import type { Span } from "../../../grammar/problem.ts";
import type {
  Design,
  EndDesign,
  JointFacts,
  PostDesign,
  RailDesign,
  SlatDesign,
  StickDesign,
} from "../../design/design.ts";
import { withoutSides } from "../../design/identity.ts";
import { jointFactNames } from "../../design/joint.ts";
import { tenonWays } from "../../design/joint-facts.ts";
import type { RailEnd } from "../chair.ts";

/** What the text says of the joint at one end. */
export interface ChosenJoint {
  /** The named joint's facts, each replaced by the end's own where it has one. */
  facts: JointFacts;
  /** The joint's own name, when it has one. */
  design?: string;
  /** Where the choice stands: the `joined` fact, the end's header, or the part's name. */
  at: Span;
}

/** The joint chosen for one end of a rail or slat: the end's `joined`, else the part's, with the end's own facts on top. */
export function chosenJoint(
  design: Design,
  part: RailDesign | SlatDesign | StickDesign,
  end: RailEnd,
): ChosenJoint {
  const own = part.ends.filter((candidate) => isEnd(candidate, end));
  const joined = own.filter((candidate) => candidate.joined).pop()?.joined ?? part.joined;
  const facts = merge(joined && design.joints.get(joined.value), ...own.map((candidate) => candidate.joint));
  const at = joined?.at ?? own[0]?.which.at ?? part.at;
  return joined ? { facts, design: joined.value, at } : { facts, at };
}

/** The joint by which a post's top goes into the rail over it. */
export const chosenTopJoint = (design: Design, { topInto, at }: PostDesign): ChosenJoint =>
  namedJoint(design, topInto?.value.joint, topInto?.at ?? at);

/** The joint by which a post's top goes into a bow. */
export const chosenBowJoint = (design: Design, { topBow, at }: PostDesign): ChosenJoint =>
  namedJoint(design, topBow?.value.joint, topBow?.at ?? at);

/** A joint by its name alone, where the text may leave it out. */
export function namedJoint(design: Design, name: string | undefined, at: Span): ChosenJoint {
  const facts = merge(name === undefined ? undefined : design.joints.get(name));
  return name === undefined ? { facts, at } : { facts, design: name, at };
}

/** Whether what the text calls an end is this one: by its dotted name, the full name of what it enters, or that without its side. */
function isEnd(given: EndDesign, end: RailEnd): boolean {
  const which = given.which.value;
  const entered = end.entered?.name;
  return (
    which === end.name || which === entered || (entered !== undefined && withoutSides(entered) === which)
  );
}

function merge(...layers: (JointFacts | undefined)[]): JointFacts {
  const facts: JointFacts = {};
  for (const layer of layers) {
    if (!layer) continue;
    for (const name of replacedBy(layer)) delete facts[name];
    for (const name of jointFactNames) copy(facts, layer, name);
  }
  return facts;
}

const replacedBy = (layer: JointFacts): (keyof JointFacts)[] => {
  const gives = (way: readonly (keyof JointFacts)[]) => way.some((name) => layer[name] !== undefined);
  return tenonWays.some(gives) ? tenonWays.filter((way) => !gives(way)).flat() : [];
};

function copy<K extends keyof JointFacts>(into: JointFacts, from: JointFacts, name: K): void {
  const given = from[name];
  // A default that nobody wrote never wins over what somebody did.
  if (given === undefined || (given.assumed && into[name] !== undefined)) return;
  into[name] = given;
}
