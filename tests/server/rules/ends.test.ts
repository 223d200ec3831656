import { describe, expect, it } from "vitest";
import { checkOf, messagesOf, studied } from "../../check.ts";
import { frame } from "../../plain-frame.ts";

const check = checkOf(
  "end-reaches-nothing",
  "rail-misses-post",
  "shoulder-on-curve",
  "shoulder-over-knee",
  "rail-winds",
);

const high = (up: string) => `rail high {\n  across back\n  section 20 x 40\n  up ${up}\n  joined plain\n}\n`;
const wide = (section: string) =>
  `rail wide {\n  across back\n  section ${section}\n  up 200\n  joined plain\n}\n`;

describe("end-reaches-nothing", () => {
  it("finds a rail above its posts and says by how much", () => {
    check(frame({ more: high("520\n  #  ^^^ end-reaches-nothing 50 mm short … touching") }));
    expect(messagesOf(frame({ more: high("520") }), "end-reaches-nothing")).toEqual([
      "The rail high reaches nothing at its end towards back: there are 50 mm between them; move it, or make back longer by at least that.",
    ]);
  });

  it("says nothing of one that reaches, and can be accepted", () => {
    check(frame({ more: high("300") }));
    check(
      frame({
        more: `${high("520")}accept end-reaches-nothing on high because "posts are still to be spliced"\n`,
      }),
    );
  });
});

describe("rail-misses-post", () => {
  it("stands on the height of a rail that reaches over its post, whatever else places it", () => {
    const text = frame({ more: high("460\n  face inset 3") });
    const [found] = studied(text).problems.filter(({ code }) => code === "rail-misses-post");
    expect(text.slice(found?.start, found?.end)).toBe("460");
  });

  it("finds a rail wider than the face it meets", () => {
    check(
      frame({
        more: wide("52 x 40").replace(
          "up 200",
          "up 200\n  #  ^^^ rail-misses-post 6 mm off … on the face of back",
        ),
      }),
    );
    expect(messagesOf(frame({ more: wide("52 x 40") }), "rail-misses-post")).toEqual([
      "The rail wide runs 6 mm past the outside edge of the face of back that it meets.",
    ]);
  });

  it("stands on what sets the rail over, when that is the cause", () => {
    const set = wide("20 x 40").replace(
      "  up 200",
      "  up 200\n  face inset 28\n  #    ^^^^^^^^ rail-misses-post 8 mm off … on the face of back",
    );
    const text = frame({ more: set });
    expect(messagesOf(text.replace(/ {2}# .*\n/, ""), "rail-misses-post")).toHaveLength(1);
  });

  it("says nothing of one that fits, and can be accepted", () => {
    check(frame({ more: wide("24 x 40") }));
    check(
      frame({
        more: `${wide("52 x 40")}accept rail-misses-post on wide because "planed to the post after gluing"\n`,
      }),
    );
  });
});

describe("shoulder-on-curve", () => {
  const back = "section 40 x 40\nfoot out 200, back 420\nheight 440\nrake 2deg above 400 over 60";

  it("finds a shoulder on a fair curve and names the curve", () => {
    expect(messagesOf(frame({ back }), "shoulder-on-curve")).toEqual([
      "The shoulder and the mortise of seat-side fall on the curve of back, between 370 mm and 430 mm up.",
    ]);
  });

  it("says nothing of rails clear of the curve: the heights it names are right", () => {
    const moved = (up: string) =>
      frame({ back: back.replace("440", "520") }).replaceAll("up 420", `up ${up}`);
    check(moved("369mm"));
    // The tenon begins 10 below the rail's top: at 371 it lies under the curve, and the shoulder's top alone is on it.
    expect(messagesOf(moved("371mm"), "shoulder-on-curve")[0]).toMatch(/^The shoulder of seat-side falls on/);
    expect(messagesOf(moved("489mm"), "shoulder-on-curve")).toHaveLength(1);
    expect(messagesOf(moved("491mm"), "shoulder-on-curve")).toEqual([]);
  });

  it("can be accepted on one joint", () => {
    check(frame({ back, more: 'accept shoulder-on-curve on seat-side to back because "scribed by hand"\n' }));
  });
});

describe("shoulder-over-knee", () => {
  const back = "section 40 x 40\nfoot out 200, back 420\nheight 440\nrake 2deg above 400";

  it("finds a shoulder over a sharp knee", () => {
    expect(messagesOf(frame({ back }), "shoulder-over-knee")).toEqual([
      "The shoulder of seat-side lies over the knee of back at 400 mm up, where its face turns by 2°.",
    ]);
  });

  it("counts where a taper begins, and says nothing clear of it", () => {
    const tapered = "section 40 x 40\nfoot out 200, back 20\nheight 430\ntaper 28 x 28 from 400 to foot";
    expect(messagesOf(frame({ front: tapered }), "shoulder-over-knee")).toHaveLength(2);
    check(frame({ front: tapered.replace("from 400", "from 360") }));
  });

  it("can be accepted", () => {
    check(frame({ back, more: 'accept shoulder-over-knee on back because "the gap is under the seat"\n' }));
  });
});

describe("rail-winds", () => {
  const splayed = "section 40 x 40\nfoot out 215, back 20\nheight 430\nsplay 2deg";
  const low =
    "rail low pair {\n  from front to back\n  section 18 x 40\n  up 200\n  stand with posts\n  joined plain\n}\n";

  it("finds a rail whose posts lean differently", () => {
    check(
      frame({
        front: splayed,
        more: low.replace("rail low pair {", "rail low pair {\n#    ^^^ rail-winds 2° … 1° or less"),
      }),
    );
    expect(messagesOf(frame({ front: splayed, more: low }), "rail-winds")).toEqual([
      "The rail low stands with its posts, which lean 2° differently at its two ends; 1° or less is allowed.",
    ]);
  });

  it("says nothing when it stands plumb or the posts lean alike", () => {
    check(frame({ front: splayed, more: low.replace("  stand with posts\n", "") }));
    check(frame({ front: splayed, back: splayed.replace("back 20", "back 420"), more: low }));
  });

  it("takes a limit either way, and can be accepted", () => {
    check(frame({ front: splayed, more: `${low}limit rail-winds to 2.5deg\n` }));
    expect(
      messagesOf(
        frame({ front: splayed.replace("2deg", "0.8deg"), more: `${low}limit rail-winds to 0.5deg\n` }),
        "rail-winds",
      ),
    ).toHaveLength(1);
    check(frame({ front: splayed, more: `${low}accept rail-winds on low because "green wood, it gives"\n` }));
  });
});
