import { describe, expect, it } from "vitest";
import { checkOf, fixed, messagesOf } from "../../check.ts";
import { frame } from "../../plain-frame.ts";

const check = checkOf("tenon-too-thin");

const thin = "tenon thick 5, long 26";
const marked = `${thin}\n#           ^ tenon-too-thin 5 mm … 7.3 mm or more`;

describe("tenon-too-thin", () => {
  it("finds a tenon under a third of its rail, once, where the joint is made", () => {
    check(frame({ joint: marked }));
    expect(messagesOf(frame({ joint: thin }), "tenon-too-thin")).toEqual([
      "The tenon of seat-front into front is 5 mm thick on wood 22 mm thick; 7.3 mm or more is needed.",
    ]);
  });

  it("says nothing of a third, nor of a bare-faced or turned one", () => {
    check(frame({ joint: "tenon thick 1/3 of rail, long 26" }));
    check(frame({ joint: "tenon thick 7.3, long 26" }));
    check(frame({ joint: "round 7, long 26" }));
    check(frame({ joint: "tenon thick full, long 15" }).replaceAll("22 x 60", "8 x 60"));
  });

  it("asks for what can be mortised, however thin the rail", () => {
    check(
      frame({ joint: "tenon thick 5, long 15\n#           ^ tenon-too-thin 5 mm … 6 mm or more" }).replaceAll(
        "22 x 60",
        "12 x 60",
      ),
    );
  });

  it("is mended by a third of the rail", () => {
    expect(fixed(frame({ joint: thin }), "tenon-too-thin", "Make it 1/3 of rail")).toBe(
      frame({ joint: "tenon thick 1/3 of rail, long 26" }),
    );
  });

  it("takes another share, or another least thickness", () => {
    check(frame({ joint: "tenon thick 6, long 26", more: "limit tenon-too-thin to 1/4 of rail\n" }));
    check(
      frame({
        joint: "tenon thick 5, long 26\n#           ^ tenon-too-thin 5 mm … 6 mm or more",
        more: "limit tenon-too-thin to 1/5 of rail\n",
      }),
    );
    check(
      frame({
        joint: thin,
        more: "limit tenon-too-thin to 1/5 of rail\nlimit tenon-too-thin at least 4.5\n",
      }),
    );
  });

  it("can be accepted on all, on a pair, on one joint", () => {
    check(frame({ joint: thin, more: 'accept tenon-too-thin because "a trial"\n' }));
    const some = frame({
      joint: marked,
      more: 'accept tenon-too-thin on seat-side because "stiffened by a stretcher"\n',
    });
    const { accepted, problems } = check(some);
    expect(accepted.map(({ problem, because }) => [problem.subject, because])).toEqual([
      ["seat-side.left to front.left", "stiffened by a stretcher"],
    ]);
    expect(problems[0]?.related?.map(({ message }) => message)).toEqual(["so it is with seat-back to back"]);
    check(frame({ joint: marked, more: 'accept tenon-too-thin on seat-side to back because "a trial"\n' }));
  });

  it("stands on the line that names a joint of another file, and shows where the figure is", () => {
    const library = "joint plain {\n  tenon thick 5, long 26\n  shoulders top 10, bottom 6\n}\n";
    const text = frame({ joint: "" }).replace(/joint plain \{[^}]*\}\n/, 'use "joints.chair"\n');
    const marks = text.replaceAll("  joined plain\n", "  joined plain\n  #      ^^^^^ tenon-too-thin\n");
    const { problems } = check(marks, { "joints.chair": library });
    expect(problems[0]?.related?.[0]).toMatchObject({
      file: "file:///mess/joints.chair",
      start: library.indexOf("5"),
    });
    expect(problems[0]?.fixes).toBeUndefined();
  });

  it("speaks in the file's units", () => {
    const inches = `units in\n${frame({ joint: thin })}`.replace(/\b\d+(?=[,\n ])/g, (mm) => `${mm}mm`);
    expect(messagesOf(inches, "tenon-too-thin")).toEqual([
      "The tenon of seat-front into front is 13/64 in thick on wood 55/64 in thick; 19/64 in or more is needed.",
    ]);
  });
});
