import { describe, expect, test } from "vitest";
import { workedValue } from "../../../server/chair/values/values.ts";
import { chairOf, DEGREES, value } from "./from-text.ts";

const chairText = ({
  seat = "seat drop-in {\n  on seat-front, seat-side, seat-back\n  thick 40\n  proud 12\n  sag 15\n}",
  more = "",
  frontUp = 428,
  backUp = 428,
  crest = "",
  front = "",
}) => `
units mm
post front pair {
  section 40 x 40
  foot out 205, back 20
  height 428
}
post back pair {
  section 36 x 36
  foot out 175, back 452
  height 930
  rake 8deg above 475
}
rail seat-front {
  across front
  section 20 x 60
  up ${frontUp}
  face flush
  ${front}
}
rail seat-side pair {
  from front to back
  section 20 x 60
  up 428
  face flush
}
rail seat-back {
  across back
  section 20 x 60
  up ${backUp}
  face flush
}
rail back-lower {
  across back
  section 18 x 45
  up 600
  stand with posts
}
rail crest {
  across back
  section 18 x 90
  up 920
  stand with posts
  ${crest}
}
${seat}
${more}
`;

describe("the seat", () => {
  test("a drop-in seat reaches to the middle of its rails", () => {
    const chair = chairOf(chairText({}));
    // Front rail's outside face at 0, so its middle is 10 back; the back rail's outside at 470, its middle at 460.
    expect(value(chair, "seat.depth")).toBeCloseTo(450, 9);
    expect(value(chair, "seat.height")).toBeCloseTo(440, 9);
    expect(value(chair, "seat.loaded-height")).toBeCloseTo(425, 9);
    expect(value(chair, "seat.slope")).toBeCloseTo(0, 9);
  });

  test("a board lies on the rails and hangs over them", () => {
    const seat =
      "seat board {\n  on seat-front, seat-side, seat-back\n  thick 20\n  overhang out 10, front 15, back 5\n}";
    const chair = chairOf(chairText({ seat }));
    // As proud as it is thick; from 0 − 15 to 470 + 5.
    expect(value(chair, "seat.height")).toBeCloseTo(448, 9);
    expect(value(chair, "seat.depth")).toBeCloseTo(490, 9);
    // The side rails' outside faces run from (225, 40) to (193, 434), the arrises at the shoulders flush with the posts; moved out 10.
    const lean = (225 - 193) / (434 - 40);
    const out = (y: number) => 225 - lean * (y - 40) + 10 * Math.hypot(1, lean);
    expect(value(chair, "seat.front-width")).toBeCloseTo(2 * out(-15), 6);
    expect(value(chair, "seat.back-width")).toBeCloseTo(2 * out(475), 6);
  });

  test("slopes with its rails, positive when it falls to the back", () => {
    const chair = chairOf(chairText({ backUp: 413 }));
    // The middles of the tops are 450 apart and 15 down.
    expect(value(chair, "seat.slope")).toBeCloseTo(Math.atan(15 / 450) * DEGREES, 9);
  });

  test("falls to the back when the back feet are trimmed", () => {
    const chair = chairOf(chairText({ more: "trim back 10" }));
    const slope = Math.atan(10 / 432);
    expect(value(chair, "seat.slope")).toBeCloseTo(slope * DEGREES, 9);
    // Its front edge is at y = 10, 440 up; the chair turns about the front feet at y = 20.
    expect(value(chair, "seat.height")).toBeCloseTo(440 * Math.cos(slope) + 10 * Math.sin(slope), 9);
  });

  test("follows a bowed front rail", () => {
    const chair = chairOf(chairText({ front: "bow 12 front" }));
    // The middle of the rail's thickness rises with it, by 12 at the middle and less at the ends.
    expect(value(chair, "seat.depth")).toBeCloseTo(462, 0);
    expect(chair.seat!.outline.length).toBeGreaterThan(4);
    const area = chair.seat!.outline.reduce((sum, [x, y], k, all) => {
      const [u, v] = all[(k + 1) % all.length]!;
      return sum + (x * v - u * y) / 2;
    }, 0);
    expect(area).toBeGreaterThan(0);
  });

  test("is cut out round the posts", () => {
    const chair = chairOf(chairText({}));
    for (const piece of chair.seat!.body.pieces) {
      for (const post of chair.posts.values()) {
        for (const [x, y, z] of piece.points) {
          const inPost = Math.abs(x - post.foot[0]) < 17.9 && Math.abs(y - post.foot[1]) < 17.9 && z < 428;
          expect(inPost).toBe(false);
        }
      }
    }
  });
});

describe("the back", () => {
  test("leans as the straight through the middles of its members' faces", () => {
    const chair = chairOf(chairText({}));
    // Both rails lean with posts that lean by 8° all the way between them.
    expect(value(chair, "backrest.rake")).toBeCloseTo(8, 9);
  });

  test("from square to the seat, whatever the seat does", () => {
    const level = chairOf(chairText({}));
    const sloped = chairOf(chairText({ backUp: 413 }));
    const fall = Math.atan(15 / 450) * DEGREES;
    // A seat that falls to the back closes the angle to a back that stays where it was.
    expect(value(sloped, "backrest.rake")).toBeCloseTo(value(level, "backrest.rake") - fall, 9);
    const trimmed = chairOf(chairText({ more: "trim back 10" }));
    expect(value(trimmed, "backrest.rake")).toBeCloseTo(8, 9);
  });

  test("a bow takes the crest's face back", () => {
    const straight = chairOf(chairText({}));
    const bowed = chairOf(chairText({ crest: "bow 20 back" }));
    // The middles of the faces are 320 − 22.5 apart going up by the posts' line, less what their half widths differ: 297.5 along it.
    const apart = (320 - ((90 - 45) / 2) * Math.cos(8 / DEGREES)) / Math.cos(8 / DEGREES);
    const lean = value(bowed, "backrest.rake") - value(straight, "backrest.rake");
    expect(lean).toBeCloseTo(Math.atan(20 / apart) * DEGREES, 0);
  });

  test("its top is the top of its highest member", () => {
    const chair = chairOf(chairText({}));
    // The outside top arris is set at 920 as drawn; the front one is 18 sin 8° higher.
    expect(value(chair, "backrest.top")).toBeCloseTo(920 + 18 * Math.sin(8 / DEGREES), 6);
  });
});

describe("declared angles", () => {
  const angle = (between: string, more = "") =>
    value(chairOf(chairText({ more: `angle wanted {\n  between ${between}\n}\n${more}` })), "wanted");

  test("a post and the seat or floor: the lean from square, away from the sitter", () => {
    expect(angle("seat, back above 475")).toBeCloseTo(8, 9);
    expect(angle("back above 475, floor")).toBeCloseTo(8, 9);
    expect(angle("back below 475, floor")).toBeCloseTo(0, 9);
    expect(angle("floor, back above 475", "trim back 10")).toBeCloseTo(8 + Math.atan(10 / 432) * DEGREES, 9);
    // From 475 to 930 at 8°, the whole from 0: atan((455 tan 8°) / 930).
    expect(angle("floor, back")).toBeCloseTo(Math.atan((455 * Math.tan(8 / DEGREES)) / 930) * DEGREES, 9);
  });

  test("two surfaces: how far the first falls back against the second", () => {
    expect(angle("seat, floor", "trim back 10")).toBeCloseTo(Math.atan(10 / 432) * DEGREES, 9);
  });

  test("a rail and a surface: positive falling back", () => {
    expect(angle("floor, seat-side", "trim back 10")).toBeGreaterThan(1);
    expect(angle("floor, seat-front")).toBeCloseTo(0, 9);
  });

  test("a rail and a post it enters: the angle it makes running away from it", () => {
    const inward = Math.atan((225 - 193) / (434 - 40));
    expect(angle("seat-side, back below 475")).toBeCloseTo(90, 9);
    // Seen from above, side and front rail open to more than a right angle where the chair narrows to the back.
    expect(angle("seat-side, seat-front seen from above")).toBeCloseTo(90 - inward * DEGREES, 6);
  });
});

describe("names", () => {
  const chair = chairOf(chairText({}));

  test("a right-hand twin has the left one's value, and a pair needs no side", () => {
    expect(chair.values.has("seat-side.right.length")).toBe(false);
    expect(workedValue(chair, "seat-side.right.length")?.number).toBe(value(chair, "seat-side.left.length"));
    expect(workedValue(chair, "seat-side.length")?.name).toBe("seat-side.left.length");
    expect(workedValue(chair, "seat-front.right.edge-bevel")?.name).toBe("seat-front.left.edge-bevel");
    expect(workedValue(chair, "seat-side.sideways")).toBeUndefined();
  });

  test("one that differs is listed", () => {
    const uneven = chairOf(chairText({ more: "trim back.left 3" }));
    expect(value(uneven, "back.right.length") - value(uneven, "back.left.length")).toBeCloseTo(3, 9);
  });

  test("each says what it means", () => {
    for (const worked of chair.values.values()) expect(worked.meaning).not.toBe("");
  });
});
