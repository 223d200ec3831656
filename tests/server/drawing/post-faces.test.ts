import { describe, expect, it } from "vitest";
import { printLength } from "../../../server/design/units.ts";
import { type PostFace, postFaces } from "../../../server/drawing/post-faces.ts";
import { aboutPost } from "../../../server/editor/about/about-post.ts";
import { pieceOf } from "../../../server/joinery/pieces/pieces.ts";
import { studied } from "../../check.ts";
import { read } from "../../house/project-files.ts";
import { frame } from "../../plain-frame.ts";

const chairOf = (joint: string) => studied(frame({ joint })).chair;
const shown = (joint: string, post = "front.left") => {
  const found = postFaces(chairOf(joint), post);
  if (!found) throw new Error("no faces");
  return found;
};
const face = (faces: PostFace[], caption: string) => faces.find((each) => each.caption === caption)!;
const span = (some: PostFace["strokes"], axis: 0 | 1) => {
  const values = some.flatMap(({ points }) => points.map((point) => point[axis]));
  return Math.max(...values) - Math.min(...values);
};

describe("a post from each of its faces", () => {
  const { faces } = shown("tenon thick 8, long 21");

  it("is 430 long and 40 wide on each", () => {
    expect(faces.map(({ caption }) => caption)).toEqual(["front", "outside", "back", "inside"]);
    for (const { strokes } of faces) {
      const edges = strokes.filter(({ is }) => is === "edge");
      expect(span(edges, 0)).toBeCloseTo(430, 6);
      expect(span(edges, 1)).toBeCloseTo(40, 6);
    }
  });

  it("has the front rail's mouth inside, the side rail's at the back, and both dashed on the others", () => {
    const mouths = faces.map(({ caption, strokes }) => [
      caption,
      strokes.filter(({ is }) => is === "mouth").length,
    ]);
    expect(Object.fromEntries(mouths)).toEqual({ front: 0, outside: 0, back: 1, inside: 1 });
    for (const { strokes } of faces) {
      const cuts = strokes.filter(({ is }) => is === "mouth" || is === "hidden");
      expect(cuts).toHaveLength(2);
    }
    const [mouth] = face(faces, "inside").strokes.filter(({ is }) => is === "mouth");
    // 8 thick, and 60 − 10 − 6 high, from 420 − 10 − 44 up.
    expect(span([mouth!], 1)).toBeCloseTo(8, 6);
    expect(span([mouth!], 0)).toBeCloseTo(44, 6);
    expect(face(faces, "inside").mouths.map(({ part, label }) => [part, label])).toEqual([
      ["seat-front", "366 – 410 mm"],
    ]);
  });

  it("shows both of twin mortises, and pegs on the faces they go through", () => {
    const twin = shown("tenon thick 8, long 21\ntwin gap 12\npeg 5 setback 9").faces;
    expect(face(twin, "inside").strokes.filter(({ is }) => is === "mouth")).toHaveLength(2);
    // The pegs of the front rail run fore and aft, those of the side rail across.
    expect(face(twin, "front").strokes.filter(({ is }) => is === "peg")).toHaveLength(2);
    expect(face(twin, "outside").strokes.filter(({ is }) => is === "peg")).toHaveLength(2);
  });

  it("shows a through tenon's mortise on the far face too", () => {
    const through = shown("tenon thick 8, long 21\nthrough").faces;
    expect(face(through, "outside").strokes.filter(({ is }) => is === "mouth")).toHaveLength(1);
  });

  it("tells how long it is over all, and its section where it begins, changes and ends", () => {
    const { overall, sections } = shown("tenon thick 8, long 21");
    expect(overall.label).toBe("430 mm");
    expect(sections).toEqual([{ at: expect.closeTo(215, 6), label: "40 × 40 mm" }]);
    const { chair } = studied(read("samples/boathouse-mess-chair.chair"));
    // Tapered from 250 up to 30 at the foot; as the text has it.
    const front = postFaces(chair, "front.left")!.sections.map(({ label }) => label);
    expect(front[0]).toBe("30 × 30 mm");
    expect(front.at(-1)).toBe("40 × 40 mm");
    const back = postFaces(chair, "back.left")!.sections.map(({ label }) => label);
    expect(back[0]).toBe("36 × 36 mm");
    expect(back.at(-1)).toBe("28 × 26 mm");
  });

  it("shows a post's own tenon, as long over all as its sheet and its hover say", () => {
    const files = Object.fromEntries(
      ["boathouse-joints", "mess-armchair"].map((file) => [`${file}.chair`, read(`samples/${file}.chair`)]),
    );
    const { chair } = studied(files["mess-armchair.chair"]!, files);
    const post = chair.posts.get("front.left")!;
    const cut = pieceOf(chair, post).size.long;
    expect(cut).toBeGreaterThan(post.length + 15);
    for (const { strokes } of postFaces(chair, "front.left")!.faces)
      expect(
        Math.abs(
          span(
            strokes.filter(({ is }) => is === "edge"),
            0,
          ) - cut,
        ),
      ).toBeLessThan(0.5);
    expect(postFaces(chair, "front.left")!.overall.label).toBe(printLength(cut, "mm"));
    expect(aboutPost(chair, post, "mm")[0]).toBe(
      `Length ${printLength(post.length, "mm")} along its line, foot to top; ${printLength(cut, "mm")} cut, with its own tenon`,
    );
  });

  it("is nothing for a rail", () => {
    expect(postFaces(chairOf("tenon thick 8, long 21"), "seat-front")).toBeUndefined();
  });
});
