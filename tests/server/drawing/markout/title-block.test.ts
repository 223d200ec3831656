/**
 * What every sheet bears: its day, the version of its text, blanks to be filled in; and what is printed from the file beside the figures.
 */
import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import { orderOfWork } from "../../../../server/drawing/markout/order-of-work.ts";
import { type MarkoutOptions, markoutPages, piecesAsked } from "../../../../server/drawing/markout/pages.ts";
import { remembering, versionOf } from "../../../../server/main/markout/version-of.ts";
import { sampleChair } from "../chairs.ts";

const chair = sampleChair("boathouse-mess-chair");
const words = (options: Partial<MarkoutOptions>): string[] =>
  markoutPages(chair, { paper: "a4", part: "seat-front", ...options }).flatMap(({ items }) =>
    items.flatMap((item) => (item.is === "words" ? [item.text] : [])),
  );

describe("a title block", () => {
  it("has the last note's day, or the one that is given", () => {
    expect(words({})).toContain("2026-04-02");
    expect(words({ day: "2027-01-02" })).toContain("2027-01-02");
    expect(words({ dayUnlessNoted: "2027-01-02" })).not.toContain("2027-01-02");
    const unnoted = { ...chair, design: { ...chair.design, notes: [] } };
    const [page] = markoutPages(unnoted, { paper: "a4", part: "crest", dayUnlessNoted: "2027-01-02" });
    expect(JSON.stringify(page!.items)).toContain("2027-01-02");
  });

  it("has the fields of ISO 7200, those of people blank", () => {
    const texts = words({ text: "0a1b2c3d" });
    for (const text of [
      "Boathouse mess chair",
      "seat-front",
      "Date",
      "0a1b2c3d",
      "Owner",
      "Drawn by",
      "Approved",
    ])
      expect(texts).toContain(text);
  });

  it("warns of machines and of a first chair", () => {
    expect(words({}).join(" ")).toContain("Machines hurt: keep their guards on.");
  });
});

describe("the version of a text", () => {
  it("is the beginning of its SHA-256, as Node's own crypto has it", async () => {
    const text = 'chair "Stool — Ø"\n';
    expect(await versionOf([text])).toBe(createHash("sha256").update(text).digest("hex").slice(0, 8));
    expect(await versionOf([text, "b"])).toBe(
      createHash("sha256").update(`${text}b`).digest("hex").slice(0, 8),
    );
  });

  it("counts each file that was read once, in the order they were asked for", () => {
    const { files, texts } = remembering({
      resolve: (_, path) => path,
      read: (address) => (address === "none" ? undefined : `text of ${address}`),
    });
    for (const address of ["b", "none", "a", "b"]) files.read(address);
    expect(texts()).toEqual(["text of b", "text of a"]);
  });
});

describe("a part's sheet", () => {
  it("has what stands over it in the file, its moisture and its order of work", () => {
    const texts = words({ part: "front" }).join(" ");
    expect(texts).toContain("From the file: Tapered to the foot so that they look light.");
    expect(texts).toContain("white ash at 9 % moisture");
  });

  it("puts a taper after the mortises that it would spoil, and a saw before what is marked on its cut", () => {
    const of = (name: string) => orderOfWork(piecesAsked(chair, name)[0]!);
    expect(of("front")).toMatch(
      /plane square; .*mortise B, C; taper; mortise A, whose figures run from the tapered faces/,
    );
    expect(of("back")).toMatch(/saw and plane to the outline by its template; mark out.*; mortise/);
    expect(of("seat-front")).toMatch(/saw the shoulders and cut the tenons; saw the arch; .*fix the strip/);
  });

  it("bores a solid seat while its edges are square, then hollows, saws and bevels it", () => {
    expect(orderOfWork(piecesAsked(sampleChair("slip-chair"), "seat")[0]!)).toMatch(
      /while the edges are square; bore them; hollow the top by its contours; saw the outline; bevel the edges\.$/,
    );
  });
});
