/**
 * What is worth knowing of a thing by its name, as Markdown: for hovers and completion.
 */

import { workedValue } from "../../chair/values/values.ts";
import type { Declared } from "../../design/design.ts";
import { printQuantity } from "../../design/units.ts";
import type { Study } from "../../study.ts";
import { type NameOfPart, postsOf, railsOf, withoutTwins } from "../names/chair-parts.ts";
import { goesInto } from "./about-assembly.ts";
import { aboutBoard, aboutYard } from "./about-board.ts";
import { aboutBow } from "./about-bow.ts";
import { aboutJointDesign } from "./about-joint.ts";
import { aboutLoad } from "./about-load.ts";
import { aboutPost } from "./about-post.ts";
import { aboutMember, aboutRail } from "./about-rail.ts";
import { demandLine, loadLine, movesLine, rulingOf } from "./about-strength.ts";
import { aboutWorked } from "./about-value.ts";
import { bullets, paragraphs, plain } from "./markdown.ts";

/** Most members of a repeated part told one by one. */
const MOST_MEMBERS = 12;

/** A declared thing: what it is, its description and its figures; nothing for a name nobody declared. */
export function aboutName(study: Study, { name, side }: NameOfPart): string | undefined {
  const declared = study.design.names.get(name);
  if (!declared) return undefined;
  const pair = "pair" in declared && declared.pair ? (side ? `, ${side}` : ", a pair") : "";
  const from = declared.file ? `from ${plain(fileName(declared.file))}` : undefined;
  return paragraphs(
    `**${plain(`${declared.is} ${name}`)}**${pair}`,
    figures(study, declared, side),
    declared.description && plain(declared.description),
    from,
  );
}

function figures(study: Study, declared: Declared, side: string | undefined): string | undefined {
  const { chair, design } = study;
  const unit = design.units;
  // Its size first, then how hard it works: both stay when a long hover is cut short.
  const withOrder = ([size = "", ...lines]: readonly string[], part: string) =>
    bullets([
      size,
      ...demandLine(rulingOf(study, "members", part)),
      ...lines,
      ...movesLine(study, part),
      ...(goesInto(chair, part) ? [goesInto(chair, part)!] : []),
    ]);
  switch (declared.is) {
    case "post": {
      const posts = sideOf(postsOf(chair, declared.name), side);
      return posts[0] ? withOrder(aboutPost(chair, posts[0], unit), posts[0].name) : notBuilt;
    }
    case "rail":
    case "slat":
    case "stick": {
      const rails = sideOf(railsOf(chair, declared.name), side);
      if (!rails.length) return notBuilt;
      if (rails.length === 1 && rails[0]) return withOrder(aboutRail(rails[0], unit), rails[0].name);
      const told = rails.slice(0, MOST_MEMBERS).map((rail) => aboutMember(rail, unit));
      const rest = rails.length - told.length;
      return bullets(rest > 0 ? [...told, `and ${rest} more`] : told);
    }
    case "bow": {
      const bow = chair.bows.get(declared.name);
      return bow ? withOrder(aboutBow(chair, bow, unit), bow.name) : notBuilt;
    }
    case "joint":
      return bullets(aboutJointDesign(chair, declared.name, unit));
    case "let": {
      const { value, within } = declared;
      if (!value) return undefined;
      const show = (number: number) => printQuantity({ ...value.value, number }, unit);
      return `Comes to ${show(value.value.number)}${within ? `, adjustable from ${show(within.value.low)} to ${show(within.value.high)}` : ""}`;
    }
    case "angle": {
      const worked = workedValue(chair, declared.name);
      const limit = declared.limit?.value;
      const allowed =
        limit && boundPhrase(limit, (number) => printQuantity({ number, dimension: "angle" }, unit));
      return paragraphs(worked && aboutWorked(worked, unit), allowed && `To be ${allowed}`);
    }
    case "block":
      if (![...chair.blocks.values()].some(({ id }) => id.stem === declared.name)) return notBuilt;
      return declared.fixing && bullets([`To be ${declared.fixing.value} in when the frame is together`]);
    case "board":
      return bullets(aboutBoard(declared, unit));
    case "yard":
      return bullets(aboutYard(declared, unit));
    case "load":
      return bullets([...aboutLoad(declared, unit), ...loadLine(study, declared.name)]);
  }
}

const notBuilt = "Cannot be built from the text as it stands.";

/** The one on the side asked for; without a side, the left one of each pair. */
function sideOf<T extends { name: string; side: string }>(
  things: readonly T[],
  side: string | undefined,
): T[] {
  if (side === undefined) return withoutTwins(things);
  return things.filter((thing) => thing.side === side || thing.name.split(".").includes(side));
}

/** A bound in words: `from 5° to 7°`, `7° or less`. */
function boundPhrase(
  { low, high }: { low?: number; high?: number },
  show: (number: number) => string,
): string {
  if (low !== undefined && high !== undefined)
    return low === high ? show(low) : `from ${show(low)} to ${show(high)}`;
  if (low !== undefined) return `${show(low)} or more`;
  return high === undefined ? "anything" : `${show(high)} or less`;
}

function fileName(address: string): string {
  const last = address.slice(address.lastIndexOf("/") + 1);
  try {
    return decodeURIComponent(last);
  } catch {
    return last;
  }
}
