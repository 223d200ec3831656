import { describe, it } from "vitest";
import { checkOf } from "../../check.ts";

const check = checkOf(
  "short-grain",
  "part-too-big-for-boards",
  "match-without-room",
  "board-not-usable",
  "board-not-there",
  "board-of-other-timber",
  "wood-runs-short",
);

const legs = `timber white-ash moisture 9%
post front pair {
  section 40 x 40
  foot out 200, back 20
  height 430
}
`;

const board = (more = "") => `board plank {\n  size 2400 x 180 x 50\n${more}}\n`;

describe("boards", () => {
  it("says nothing of boards that serve", () => {
    check(
      `${legs}${board("  count 2\n  defect at 600 long 50\n")}match front.left, front.right from plank\n`,
    );
  });

  it("tells of a part too thick, too wide or too long for every board", () => {
    const leg = (section: string, height: string, mark: string) =>
      `timber white-ash\npost front {\n  section ${section}\n${mark.startsWith("s") ? `  #       ${mark.slice(1)}\n` : ""}  foot out 0, back 20\n  height ${height}\n}\n`;
    check(`${leg("60 x 60", "430", "s^^^^^^^ part-too-big-for-boards 64 mm … 50 mm or less")}${board()}`);
    check(`${leg("40 x 200", "430", "s^^^^^^^^ part-too-big-for-boards 204 mm … 180 mm or less")}${board()}`);
    check(
      `timber white-ash\npost front {\n#    ^^^^^ part-too-big-for-boards 2400 mm … 2300 mm or less\n  section 40 x 40\n  foot out 0, back 20\n  height 2400\n}\n${board()}`,
    );
  });

  it("a match must have room on its board, whichever way it lies", () => {
    check(
      `${legs}board plank { size 2400 x 80 x 50 }\nmatch front from plank side by side\n#     ^^^^^^^^^^^^^^^^ match-without-room 91 mm … 80 mm\n`,
    );
    check(`${legs}board plank { size 2400 x 80 x 50 }\nmatch front from plank end to end\n`);
    check(
      `${legs.replace("pair {\n", "pair {\n#    ^^^^^ wood-runs-short 1 … 2 or more\n")}board plank { size 900 x 80 x 50 }\nmatch front from plank end to end\n#     ^^^^^^^^^^^^^^^^ match-without-room 863 mm … 800 mm\n`,
    );
    // Too long for it, however narrow they are: the length is told, not the width that fits.
    check(
      `${legs.replace("pair {\n", "pair {\n#    ^^^^^ part-too-big-for-boards 430 mm … 200 mm or less\n")}board plank { size 300 x 180 x 50 }\nmatch front from plank side by side\n#     ^^^^^^^^^^^^^^^^ match-without-room 430 mm … 200 mm\n`,
    );
  });

  it("a match must be of the timber of its board", () => {
    check(
      `${legs}post c { section 40 x 40; foot out 0, back 200; height 300; timber white-oak }\nboard plank { size 2400 x 180 x 50 }\nboard oak { size 2400 x 180 x 50; timber white-oak }\nmatch front, c from plank\n#     ^^^^^^^^^^^^^^^^^^^ match-without-room white-ash, white-oak … white-ash\n`,
    );
  });

  it("defects, wane and ends must leave a board", () => {
    check(`${legs}${board("  defect at 2500\n  #         ^^^^ board-not-usable\n")}`);
    check(`${legs}${board("  defect at 25 from edge 180\n  #         ^^^^^^^^^^^^^^^^ board-not-usable\n")}`);
    check(`${legs}yard y { thick 50 }\n${board("  wane 90\n  #    ^^ board-not-usable\n")}`);
  });

  it("boards of another timber, or far from the parts' moisture", () => {
    check(
      `${legs}yard y { thick 50 }\n${board("  timber white-oak\n  #      ^^^^^^^^^ board-of-other-timber white-oak … white-ash\n")}`,
    );
    check(
      `${legs}${board("  timber white-ash moisture 14%\n  #      ^^^^^^^^^ board-of-other-timber 5 % … 3 % or less\n")}`,
    );
    check(`${legs}limit board-of-other-timber to 6%\n${board("  timber white-ash moisture 14%\n")}`);
  });

  it("numbers of boards, and boards asked for twice", () => {
    check(
      `${legs}${board("  count 2\n")}match front from plank.3\n#                ^^^^^^^ board-not-there plank.3\n`,
    );
    check(
      `timber white-ash\npost a { section 40 x 40; foot out 0, back 0; height 300; sawn from one }\npost b { section 40 x 40; foot out 0, back 200; height 300 }\nboard one { size 2000 x 200 x 50 }\nboard two { size 2000 x 200 x 50 }\nmatch a, b from two\n#               ^^^ board-not-there two … one\n`,
    );
  });

  it("wood that cannot do for all the chairs", () => {
    check(`${legs}make 30\n#    ^^ wood-runs-short\n${board()}`);
    check(`${legs}make 60\n#    ^^ wood-runs-short 105 … 120 or more\n${board("  count 7\n")}`);
    check(
      `${legs.replace("height 430", "height 430\n  sawn from short\n  #         ^^^^^ wood-runs-short 1 … 2 or more")}board short { size 600 x 60 x 50 }\n${board()}`,
    );
    check(`${legs}make 30\n${board()}yard y { thick 50 }\n`);
  });
});

describe("short-grain", () => {
  const post = (kick: string, more = "") =>
    `post back pair {\n  section 36 x 36\n  foot out 175, back 452\n  height 930\n  kick ${kick} below 100 over 50\n${more}  rake 6deg above 475 over 90\n}\n`;

  it("judges a curved post as its outline is best turned in the board", () => {
    check(post("5deg"));
    check(post("9deg", "  #    ^^^^ short-grain\n"));
    check(`limit short-grain to 1:6\n${post("9deg")}`);
  });
});
