/**
 * The rules about solid seats, each with a change to a sample that breaks it by a little and one that just does not, and the message in mm and in
 * inches.
 */
import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { messagesOf } from "../../check.ts";

const sample = (name: string) =>
  readFileSync(new URL(`../../../samples/${name}.chair`, import.meta.url), "utf8");
const slip = sample("slip-chair");
const bow = sample("bow-armchair");
/** Its legs, seat and joints alone: what is judged of them takes no crest. */
const stool = slip.slice(0, slip.indexOf("stick back-stick"));

type Change = readonly [string, string];
interface Case {
  code: string;
  of?: string;
  breaks: Change[];
  keeps: Change[];
  mm: string;
  inches: string;
}

const blind = (tenon: string): Change[] => [
  [/ {2}round 28 to 22.*\n {2}through wedged/.exec(slip)![0], `  ${tenon}`],
  ["out 155, back 80", "out 100, back 150"],
];

const cases: Case[] = [
  {
    code: "socket-near-edge",
    of: stool,
    breaks: [["out 155, back 80", "out 163, back 80"]],
    keeps: [["out 155, back 80", "out 162, back 80"]],
    mm: "Between the socket of front-leg and the seat's edge only 11 mm of wood is left; 12 mm or more is needed.",
    inches:
      "Between the socket of front-leg and the seat's edge only 7/16 in of wood is left; 31/64 in or more is needed.",
  },
  {
    code: "sockets-too-close",
    breaks: [["count 7", "count 17"]],
    keeps: [["count 7", "count 15"]],
    mm: "Between the sockets of back-stick.3 and back-stick.2 in the seat only 8.7 mm of wood is left; 10 mm or more is needed.",
    inches:
      "Between the sockets of back-stick.3 and back-stick.2 in the seat only 11/32 in of wood is left; 13/32 in or more is needed.",
  },
  {
    code: "sockets-in-line",
    of: stool,
    breaks: [["out 155, back 80", "out 108, back 235"]],
    keeps: [["out 155, back 80", "out 108, back 218"]],
    mm: "The sockets of back-leg and front-leg are in line along the seat's grain with 25.5 mm of wood between them; 42 mm or more is needed.",
    inches:
      "The sockets of back-leg and front-leg are in line along the seat's grain with 1 in of wood between them; 1 21/32 in or more is needed.",
  },
  {
    code: "socket-too-shallow",
    breaks: [["round 12, long 26", "round 12, long 13"]],
    keeps: [["round 12, long 26", "round 12, long 13.2"]],
    mm: "The socket of back-stick.1 in the seat is 13 mm deep for a diameter of 12 mm; 13.2 mm or more is needed.",
    inches:
      "The socket of back-stick.1 in the seat is 33/64 in deep for a diameter of 15/32 in; 17/32 in or more is needed.",
  },
  {
    code: "socket-near-hollow",
    of: stool,
    breaks: blind("round 25, long 27"),
    keeps: blind("round 25, long 26"),
    mm: "Between the socket of front-leg and the hollow over it only 5.5 mm of wood is left; 6 mm or more is needed.",
    inches:
      "Between the socket of front-leg and the hollow over it only 7/32 in of wood is left; 15/64 in or more is needed.",
  },
  {
    code: "foot-over-hollow",
    breaks: [["feet in 34", "feet in 70"]],
    keeps: [["feet in 34", "feet in 68"]],
    mm: "The shoulder of back-stick.1 stands 1.2 mm above the hollow at its foot, which leaves that much less of its tenon of 26 mm in the wood; 1 mm is allowed.",
    inches:
      "The shoulder of back-stick.1 stands 3/64 in above the hollow at its foot, which leaves that much less of its tenon of 1 1/32 in in the wood; 1/32 in is allowed.",
  },
  {
    code: "tenon-unlike-stick",
    of: stool,
    breaks: [["round 28 to 22", "round 19 to 16"]],
    keeps: [["round 28 to 22", "round 20 to 16"]],
    mm: "The tenon of front-leg in the seat is 19 mm thick on a part of 40 mm; 20 mm or more is needed.",
    inches:
      "The tenon of front-leg in the seat is 3/4 in thick on a part of 1 37/64 in; 51/64 in or more is needed.",
  },
  {
    code: "leg-leans-far",
    of: stool,
    breaks: [["rake 16deg", "rake 21deg"]],
    keeps: [["rake 16deg", "rake 20deg"]],
    mm: "The post back-leg leans 25.2° from square to the seat; 25° or less is allowed.",
    inches: "The post back-leg leans 25.2° from square to the seat; 25° or less is allowed.",
  },
  {
    code: "stretcher-off-stout",
    of: stool,
    breaks: [["up 170", "up 100"]],
    keeps: [["up 170", "up 105"]],
    mm: "The rail side-stretcher meets back-leg where it is 33.6 mm thick, and its stoutest is 40 mm; 34 mm or more is needed there.",
    inches:
      "The rail side-stretcher meets back-leg where it is 1 21/64 in thick, and its stoutest is 1 37/64 in; 1 11/32 in or more is needed there.",
  },
  {
    code: "sticks-too-far-apart",
    breaks: [["count 7", "count 4"]],
    keeps: [["count 7", "count 5"]],
    mm: "Between back-stick.2 and back-stick.3 there is a gap of 98.5 mm; 75 mm or less is allowed for a back.",
    inches:
      "Between back-stick.2 and back-stick.3 there is a gap of 3 7/8 in; 2 61/64 in or less is allowed for a back.",
  },
  {
    code: "stick-too-slender",
    breaks: [["round 14\n  taper 12", "round 10.8\n  taper 9"]],
    keeps: [["round 14\n  taper 12", "round 10.9\n  taper 9"]],
    mm: "The stick back-stick.1 is 488.5 mm long between what holds it and 10.8 mm thick where it is stoutest; 10.9 mm or more is needed.",
    inches:
      "The stick back-stick.1 is 19 15/64 in long between what holds it and 27/64 in thick where it is stoutest; 7/16 in or more is needed.",
  },
  {
    code: "bow-bent-tight",
    of: bow,
    breaks: [["round 16\n  taper 15", "round 17\n  taper 15"]],
    keeps: [],
    mm: "The bow hoop is bent to a radius of 166.5 mm inside, 17 mm thick; 170 mm or more is needed.",
    inches:
      "The bow hoop is bent to a radius of 6 9/16 in inside, 43/64 in thick; 6 45/64 in or more is needed.",
  },
  {
    code: "mortise-wall-thin",
    breaks: [["section 22 x 75", "section 17 x 75"]],
    keeps: [["section 22 x 75", "section 21.5 x 75"]],
    mm: "Beside the mortise for the tenon of back-stick.1 into crest only 0.9 mm of wood is left; 3 mm or more is needed.",
    inches:
      "Beside the mortise for the tenon of back-stick.1 into crest only 1/32 in of wood is left; 1/8 in or more is needed.",
  },
  {
    code: "mortise-near-end",
    breaks: [["heads margin 48", "heads margin 12"]],
    keeps: [["heads margin 48", "heads margin 18"]],
    mm: "Between the mortise for the tenon of back-stick.1 into crest and the end of crest only 3.8 mm of wood is left; 8 mm or more is needed.",
    inches:
      "Between the mortise for the tenon of back-stick.1 into crest and the end of crest only 5/32 in of wood is left; 21/64 in or more is needed.",
  },
];

const changed = (text: string, changes: readonly Change[]): string =>
  changes.reduce((all, [from, to]) => {
    expect(all).toContain(from);
    return all.replace(from, to);
  }, text);

/** The same chair told in inches: every bare figure says that it is in mm. */
const inInches = (text: string): string =>
  text
    .replace(/#.*/g, "")
    .replace("units mm", "units inches")
    .replace(/^(?!\s*count).*$/gm, (line) => line.replace(/(?<![\w./-])(\d+(?:\.\d+)?)(?![\w./%])/g, "$1mm"));

it.each(cases)("$code", ({ code, of = slip, breaks, keeps, mm, inches }) => {
  const broken = changed(of, breaks);
  const told = messagesOf(broken, code);
  expect([told[0], messagesOf(inInches(broken), code)[0]]).toEqual([mm, inches]);
  expect(messagesOf(changed(of, keeps), code)).toEqual([]);
});

it("member-without-joint: a crest over one post that its top does not go into", () => {
  const crest = (top: string) => `units mm
timber white-ash moisture 9%
joint socket {
  round 24, long 30
}
seat solid {
  up 440
  thick 46
  round 380
}
post back-post {
  stand on seat at out 0, back 320
  height 760
  round 36
${top}  joined socket
}
rail crest {
  over back-post
  long 360
  section 40 x 70
}
`;
  expect(messagesOf(crest(""), "member-without-joint")).toEqual([
    "The rail crest has no joint at its end towards back-post.",
  ]);
  expect(messagesOf(crest("  top into crest with socket\n"), "member-without-joint")).toEqual([]);
});
