/**
 * `check --since` with the git of this machine: what guards the merges that no driver is asked about.
 */
import { describe, expect, it } from "vitest";
import { backFrame } from "../../../../tests/plain-frame.ts";
import { gitVersion, newRepository, withProgram } from "./repository.ts";

withProgram();

const raked = backFrame("rake 9deg above 450");
const broken = raked.replace("section 22 x 60", "sectoin 22 x 60");
/** Two values that a back's lean is made of, far enough apart that git merges changes of both. */
const leaning = (one: string, other: string) =>
  `let lean = ${one}\n\n\n\n${backFrame("rake lean + more above 450")}\n\n\nlet more = ${other}\n`;

describe(`check --since (${gitVersion})`, () => {
  it("tells only findings that are new, and ends with 1 only for new errors", () => {
    const repo = newRepository();
    repo.commit({ "chairs/mess.chair": raked });
    const since = (revision: string) => {
      const { out, code } = repo.seatwright(
        "check",
        "chairs/mess.chair",
        "--since",
        revision,
        "--format",
        "json",
      );
      const codes = JSON.parse(out).files[0].findings.map((each: { code: string }) => each.code);
      return { codes, code };
    };
    expect(since("HEAD")).toEqual({ codes: [], code: 0 });
    repo.write({ "chairs/mess.chair": `# moved down\n${broken}` });
    const { codes, code } = since("HEAD");
    expect(codes).toContain("unknown-word");
    expect(codes).not.toContain("rake-over-limit");
    expect(code).toBe(1);
    repo.commit({}, "broken");
    expect(since("HEAD")).toEqual({ codes: [], code: 0 });
    expect(repo.seatwright("check", "chairs/mess.chair").code).toBe(1);
    expect(since("HEAD~1").code).toBe(1);
  });

  it("follows a file that was renamed, and tells all of one that is new", () => {
    const repo = newRepository();
    repo.commit({ "mess.chair": raked });
    repo.ok("mv", "mess.chair", "stove.chair");
    repo.write({ "new.chair": raked });
    const codes = (file: string) =>
      JSON.parse(repo.seatwright("check", file, "--since", "HEAD", "--format", "json").out).files[0].findings
        .length;
    expect(codes("stove.chair")).toBe(0);
    expect(codes("new.chair")).toBeGreaterThan(0);
  });

  it("guards a merge that git makes by itself: each side sound, together not", () => {
    const repo = newRepository();
    repo.commit({ "mess.chair": leaning("4deg", "1deg") });
    repo.ok("checkout", "-q", "-b", "side");
    repo.commit({ "mess.chair": leaning("6deg", "1deg") });
    repo.ok("checkout", "-q", "main");
    repo.commit({ "mess.chair": leaning("4deg", "3deg") });
    const codes = (revision: string) => {
      const { out } = repo.seatwright("check", "mess.chair", "--since", revision, "--format", "json");
      return JSON.parse(out).files[0].findings.map((each: { code: string }) => each.code);
    };
    expect(codes("side")).toEqual([]);
    expect(repo.git("merge", "-q", "side").code).toBe(0);
    expect(codes("side")).toContain("rake-over-limit");
    expect(codes("HEAD^1")).toContain("rake-over-limit");
  });

  it("says when there is no such revision, or no repository", () => {
    const repo = newRepository();
    repo.commit({ "mess.chair": raked });
    expect(repo.seatwright("check", "mess.chair", "--since", "nothing")).toMatchObject({
      code: 2,
      error: 'seatwright: there is no revision "nothing".\n',
    });
  });

  it("names files from the top of the repository in SARIF", () => {
    const repo = newRepository();
    repo.write({ "chairs/the mess.chair": raked });
    const log = JSON.parse(repo.seatwright("check", "chairs/the mess.chair", "--format", "sarif").out);
    expect(log.runs[0].results[0].locations[0].physicalLocation.artifactLocation).toEqual({
      uri: "chairs/the%20mess.chair",
      uriBaseId: "SRCROOT",
    });
  });
});
