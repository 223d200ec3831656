/**
 * What stands on a solid seat, cut from its sheet alone with manifold-3d 3.5.4 (Apache-2.0): a level rail's mortise in a turned post that leans
 * is askew on it; a hollow that is open in front runs out through a bevel above.
 */
import { expect, it } from "vitest";
import { studied } from "../../check.ts";
import { allowed, farthestOut, readSheets, straysOf } from "./proof.ts";

const text = (seat: string) => `
joint leg-socket { round 28 to 22; through }
joint post-socket { round 18, long 22 }
joint rail-tenon { tenon thick 7, long 14; shoulders top 6, bottom 6 }
seat solid { up 427; fall 2; thick 52; deep 371; wide 378 at 12; wide 408 at 150; wide 358 at 267; wide 268 at 326; corner 30; ${seat} }
post front-leg pair { into seat at out 130, back 85; lean 11deg, sight-line 130deg; round 44; joined leg-socket }
post back-leg pair { into seat at out 122, back 262; lean 14deg, sight-line 40deg; round 44; joined leg-socket }
post back-post pair { stand on seat at out 100, back 293; rake 7deg top back; height 946; round 30; shape at top round 24; joined post-socket }
rail upper { across back-post; section 18 x 55; up 896; joined rail-tenon }
`;

it("a seat with a bevel above and what stands on it are on the sheets", { timeout: 120_000 }, () => {
  const { chair, problems } = studied(text("bevel 18 x 10 above"));
  expect(problems.filter(({ severity }) => severity === "error")).toEqual([]);
  const sheets = readSheets(chair);
  const post = sheets.parts.find(({ name }) => name === "back-post.left");
  const mortise = post?.marks.find(({ kind }) => kind === "mortise");
  // Plumb tenons in posts that lean by 7° to the floor, by their own shadow from the side.
  expect(mortise?.figures["turns onward round"]?.value).toBeCloseTo(7, 0);
  const named = ["back-post.left", "upper", "seat"];
  const parts = sheets.parts.filter(({ name }) => named.includes(name));
  const strays = straysOf(chair, { ...sheets, parts });
  expect(strays.map(({ part }) => part).sort()).toEqual([...named].sort());
  expect(strays.filter((stray) => farthestOut(stray) > allowed(sheets))).toEqual([]);
});

it("a hollow that is open in front has no wood left in it where a bevel above is cut through it", () => {
  const { chair } = studied(text("hollow 15 over 95 open front, rim 58; bevel 18 x 10 above"));
  const points = chair.seat!.body.pieces.flatMap(({ points }) => points);
  // In front the bevel falls by 10 in 18: nothing stands above it.
  const front = points.filter(([x, y]) => Math.abs(x) < 100 && y > 2 && y < 10);
  expect(front.length).toBeGreaterThan(3);
  const highest = Math.max(...front.map(([, y, z]) => z - (427 - 10 + (y * 10) / 18)));
  expect(highest).toBeLessThan(0.5);
});
