/**
 * Every kind of joint. A new one is a file beside these and a line here; the compiler then asks for what else it needs: its words and
 * rules in `server/rules/joints/tellings.ts`, its line on the sheets in `server/drawing/markout/wording.ts`.
 */
import type { EndKind, JointFacts, KindName } from "../../../design/design.ts";
import type { JointSite } from "../joint-site.ts";
import { dowels } from "./dowels.ts";
import { fork } from "./fork.ts";
import type { JointKind } from "./kind.ts";
import { looseTenon } from "./loose-tenon.ts";
import { rectangular } from "./rectangular.ts";
import { round } from "./round.ts";
import { twin } from "./twin.ts";

/** In the order in which they are looked for: the first that the text asks for is cut. */
const table = { "loose-tenon": looseTenon, dowels, fork, round, twin, rectangular } as const satisfies Record<
  EndKind,
  JointKind
>;

export const jointKinds: Readonly<Record<EndKind, JointKind>> = table;

/** Every fact of a joint is read by some kind: one that none reads does not compile here. */
type Unread = Exclude<keyof JointFacts, (typeof table)[EndKind]["reads"][number]>;
export const noFactUnread: Unread extends never ? true : Unread = true;

/** Which kind the text asks for, at an end of turned stuff or not; undefined when it asks for none. */
export const kindAsked = (facts: JointFacts, end: Pick<JointSite, "round"> = {}): EndKind | undefined =>
  (Object.keys(jointKinds) as EndKind[]).find((name) => jointKinds[name].isAsked(facts, end));

/** Whether it is cut at the end of a part: its tenon stands out of that end, or its tongue is let into it. */
export const isEndKind = (name: KindName): name is EndKind => name in jointKinds;

const kindOf = (name: KindName): JointKind | undefined => (isEndKind(name) ? jointKinds[name] : undefined);

/** Whether a joint goes square into the face it enters, by its kind or by what the text says. */
export const goesSquare = ({ kind, facts }: { kind: KindName; facts: JointFacts }): boolean =>
  facts.line?.value === "square" || kindOf(kind)?.square === true;

/** What a joint says of two rails that are halved. */
const HALVING_READS: readonly (keyof JointFacts)[] = ["glue", "fit", "peg"];

/** What is cut of another part: of two rails that are halved, and of a bow that a stick goes through. */
const isCrossing = (kind: KindName): boolean => kind === "halving" || kind === "passing";

/** Whether a kind of joint may have a fact. */
export const mayHave = (kind: KindName, fact: keyof JointFacts): boolean =>
  isCrossing(kind) ? HALVING_READS.includes(fact) : !(kindOf(kind)?.refuses ?? []).includes(fact);
