/**
 * Chairs at random for the outside checks: tapered, splayed and raked posts, and rails of many sections with every kind of joint.
 */
import fc from "fast-check";

const plain = fc.record({
  is: fc.constantFrom("plain", "twin", "dowels", "haunch", "through", "fork", "loose"),
  thick: fc.integer({ min: 6, max: 12 }),
  long: fc.integer({ min: 12, max: 34 }),
  top: fc.integer({ min: 0, max: 14 }),
  set: fc.integer({ min: -1, max: 8 }),
  square: fc.boolean(),
  mitre: fc.boolean(),
});

const joints = plain.map(({ is, thick, long, top, set, square, mitre }) => {
  const lines =
    is === "dowels"
      ? [`dowels ${1 + (long % 3)} round ${thick} long ${2 * long}`]
      : is === "fork"
        ? ["bridle"]
        : is === "loose"
          ? [`loose-tenon thick ${thick}, long ${2 * long}`]
          : [`tenon thick ${thick}, long ${long}`];
  if (is === "twin") lines.push(`twin gap ${4 + (long % 12)}`);
  if (is === "through") lines.push("through wedged");
  if (is === "haunch") lines.push(`haunch long ${Math.ceil(long / 3)}${long % 2 ? " sloped" : ""}`);
  if (set >= 0 && is !== "fork") lines.push(`set ${set} from outside`);
  if (square) lines.push("tenon square");
  if (mitre && is !== "loose") lines.push(`mitre gap ${thick % 3}`);
  lines.push(`shoulders top ${top}, bottom 6`);
  return lines.map((line) => `  ${line}\n`).join("");
});

/** Four posts and four rails; each pair's posts taper evenly from end to end, so that each is one solid. */
export const chairs = fc
  .record({
    front: fc.integer({ min: 180, max: 230 }),
    back: fc.integer({ min: 140, max: 220 }),
    post: fc.tuple(fc.integer({ min: 34, max: 48 }), fc.integer({ min: 34, max: 48 })),
    foot: fc.integer({ min: 0, max: 12 }),
    splay: fc.integer({ min: -6, max: 8 }),
    rake: fc.integer({ min: -6, max: 8 }),
    rail: fc.tuple(fc.integer({ min: 18, max: 28 }), fc.integer({ min: 36, max: 80 })),
    drop: fc.integer({ min: 0, max: 70 }),
    fall: fc.integer({ min: 0, max: 12 }),
    across: joints,
    along: joints,
    face: fc.constantFrom("centred", "flush", "inset 3"),
  })
  .map(({ front, back, post, foot, splay, rake, rail, drop, fall, across, along, face }) => {
    const posts = (name: string, header: string) => `post ${name} pair {
  section ${post[0]} x ${post[1]}
  ${header}
  height 560
  splay ${splay}deg
  rake ${name === "front" ? -rake : rake}deg
  taper ${post[0] - foot} x ${post[1] - foot} from 560 to foot
}
`;
    const member = (name: string, course: string, joint: string, up: number) => `rail ${name} {
  ${course}
  section ${rail[0]} x ${rail[1]}
  up ${up}
  face ${face}
  joined ${joint}
}
`;
    return [
      `joint across-tenon {\n${across}}\njoint along-tenon {\n${along}}\n`,
      posts("front", `at 400 out ${front}, back 20`),
      posts("back", `at 400 out ${back}, back 400`),
      member("seat-front", "across front", "across-tenon", 430),
      member("seat-side pair", `from front to back\n  fall ${fall}`, "along-tenon", 430 - drop),
      member("seat-back", "across back", "across-tenon", 430),
    ].join("");
  });
