/**
 * The merge driver with the git of this machine.
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { backFrame } from "../../../plain-frame.ts";
import { gitVersion, newRepository, type Repo, withProgram } from "./repository.ts";

withProgram();

const base = backFrame("rake lean + more above 450").concat("let lean = 4deg\nlet more = 1deg\n");

describe(`git merge with the driver (${gitVersion})`, () => {
  function forked(
    files: Record<string, string>,
    ours: Record<string, string>,
    theirs: Record<string, string>,
  ): Repo {
    const repo = newRepository();
    repo.seatwright("git", "--set");
    repo.commit(files);
    repo.ok("checkout", "-q", "-b", "side");
    repo.commit(theirs);
    repo.ok("checkout", "-q", "main");
    repo.commit(ours);
    return repo;
  }
  const textOf = (repo: Repo, name = "mess.chair") => readFileSync(join(repo.at, name), "utf8");

  it("merges changes of neighbouring lines, which git by itself does not", () => {
    const [ours, theirs] = [
      base.replace("let lean = 4deg", "let lean = 5deg"),
      base.replace("let more = 1deg", "let more = 1.5deg"),
    ];
    const repo = forked(
      { "chairs/mess.chair": base },
      { "chairs/mess.chair": ours },
      { "chairs/mess.chair": theirs },
    );
    expect(
      repo.git("-c", "merge.chair.driver=git merge-file %A %O %B", "merge", "--no-edit", "side").code,
    ).toBe(1);
    repo.ok("merge", "--abort");
    expect(repo.git("merge", "--no-edit", "side")).toMatchObject({ code: 0 });
    expect(textOf(repo, "chairs/mess.chair")).toBe(ours.replace("let more = 1deg", "let more = 1.5deg"));
  });

  it("leaves unmerged what is sound on each side and not together, and says so", () => {
    const repo = forked(
      { "mess.chair": base },
      { "mess.chair": base.replace("let lean = 4deg", "let lean = 6deg") },
      { "mess.chair": base.replace("let more = 1deg", "let more = 3deg") },
    );
    const { code, out, error } = repo.git("merge", "--no-edit", "side");
    expect(code).toBe(1);
    expect(out + error).toMatch(
      /mess\.chair: merged, but each change is sound only without the other:\n +warning: .*9°.*\[rake-over-limit\]/,
    );
    expect(textOf(repo)).toContain("let lean = 6deg\nlet more = 3deg");
    expect(repo.ok("ls-files", "-u")).toContain("mess.chair");
  });

  it("marks the fact that both changed, as long as .gitattributes says", () => {
    const repo = forked(
      { "mess.chair": base },
      { "mess.chair": base.replace("let lean = 4deg", "let lean = 5deg") },
      {
        "mess.chair": base
          .replace("let lean = 4deg", "let lean = 3deg")
          .replace("more = 1deg", "more = 2deg"),
      },
    );
    repo.write({ ".gitattributes": "*.chair diff=chair merge=chair conflict-marker-size=11\n" });
    repo.ok("commit", "-qam", "Longer marks");
    const { code, out } = repo.git("merge", "--no-edit", "side");
    expect([code, out]).toEqual([1, expect.stringContaining("CONFLICT")]);
    const mark = (sign: string) => sign.repeat(11);
    expect(textOf(repo)).toContain(
      `${mark("<")} ours\nlet lean = 5deg\n${mark("=")}\nlet lean = 3deg\n${mark(">")} theirs\nlet more = 2deg\n`,
    );
  });

  it("finds what the chair uses from where the chair stands", () => {
    const user = (lean: number) =>
      `use "library.chair"\nlet lean = ${lean}deg\n${backFrame("rake lean + more above 450")}`;
    const repo = forked(
      {
        "chairs/library.chair": "let more = 1deg\n",
        "chairs/mess.chair": `${user(4)}note 2026-01-01 "One."\n`,
      },
      { "chairs/mess.chair": `${user(4)}note 2026-01-01 "One."\nnote 2026-03-01 "Three."\n` },
      { "chairs/mess.chair": `${user(4)}note 2026-01-01 "One."\nnote 2026-02-01 "Two."\n` },
    );
    expect(repo.git("merge", "--no-edit", "side").code).toBe(0);
    expect(textOf(repo, "chairs/mess.chair").match(/"\w+\."/g)).toEqual(['"One."', '"Two."', '"Three."']);
  });

  it("merges by lines what does not read whole, and leaves it unmerged", () => {
    const broken = base.replace("let lean = 4deg", "lte lean = 4deg");
    const repo = forked(
      { "mess.chair": base },
      { "mess.chair": broken },
      { "mess.chair": `# a remark\n${base}` },
    );
    const { code, out, error } = repo.git("merge", "--no-edit", "side");
    expect([code, out + error]).toEqual([1, expect.stringContaining("does not read whole")]);
    expect(textOf(repo)).toBe(`# a remark\n${broken}`);
  });
});

describe("seatwright merge", () => {
  it("writes over ours, or elsewhere, and ends with 0, 1, 2 or 3", () => {
    const repo = newRepository();
    repo.write({
      "base.chair": base,
      "ours.chair": base.replace("lean = 4deg", "lean = 5deg"),
      "theirs.chair": base.replace("more = 1deg", "more = 1.5deg"),
      "steep.chair": base.replace("more = 1deg", "more = 2.5deg"),
      "other.chair": base.replace("lean = 4deg", "lean = 3deg"),
    });
    const merge = (theirs: string) =>
      repo.seatwright("merge", "base.chair", "ours.chair", theirs, "-o", "out.chair");
    expect(merge("theirs.chair").code).toBe(0);
    expect(textIn(repo, "out.chair")).toContain("let lean = 5deg\nlet more = 1.5deg");
    expect(textIn(repo, "ours.chair")).toContain("more = 1deg");
    expect(merge("steep.chair")).toMatchObject({
      code: 3,
      error: expect.stringContaining("rake-over-limit"),
    });
    expect(merge("other.chair")).toMatchObject({
      code: 1,
      error: expect.stringContaining("1 fact was changed by both"),
    });
    expect(textIn(repo, "out.chair")).toContain(
      "<<<<<<< ours.chair\nlet lean = 5deg\n=======\nlet lean = 3deg\n>>>>>>> other.chair",
    );
    expect(merge("gone.chair").code).toBe(2);
    repo.seatwright("merge", "base.chair", "ours.chair", "theirs.chair");
    expect(textIn(repo, "ours.chair")).toContain("let lean = 5deg\nlet more = 1.5deg");
  });
  const textIn = (repo: Repo, name: string) => readFileSync(join(repo.at, name), "utf8");
});
