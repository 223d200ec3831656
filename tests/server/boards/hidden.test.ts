/**
 * Defects under hidden faces, from the text to the plan.
 */
import { expect, test } from "vitest";
import { stockList, wholePlan } from "../../../server/boards/plan.ts";
import { studied } from "../../check.ts";

const chair = ({ leg = "", rail = "", boards = "" }) => `units mm
timber white-ash
post front pair {
  section 40 x 40
  foot out 200, back 20
  height 430
${leg}}
post back pair {
  section 40 x 40
  foot out 200, back 400
  height 430
}
rail seat-side pair {
  from front to back
  section 22 x 70
  up 400
  joined j
${rail}}
joint j {
  tenon thick 7, long 25
}
${boards}
yard rest {
  thick 50
}
`;

const planned = (text: string) => {
  const { chair: built } = studied(text);
  return wholePlan(stockList(built), built.design.matches, 2);
};

/** Pieces of a part that lie on a board to hand, with what lies hidden in them. */
const onHand = (text: string, part: string) =>
  planned(text)
    .boards.filter(({ board }) => board.from === "hand")
    .flatMap(({ pieces }) => pieces.filter((piece) => piece.part === part))
    .map(({ under = [] }) =>
      under.map(({ what, face, deepest, firstEnd }) => [what, face, deepest, firstEnd]),
    );

// Room for one leg's length, and two side by side, with a knot across the middle cut.
const knotty = `board plank {
  size 540 x 95 x 50
  defect at 200 long 40 from edge 38 wide 17 "knot"
}`;

test("a knot stays under the hidden faces of two legs that meet it with less than half", () => {
  expect(onHand(chair({ boards: knotty }), "front")).toHaveLength(0);
  expect(onHand(chair({ leg: "  hidden inside\n", boards: knotty }), "front")).toEqual([
    [["knot", "inside", undefined, "foot"]],
    [["knot", "inside", undefined, "foot"]],
  ]);
});

test("never where the part has a joint, and not past its middle", () => {
  const atJoint = knotty.replace("at 200", "at 410");
  expect(onHand(chair({ leg: "  hidden inside\n", boards: atJoint }), "front")).toHaveLength(0);
  const wide = `board plank { size 540 x 48 x 50; defect at 200 long 40 from edge 0 wide 30 "knot" }`;
  expect(onHand(chair({ leg: "  hidden inside\n", boards: wide }), "front")).toHaveLength(0);
  const narrow = wide.replace("wide 30", "wide 20");
  expect(onHand(chair({ leg: "  hidden inside\n", boards: narrow }), "front")).toHaveLength(1);
});

test("under a face that lies flat the plan asks to look how deep the knot goes", () => {
  const boards = `board plank { size 560 x 80 x 30; defect at 200 long 30 from edge 30 wide 20 "pin knot" }`;
  expect(onHand(chair({ boards }), "seat-side")).toHaveLength(0);
  expect(onHand(chair({ rail: "  hidden inside\n", boards }), "seat-side")).toEqual([
    [["pin knot", "inside", 11, "front end"]],
  ]);
  expect(onHand(chair({ rail: "  hidden bottom\n", boards }), "seat-side")).toHaveLength(0);
});
