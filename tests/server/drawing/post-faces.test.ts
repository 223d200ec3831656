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
  const { faces, width, height } = shown("tenon thick 8, long 21");

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
    expect(face(faces, "inside").words.map(({ text }) => text)).toEqual(["366 – 410 mm"]);
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

  it("keeps all within its bounds, no words on others", () => {
    for (const name of [
      "ladder-back",
      "boathouse-mess-chair",
      "landing-bench",
      "joined-stool",
      "mess-armchair",
    ]) {
      const files = Object.fromEntries(
        ["boathouse-joints", name].map((file) => [`${file}.chair`, read(`samples/${file}.chair`)]),
      );
      const { chair } = studied(files[`${name}.chair`]!, files);
      for (const post of chair.posts.keys()) {
        const drawn = postFaces(chair, post)!;
        for (const { strokes, words } of drawn.faces) {
          for (const [x, y] of [...strokes.flatMap(({ points }) => points), ...words.map(({ at }) => at)]) {
            expect(x).toBeGreaterThan(0);
            expect(x).toBeLessThan(drawn.width);
            expect(y).toBeGreaterThan(0);
            expect(y).toBeLessThan(drawn.height);
          }
          for (const [k, one] of words.entries())
            for (const other of words.slice(k + 1))
              expect(
                Math.abs(one.at[1] - other.at[1]) > drawn.words ||
                  Math.abs(one.at[0] - other.at[0]) >
                    0.25 * drawn.words * (one.text.length + other.text.length),
                `${post}: ${one.text}, ${other.text}`,
              ).toBe(true);
        }
      }
    }
    expect(width).toBeGreaterThan(430);
    expect(height).toBeGreaterThan(4 * 40);
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
    // As much room is left beyond it as beyond a post that ends in no tenon.
    const beyond = (name: string) => {
      const drawn = postFaces(chair, name)!;
      return (
        drawn.width -
        Math.max(
          ...drawn.faces.flatMap(({ strokes }) => strokes.flatMap(({ points }) => points.map(([x]) => x))),
        )
      );
    };
    const plain = shown("tenon thick 8, long 21");
    const reach = plain.faces.flatMap(({ strokes }) =>
      strokes.flatMap(({ points }) => points.map(([x]) => x)),
    );
    expect(beyond("front.left")).toBeCloseTo(plain.width - Math.max(...reach), 6);
    expect(aboutPost(chair, post, "mm")[0]).toBe(
      `Length ${printLength(post.length, "mm")} along its line, foot to top; ${printLength(cut, "mm")} cut, with its own tenon`,
    );
  });

  it("is nothing for a rail", () => {
    expect(postFaces(chairOf("tenon thick 8, long 21"), "seat-front")).toBeUndefined();
  });
});
