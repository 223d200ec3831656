/**
 * A plain frame to break in the rules' examples: four posts, four rails and a seat, clean as it comes.
 */

export interface Breaks {
  /** Lines in place of the frame's own. */
  front?: string;
  back?: string;
  joint?: string;
  rails?: string;
  seat?: string;
  /** Lines at the end of the file. */
  more?: string;
  sitter?: string;
}

const rail = (header: string, course: string, more = ""): string =>
  `rail ${header} {\n  ${course}\n  section 22 x 60\n  up 420\n${more}  joined plain\n}\n`;

/** The rails with their faces flush, for mortises near a post's side. */
export const flushRails = `${rail("seat-front", "across front")}${rail("seat-side pair", "from front to back", "  face flush\n")}${rail("seat-back", "across back")}`;

export const sideRail = rail("seat-side pair", "from front to back");
export const frontRail = rail("seat-front", "across front");
export const backRail = rail("seat-back", "across back");

const indented = (lines: string): string =>
  lines
    .split("\n")
    .map((line) => (line === "" ? "" : `  ${line}\n`))
    .join("");

/** The frame with some of its lines replaced. */
export function frame(breaks: Breaks = {}): string {
  const front = breaks.front ?? "section 40 x 40\nfoot out 200, back 20\nheight 430";
  const back = breaks.back ?? "section 40 x 40\nfoot out 200, back 420\nheight 430";
  const joint = breaks.joint ?? "tenon thick 8, long 26";
  const shoulders =
    joint.includes("shoulders") || joint.includes("round") ? "" : "shoulders top 10, bottom 6";
  return [
    breaks.sitter === undefined ? "" : `sitter ${breaks.sitter}\n`,
    `joint plain {\n${indented(joint)}${indented(shoulders)}${joint.includes("mitre") ? "" : "  mitre\n"}}\n`,
    `post front pair {\n${indented(front)}}\n`,
    `post back pair {\n${indented(back)}}\n`,
    breaks.rails ?? frontRail + sideRail + backRail,
    breaks.seat ?? "seat board {\n  on seat-front, seat-side, seat-back\n  thick 20\n}\n",
    breaks.more ?? "",
  ].join("");
}

/** The frame with back posts that carry a back, leaning as the line says. */
export const backFrame = (lean: string, more = ""): string =>
  frame({
    back: `section 40 x 40\nfoot out 200, back 420\nheight 900\n${lean}`,
    more: leaningRail("back-lower", 620) + leaningRail("crest", 895) + more,
  });

const leaningRail = (name: string, up: number): string =>
  `rail ${name} {\n  across back\n  section 20 x 70\n  up ${up}\n  stand with posts\n  joined plain\n}\n`;

/** The frame with a back and arms over the front posts, at the height that the line says. */
export const armFrame = (up: string, more = ""): string =>
  frame({
    front: "section 40 x 40\nfoot out 240, back 20\ntop into arm with pin",
    back: "section 40 x 40\nfoot out 240, back 420\nheight 900\nrake 6deg above 450",
    more: `joint pin {\n  tenon thick 12, wide 22, long 16\n}\njoint arm-joint {\n  tenon thick 8, long 20\n  shoulders top 5, bottom 5\n}\nrail arm pair {\n  from front to back\n  section 24 x 40\n  ${up}\n  lie flat\n  end front {\n    over\n    overhang 20\n  }\n  end back {\n    joined arm-joint\n  }\n}\n${leaningRail("back-lower", 620)}${leaningRail("crest", 895)}${more}`,
  });
