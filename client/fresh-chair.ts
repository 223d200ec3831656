/**
 * A chair to start from as a text of its own: without the notes of the one it is taken from, whole without any other file, dated today.
 */

/** The samples that stand for a kind of chair, with what a maker would look for. */
export const kindsOfChair: readonly { sample: string; about: string }[] = [
  { sample: "boathouse-mess-chair", about: "side chair with a slatted back, mortised and tenoned" },
  { sample: "mess-armchair", about: "armchair, the arms over the front posts" },
  { sample: "harbour-chair", about: "chair with spindles, in centimetres" },
  { sample: "ladder-back", about: "turned posts, round rungs, a woven seat" },
  { sample: "joined-stool", about: "stool with splayed legs, in inches" },
  { sample: "chart-stool", about: "stool with a loose seat in rebates and a shelf" },
  { sample: "boathouse-stool", about: "three-legged stool on a solid seat" },
  { sample: "slip-chair", about: "side chair on a hollowed solid seat, sticks to a bent crest" },
  { sample: "bow-armchair", about: "armchair on a solid seat, with an arm bow and a hoop" },
  { sample: "slab-chair", about: "side chair on a solid seat, its back on two posts" },
  { sample: "slip-stool", about: "stool with legs right through a solid seat, wedged" },
  { sample: "landing-bench", about: "bench for two with middle posts" },
  { sample: "bench-from-a-yard", about: "bench in inches, with its stock list from a yard" },
];

/** Four posts, their rails and a seat, with nothing chosen that a chair does not need. */
export const bareChair = `chair "Bare chair"
units mm
sitter adult

joint rail-tenon {
  tenon thick 1/3 of rail, long 25
  shoulders top 10, bottom 10
  haunch long 8
  mitre
}

post front pair {
  section 40 x 40
  foot out 205, back 20
  height 430
}

post back pair {
  section 40 x 40
  foot out 190, back 430
  height 850
  rake 5deg above 490 over 80
}

rail seat-front {
  across front
  section 24 x 65
  up 430
  joined rail-tenon
}

rail seat-side pair {
  from front to back
  section 24 x 65
  up 430
  joined rail-tenon
}

rail seat-back {
  across back
  section 24 x 65
  up 430
  joined rail-tenon
}

rail back-lower {
  across back
  section 22 x 60
  up 680
  stand with posts
  joined rail-tenon
}

rail crest {
  across back
  section 22 x 75
  up 815
  stand with posts
  joined rail-tenon
}

seat board {
  on seat-front, seat-side, seat-back
  thick 20
}
`;

/**
 * The text of a new chair.
 *
 * @param text of the chair it is taken from
 * @param library gives the text of a file that it uses, by the name in its `use` line; nothing when there is none
 * @param today as a note writes it: `2026-03-14`
 */
export function freshChair(
  text: string,
  library: (name: string) => string | undefined,
  today: string,
): string {
  const title = titleOf(text) ?? "Chair";
  const own = withoutHeading(text).replace(/^note .*\n?/gm, "");
  const whole = own.replace(/^use "([^"]+)"\n/gm, (line, name: string) => {
    const used = library(name);
    return used === undefined ? line : jointsFor(own, withoutHeading(used));
  });
  const tidy = whole.replace(/\n{3,}/g, "\n\n").trim();
  return `${tidy}\n\nnote ${today} "Begun from: ${title.replaceAll('"', "'")}."\n`;
}

/** What the chair is called. */
export const titleOf = (text: string): string | undefined => /^chair "(.*)"$/m.exec(text)?.[1];

/** The file's name for a title: `Mess-room armchair` gives `mess-room-armchair.chair`. */
export function fileNameFor(title: string): string {
  const plain = title
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, "-")
    .replace(/^-+|-+$/g, "");
  return `${plain || "chair"}.chair`;
}

/** A text without the remarks over its first line. */
const withoutHeading = (text: string): string => text.replace(/^(?:#.*\n|\s*\n)*/, "");

/** Of a library what a chair needs: its lets, and those of its joints that the chair names. */
function jointsFor(chair: string, library: string): string {
  const named = new Set(chair.match(/[\w-]+/g));
  const lets = library.match(/^let .*$/gm) ?? [];
  const joints = [...library.matchAll(/^joint ([\w-]+) \{\n[\s\S]*?^\}$/gm)];
  return [lets.join("\n"), ...joints.filter(([, name]) => named.has(name!)).map(([block]) => block), ""].join(
    "\n\n",
  );
}
