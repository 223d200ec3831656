/**
 * Each part of a chair in plain words, for whoever looks at its drawing: what hovers say of it in the text, without markup.
 */

import type { Steps } from "../../../grammar/steps.ts";
import { railsAndSlats } from "../../chair/member.ts";
import { workedValue } from "../../chair/values/values.ts";
import { printQuantity } from "../../design/units.ts";
import type { View } from "../view.ts";
import { aboutBow } from "./about-bow.ts";
import { aboutPost } from "./about-post.ts";
import { aboutRailBriefly } from "./about-rail.ts";
import { briefPost, briefRail } from "./brief.ts";
import type { Naming } from "./markdown.ts";

export interface PartTold {
  /** Full name. */
  part: string;
  /** `rail seat-side.left`. */
  title: string;
  /** The comment above it. */
  description?: string;
  /** One figure or a few to a line, in the file's units. */
  lines: string[];
  /** The same in three short lines, for beside it on the drawing. */
  brief?: string[];
}

const plainly: Naming = (name) => name;

/** All that is built: posts, rails, slats, sticks, bows, blocks, the seat; rests after each. */
export function* partsTold({ study: { chair, design } }: View): Steps<PartTold[]> {
  const unit = design.units;
  const told: PartTold[] = [];
  function tell(part: string, title: string, description: string | undefined, lines: string[]) {
    told.push({ part, title, ...(description !== undefined && { description }), lines });
  }
  const titled = (
    part: string,
    { is, description }: { is: string; description?: string },
    lines: string[],
    brief?: string[],
  ) => {
    tell(part, `${is} ${part}`, description, lines);
    if (brief) told[told.length - 1]!.brief = brief;
  };
  for (const post of chair.posts.values()) {
    titled(post.name, post.design, aboutPost(chair, post, unit, plainly), briefPost(chair, post, unit));
    yield;
  }
  for (const rail of railsAndSlats(chair)) {
    titled(rail.name, rail.design, aboutRailBriefly(rail, unit), briefRail(chair, rail, unit));
    yield;
  }
  for (const bow of chair.bows.values()) {
    titled(bow.name, bow.design, aboutBow(chair, bow, unit));
    yield;
  }
  for (const block of chair.blocks.values()) titled(block.name, block.design, []);
  if (chair.seat) {
    const figures = seatValues.flatMap(([name, says]) => {
      const worked = workedValue(chair, name);
      return worked ? [`${says} ${printQuantity(worked, unit)}`] : [];
    });
    const { kind, description } = chair.seat.design;
    tell(SEAT, `${SEAT} ${kind}`, description, figures);
  }
  return told;
}

const SEAT = "seat";
const seatValues = [
  ["seat.height", "Height at the front"],
  ["seat.depth", "Depth"],
  ["seat.front-width", "Width at the front"],
  ["seat.back-width", "Width at the back"],
  ["seat.slope", "Slope down to the back"],
] as const;
