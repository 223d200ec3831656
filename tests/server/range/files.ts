import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { finish } from "../../../grammar/steps.ts";
import type { Subject } from "../../../server/range/attempt.ts";
import { type Range, rangeSteps } from "../../../server/range/bands.ts";
import { type Choice, choiceNamed, choicesOf } from "../../../server/range/choice.ts";
import { type Study, study } from "../../../server/study.ts";
import { projectFile } from "../../proofs/project-file.ts";

const folder = projectFile("samples");

/** The sample chairs by file name. */
export const samples: Record<string, string> = Object.fromEntries(
  readdirSync(folder)
    .filter((name) => name.endsWith(".chair"))
    .map((name) => [name, readFileSync(join(folder, name), "utf8")]),
);

/** A text as a file beside the samples. */
export const subjectOf = (text: string): Subject => ({
  text,
  address: "file:///samples/at-hand.chair",
  files: {
    resolve: (_from, path) => `file:///samples/${path}`,
    read: (address: string) => samples[address.slice("file:///samples/".length)],
  } as Subject["files"],
});

export const studied = (text: string): Study => study(subjectOf(text));

export function choiceIn(text: string, name: string): Choice {
  const { tree, design } = studied(text);
  const choice = choiceNamed(tree, design, name);
  if (!choice) throw new Error(`no ${name} among ${choicesOf(tree, design).map((each) => each.name)}`);
  return choice;
}

export const rangeOf = (
  text: string,
  name: string,
  more: Partial<Parameters<typeof rangeSteps>[0]> = {},
): Range => finish(rangeSteps({ subject: subjectOf(text), choice: choiceIn(text, name), ...more }));

/** Four plumb posts and a drop-in seat on four rails: sizes that can be worked out by hand. */
export const plain = (more = "") => `chair "Plain"
units mm
timber european-ash moisture 10%

let seat-height = 440 within 400 to 480
let foot-back = 400 within 380 to 420

joint plain-tenon {
  tenon thick 1/3 of rail, long 22
  shoulders top 10, bottom 6
}

post front pair {
  section 40 x 40
  foot out 200, back 0
  height seat-height
}

post back pair {
  section 40 x 40
  foot out 200, back foot-back
  height seat-height + 400
}

rail seat-front {
  across front
  section 22 x 60
  up seat-height
  joined plain-tenon
}

rail seat-side pair {
  from front to back
  section 22 x 60
  up seat-height
  joined plain-tenon
}

rail seat-back {
  across back
  section 22 x 60
  up seat-height
  joined plain-tenon
}

seat board {
  on seat-front, seat-side, seat-back
  thick 20
}
${more}`;
