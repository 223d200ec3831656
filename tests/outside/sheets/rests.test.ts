/**
 * Rebates, grooves and strips of straight, tapered, arched and bowed rails, and the seats that rest in them: cut from their sheets alone with
 * manifold-3d 3.5.4 (Apache-2.0), each is the chair's own part.
 */
import { expect, it } from "vitest";
import { studied } from "../../check.ts";
import { allowed, readSheets, straysOf } from "./proof.ts";

const text = (rests: string, front: string, rail: string, seat: string, shape = ""): string => `
joint plain { tenon thick 8, long 20; shoulders top 16, bottom 16; mitre }
post front pair { section 44 x 44; foot out 230, back 20; height 430 }
post back pair { section 36 x 36; foot out 200, back 440; height 430 }
rail seat-front { across front; section 24 x 76; up 425; face inset 3; ${shape}; ${front}; joined plain }
rail seat-side pair { from front to back; section 24 x 76; up 425; face inset 3; ${rail}; joined plain }
rail seat-back { across back; section 24 x 76; up 425; face inset 3; ${rail}; joined plain }
seat drop-in { on seat-front, seat-side, seat-back; thick 30; ${rests}; ${seat} }
`;

const strip = "strip 20 x 18 at 22";
const rebate = "rebate 10 x 24";
const groove = "groove 10 x 7 at 12";

it.each([
  ["strips", text("rests on strips", strip, strip, "gap 1.5; cover 2")],
  ["strips, bowed in front", text("rests on strips", strip, strip, "gap 1.5", "bow 25 front")],
  ["strips, arched in front", text("rests on strips", strip, strip, "", "arch 14 below")],
  ["rebates", text("rests in rebates", rebate, rebate, "cover 1.5")],
  ["rebates, bowed in front", text("rests in rebates", rebate, rebate, "", "bow 25 front")],
  ["rebates, tapered in front", text("rests in rebates", rebate, rebate, "", "taper 30 x 76 to ends")],
  ["a stopped rebate", text("rests in rebates", "rebate 10 x 24 from 40 to 300", rebate, "")],
  [
    "rebates below",
    text("rests in rebates", `${rebate}; rebate 6 x 8 outside bottom`, rebate, "", "arch 14 below"),
  ],
  ["grooves", text("rests in grooves", groove, groove, "")],
  ["grooves, bowed in front", text("rests in grooves", groove, groove, "", "bow 25 front")],
  [
    "grooves in an edge",
    text("rests in grooves", `${groove}; groove 6 x 9 top at 5; groove 5 x 6 bottom at 12`, groove, ""),
  ],
])("%s are on the sheets", { timeout: 120_000 }, (_, chairText) => {
  const { chair, problems } = studied(chairText);
  expect(problems.filter(({ severity }) => severity === "error")).toEqual([]);
  const sheets = readSheets(chair);
  const strays = straysOf(chair, sheets);
  expect(strays.map(({ part }) => part)).toContain("seat-front");
  expect(strays.filter(({ proud, missing }) => Math.max(proud, missing) > allowed(sheets))).toEqual([]);
});
