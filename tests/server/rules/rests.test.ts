import { describe, expect, it } from "vitest";
import { mend } from "../../../server/mends/mends.ts";
import { checkOf, fixed, messagesOf, studied } from "../../check.ts";

const codes = [
  "seat-not-held",
  "seat-rest-missing",
  "seat-proud-not-met",
  "rest-beyond-rail",
  "rest-cut-too-deep",
  "rest-cut-into-mortise",
];
const check = checkOf(...codes);

interface Rests {
  front?: string;
  others?: string;
  seat?: string;
  more?: string;
  section?: string;
  head?: string;
}

const stool = ({
  front,
  others = "",
  seat = "",
  more = "",
  section = "22 x 60",
  head = "",
}: Rests): string => {
  const rail = (name: string, course: string, rest: string) =>
    `rail ${name} {\n  ${course}\n  section ${section}\n  up 420\n${rest && `  ${rest}\n`}  joined plain\n}\n`;
  return `${head}joint plain {
  tenon thick 8, long 20
  shoulders top 10, bottom 6
  mitre
}
post front pair {
  section 40 x 40
  foot out 205, back 20
  height 430
}
post back pair {
  section 40 x 40
  foot out 205, back 430
  height 430
}
${rail("seat-front", "across front", front ?? others)}${rail("seat-side pair", "from front to back", others)}${rail("seat-back", "across back", others)}${more}seat drop-in {
  on seat-front, seat-side, seat-back
  thick 30
${seat && `  ${seat}\n`}}
`;
};

const strip = "strip 20 x 15 at 20";

describe("seat-not-held", () => {
  it("finds a drop-in seat that is thicker than it stands proud; strips that were tried hold it", () => {
    const text = stool({ seat: "proud 10\n#       ^^ seat-not-held 10 mm proud … 30 mm proud" });
    check(text);
    const bare = stool({ seat: "proud 10" });
    expect(messagesOf(bare, "seat-not-held")).toEqual([
      "The seat stands on nothing: it is 30 mm thick and only 10 mm of it lies above its rails, so 20 mm would have to hang between them.",
    ]);
    const study = studied(bare);
    mend(study, { resolve: (_from, path) => path, read: () => undefined });
    const [mended] = study.problems.find(({ code }) => code === "seat-not-held")!.mends!;
    expect(mended!.title).toBe("Fix strips to the rails: `strip 20 x 15 at 20`");
    const after = fixed(bare, "seat-not-held", "Fix strips to the rails: `strip 20 x 15 at 20`");
    expect(after).toBe(
      stool({ others: strip, seat: "proud 10\n  rests on strips" }).replaceAll(
        `  ${strip}\n  joined plain`,
        `  joined plain\n  ${strip}`,
      ),
    );
    expect(studied(after).chair.seat!.plane.offset).toBeCloseTo(430, 9);
  });

  it("writes the strip in the file's units, in a block on one line too", () => {
    const inches = `units in
joint plain { tenon thick 5/16, long 3/4 }
post front pair { section 1 5/8 x 1 5/8; foot out 8 1/4, back 1; height 17 }
post back pair { section 1 5/8 x 1 5/8; foot out 8 1/4, back 17; height 17 }
rail seat-front { across front; section 7/8 x 2 1/2; up 16 1/2; joined plain }
rail seat-side pair { from front to back; section 7/8 x 2 1/2; up 16 1/2; joined plain }
rail seat-back { across back; section 7/8 x 2 1/2; up 16 1/2; joined plain }
seat drop-in { on seat-front, seat-side, seat-back; thick 1 1/4; proud 1/2 }
`;
    const after = fixed(inches, "seat-not-held", "Fix strips to the rails: `strip 3/4 x 5/8 at 3/4`");
    expect(after).toContain("up 16 1/2; joined plain; strip 3/4 x 5/8 at 3/4 }");
    expect(after).toContain("proud 1/2; rests on strips }");
    expect(studied(after).problems.filter(({ code }) => codes.includes(code))).toEqual([]);
  });

  it("says nothing of a seat that lies on its rails, of a board, or of one that rests on something", () => {
    check(stool({ seat: "proud 30" }));
    check(stool({ seat: "proud 10" }).replace("seat drop-in", "seat board"));
    check(stool({ others: strip, seat: "rests on strips" }));
    check(stool({ others: "rebate 8 x 20", seat: "rests in rebates" }));
    check(stool({ others: "groove 8 x 7 at 12", seat: "rests in grooves" }));
  });
});

describe("seat-rest-missing", () => {
  it("names the rails without it in one finding", () => {
    check(stool({ front: strip, seat: "rests on strips\n#          ^^^^^^ seat-rest-missing" }));
    expect(messagesOf(stool({ front: strip, seat: "rests on strips" }), "seat-rest-missing")).toEqual([
      "The seat rests on strips, and seat-side and seat-back have none.",
    ]);
    // A rebate below, or outside, carries no seat.
    expect(
      messagesOf(
        stool({ front: "rebate 8 x 20 outside", others: "rebate 8 x 20", seat: "rests in rebates" }),
        "seat-rest-missing",
      ),
    ).toEqual(["The seat rests in rebates, and seat-front has none."]);
  });
});

describe("seat-proud-not-met", () => {
  it("tells both figures, and which the text would have to say", () => {
    check(
      stool({
        others: strip,
        seat: "rests on strips\n  cover 2\n  proud 10\n#       ^^ seat-proud-not-met 12 mm … 10 mm",
      }),
    );
    const text = stool({ others: strip, seat: "rests on strips\n  proud 8" });
    expect(messagesOf(text, "seat-proud-not-met")).toEqual([
      "The seat's top lies 10 mm above its rails, where its strips put it, and `proud` gives 8 mm.",
    ]);
    expect(fixed(text, "seat-proud-not-met", "Say proud 10 mm")).toContain("proud 10\n");
  });

  it("allows half a millimetre, or what a limit says", () => {
    check(stool({ others: strip, seat: "rests on strips\n  proud 10.4" }));
    const far = stool({ others: strip, seat: "rests on strips\n  proud 8" });
    check(`${far}limit seat-proud-not-met to 3mm\n`);
  });
});

describe("rest-beyond-rail", () => {
  it("finds what does not lie within the rail", () => {
    for (const [rest, found] of [
      ["strip 20 x 15 at 45", "65 mm of its width, and there is 60 mm"],
      ["rebate 22 x 10", "22 mm of its thickness, and there is 22 mm"],
      ["rebate 8 x 60", "60 mm of its width, and there is 60 mm"],
      ["rebate 8 x 10 from 20 to 500", "500 mm of its length, and there is 370.1 mm"],
      ["groove 8 x 7 at 55", "63 mm of its width, and there is 60 mm"],
      ["groove 8 x 10 top at 18", "26 mm of its thickness, and there is 22 mm"],
    ] as const)
      expect(messagesOf(stool({ front: rest, seat: "proud 30" }), "rest-beyond-rail"), rest).toEqual([
        `The ${rest.split(" ")[0]} of seat-front does not lie within the rail: it needs ${found}.`,
      ]);
  });

  it("finds a round rail", () => {
    const round = stool({ front: strip, seat: "proud 30" }).replace("section 22 x 60", "round 30");
    expect(messagesOf(round, "rest-beyond-rail")).toEqual([
      "The strip of seat-front needs a rail with flat faces, and seat-front is round.",
    ]);
  });
});

describe("rest-cut-too-deep", () => {
  it("finds less than a third of the thickness, or of the width, behind a cut", () => {
    check(
      stool({
        front: "rebate 16 x 10\n#        ^^^^^^^ rest-cut-too-deep 6 mm … 7.3 mm or more",
        seat: "proud 30",
      }),
    );
    expect(messagesOf(stool({ front: "rebate 8 x 45", seat: "proud 30" }), "rest-cut-too-deep")).toEqual([
      "The rebate leaves 15 mm of the width of seat-front, which is 60 mm; 20 mm or more is needed.",
    ]);
    // Two that are well alone leave too little back to back: both are told.
    expect(
      messagesOf(
        stool({ front: "groove 8 x 9 at 20\n  groove 8 x 9 outside at 24", seat: "proud 30" }),
        "rest-cut-too-deep",
      ),
    ).toEqual(
      [1, 2].map(
        () =>
          "The groove leaves 4 mm of the thickness of seat-front, which is 22 mm; 7.3 mm or more is needed.",
      ),
    );
    check(stool({ front: "groove 8 x 9 at 10\n  groove 8 x 9 outside at 30", seat: "proud 30" }));
    const deep = stool({ front: "rebate 16 x 10", seat: "proud 30" });
    check(`${deep}limit rest-cut-too-deep to 0.25\n`);
  });
});

describe("rest-cut-into-mortise", () => {
  const cross = (up: number) =>
    `rail cross {\n  from seat-front at 185 to seat-back at 185\n  section 16 x 20\n  up ${up}\n  joined stub\n}\njoint stub {\n  tenon thick 8, long 12\n  shoulders top 2, bottom 2\n}\n`;

  it("finds a cut into a mortise, and a web that is too thin beside one", () => {
    const text = (up: number) => stool({ front: "rebate 9 x 20", more: cross(up), seat: "proud 30" });
    expect(messagesOf(text(408), "rest-cut-into-mortise")).toEqual([
      "The rebate of seat-front cuts 6 mm into the mortise for the tenon of cross into seat-front.",
    ]);
    expect(messagesOf(text(400), "rest-cut-into-mortise")).toEqual([
      "Between the rebate of seat-front and the mortise for the tenon of cross into seat-front only 2 mm of wood is left; 3 mm or more is needed.",
    ]);
    check(text(398));
  });

  it("leaves a rebate alone that stops short of it", () => {
    check(stool({ front: "rebate 9 x 20 from 0 to 150", more: cross(410), seat: "proud 30" }));
  });
});

describe("a chair like another", () => {
  it("takes its rests over, and may say others", () => {
    const other = stool({ others: strip, seat: "rests on strips" });
    const files = { "other.chair": other };
    check('like "other.chair"\n', files);
    const deeper = studied('like "other.chair"\nseat drop-in {\n  thick 35\n}\n', files).chair;
    expect(deeper.seat!.plane.offset).toBeCloseTo(420 - 20 + 35, 9);
    const moved = studied('like "other.chair"\nrail seat-front {\n  strip 20 x 15 at 25\n}\n', files).chair;
    expect(moved.rails.get("seat-front")!.strips!.map(({ design }) => design.value.at)).toEqual([25]);
    expect(moved.rails.get("seat-back")!.strips!.map(({ design }) => design.value.at)).toEqual([20]);
  });
});
