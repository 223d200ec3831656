import { describe, expect, it } from "vitest";
import { checkOf, fixed, messagesOf } from "../../check.ts";
import { frame } from "../../plain-frame.ts";
import { samples } from "../../proofs/mended-texts.ts";
import { plainView } from "../editor/view.ts";

const check = checkOf(
  "requirement-not-met",
  "requirement-not-judged",
  "unknown-rule",
  "limit-does-not-fit",
  "accept-without-reason",
  "accept-accepts-nothing",
  "tenon-too-thin",
  "tenon-too-long",
  "shadows-word",
  "unknown-name",
);

describe("requirement-not-met", () => {
  it("finds a value outside its bound, as the chair stands", () => {
    check(
      frame({
        more: "require seat.height >= 450\n#       ^^^^^^^^^^^ requirement-not-met 440 mm … at least 450 mm\n",
      }),
    );
    check(
      frame({
        more: "trim front, back 5\nrequire seat.height >= 440\n#       ^^^^^^^^^^^ requirement-not-met 435 mm … at least 440 mm\n",
      }),
    );
    expect(
      messagesOf(frame({ more: "require seat.slope from 1deg to 4deg\n" }), "requirement-not-met"),
    ).toEqual(["seat.slope is 0°, and must be from 1° to 4°."]);
  });

  it("takes strict bounds, equality and sums", () => {
    check(frame({ more: "require seat.height < 440\n#       ^^^^^^^^^^^ requirement-not-met\n" }));
    check(frame({ more: "require seat.height = 440\n" }));
    check(
      frame({
        more: "require seat-front.length + 20 <= 370\n#       ^^^^^^^^^^^^^^^^^^^^^^ requirement-not-met 380 mm … at most 370 mm\n",
      }),
    );
  });

  it("stands where the other file is named, when the promise is that file's", () => {
    const other = frame({ more: "require seat.height >= 450\n" });
    check('like "other.chair"\n#    ^^^^^^^^^^^^^ requirement-not-met\n', { "other.chair": other });
    check('like "other.chair"\nrequire seat.height >= 430\n', { "other.chair": other });
  });

  it("can be accepted", () => {
    check(
      frame({
        more: 'require seat.height >= 450\naccept requirement-not-met on seat.height because "a cushion comes on it"\n',
      }),
    );
  });
});

describe("requirement-not-judged", () => {
  it("says of a margin without an end that nothing lifts the chair that way", () => {
    const armchair = samples["mess-armchair.chair"]!.replace(
      "units mm",
      "units mm\nrequire tip.side-margin >= 2",
    );
    const { study } = plainView(armchair, "file:///samples/chair.chair", { ...samples });
    const found = study.problems.find(({ code }) => code === "requirement-not-judged");
    expect(found?.message).toContain("nothing lifts the chair that way");
  });

  it("says that a weight needs timber", () => {
    check(frame({ more: "require weight at most 5kg\n#       ^^^^^^ requirement-not-judged\n" }));
    check(frame({ more: "timber white-ash moisture 9%\nrequire weight at most 6kg\n" }));
  });
});

describe("limit lines", () => {
  it("speak of rules that there are", () => {
    const text = frame({ more: "limit rake-over-limits to 8deg\n" });
    check(text.replace("8deg\n", "8deg\n#     ^^^^^^^^^^^^^^^^ unknown-rule\n"));
    expect(messagesOf(text, "unknown-rule")).toEqual([
      "There is no rule rake-over-limits; did you mean rake-over-limit?",
    ]);
    expect(fixed(text, "unknown-rule", "Change to rake-over-limit")).toBe(text.replace("limits", "limit"));
  });

  it("have the rule's own dimension and side", () => {
    check(frame({ more: "limit rake-over-limit to 8\n#                        ^ limit-does-not-fit\n" }));
    check(frame({ more: "limit tenon-too-long to 5deg\n#                       ^^^^ limit-does-not-fit\n" }));
    check(
      frame({
        more: "limit rake-over-limit at least 5deg\n#                              ^^^^ limit-does-not-fit\n",
      }),
    );
    check(frame({ more: "limit rail-misses-post to 5\n#     ^^^^^^^^^^^^^^^^ limit-does-not-fit\n" }));
    expect(messagesOf(frame({ more: "limit tenon-too-thin to 8deg\n" }), "limit-does-not-fit")).toEqual([
      "tenon-too-thin takes a share, such as `1/4 of rail`, as the least, or a length, such as `6mm`, as the least.",
    ]);
  });

  it("come in with a library, and are overruled by the file at hand", () => {
    const library = "limit tenon-too-long to 12\n";
    const use = 'use "library.chair"\n';
    expect(
      messagesOf(use + frame({ joint: "tenon thick 8, long 30" }), "tenon-too-long", {
        "library.chair": library,
      }),
    ).toHaveLength(1);
    check(use + frame({ joint: "tenon thick 8, long 30", more: "limit tenon-too-long to 10\n" }), {
      "library.chair": library,
    });
  });

  it("take lengths in the file's units", () => {
    const millimetres = frame({ joint: "tenon thick 8, long 34" });
    const inches = `units in\n${millimetres.replace(/(?<![/\d])\d+(?=[,\n ])/g, (number) => `${number}mm`)}`;
    check(inches);
    expect(messagesOf(`${inches}limit tenon-too-long to 3/8\n`, "tenon-too-long")).toEqual([
      "The tenon of seat-front into front is 1 11/32 in long where front is 1 37/64 in deep, which leaves 15/64 in beyond it; 1 3/16 in or less is allowed.",
    ]);
  });
});

describe("accept lines", () => {
  const thin = "tenon thick 4, long 26";

  it("need a reason", () => {
    const text = frame({ joint: thin, more: 'accept tenon-too-thin because " "\n' });
    expect(messagesOf(text, "accept-without-reason")).toHaveLength(1);
    expect(messagesOf(text, "tenon-too-thin")).toHaveLength(1);
  });

  it("are told when they accept nothing, and are taken out by their fix", () => {
    const idle = 'accept tenon-too-thin on seat-front because "only a trial"\n';
    check(frame({ more: `${idle}#                        ^^^^^^^^^^ accept-accepts-nothing\n` }));
    expect(fixed(frame({ more: idle }), "accept-accepts-nothing", "Take the line out")).toBe(frame());
    expect(messagesOf(frame({ more: idle.replace("front", "frnt") }), "accept-accepts-nothing")).toEqual([
      "Nothing is called seat-frnt; did you mean seat-front?",
    ]);
  });

  it("are not told so while the text has errors: the fault may lie in what could not be read", () => {
    const text = `${frame({ more: 'accept tenon-too-thin because "only a trial"\n' })}rail broken {\n  acros front\n}\n`;
    expect(messagesOf(text, "accept-accepts-nothing")).toEqual([]);
  });

  it("speak of rules that there are", () => {
    check(frame({ more: 'accept tenon-too-thn because "a trial"\n#      ^^^^^^^^^^^^^ unknown-rule\n' }));
  });

  it("set aside a warning of the language, but no error", () => {
    check('let foot = 250\naccept shadows-word because "an old file"\n');
    check('let a = b\n#       ^ unknown-name\naccept unknown-name because "later"\n');
  });

  it("of a file that this one is like stay there", () => {
    const other = frame({ joint: thin, more: 'accept tenon-too-thin because "a trial"\n' });
    check(other);
    expect(messagesOf('like "other.chair"\n', "tenon-too-thin", { "other.chair": other })).toHaveLength(1);
  });
});
