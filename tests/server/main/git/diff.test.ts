/**
 * What git does with the driver and the text form, tried with the git of this machine.
 */
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { gitVersion, newRepository, seatwrightIn, withProgram } from "./repository.ts";

withProgram();

const stool = `chair "Stool"
units mm

post leg pair {
  section 40 x 40
  foot out 150, back 0
  height 440
}
`;
const taller = stool.replace("height 440", "height 450");

describe(`git diff with the driver (${gitVersion})`, () => {
  it("is set up by `seatwright git --set`, for this repository only", () => {
    const repo = newRepository();
    repo.commit({ "stool.chair": stool });
    const { code, out } = repo.seatwright("git", "--set");
    expect(code).toBe(0);
    expect(out).toContain("diff.chair.command = ");
    expect(readFileSync(join(repo.at, ".gitattributes"), "utf8")).toBe("*.chair diff=chair merge=chair\n");
    expect(repo.seatwright("git", "--set").out).toContain("has the line already");
    expect(readFileSync(join(repo.at, ".gitattributes"), "utf8")).toBe("*.chair diff=chair merge=chair\n");
    expect(repo.git("config", "--global", "diff.chair.command").code).not.toBe(0);
    expect(repo.ok("check-attr", "diff", "stool.chair")).toContain("diff: chair");
  });

  it("prints what it would set, and lines that set it", () => {
    const repo = newRepository();
    const { out } = repo.seatwright("git");
    for (const line of out.split("\n").filter((each) => each.startsWith("git config "))) {
      const [, name = "", value = ""] = /^git config (\S+) '(.*)'$/.exec(line) ?? [];
      repo.ok("config", name, value);
    }
    repo.write({ ".gitattributes": `${/^\*\.chair .*$/m.exec(out)?.[0]}\n` });
    repo.commit({ "stool.chair": stool });
    repo.write({ "stool.chair": taller });
    expect(repo.ok("diff")).toContain("440 → 450");
  });

  function ready(files: Record<string, string> = { "stool.chair": stool }) {
    const repo = newRepository();
    repo.seatwright("git", "--set");
    repo.commit(files, "First");
    return repo;
  }

  it("tells what was chosen and what follows, ends with 0, from any folder", () => {
    const repo = ready({ "chairs/stool.chair": stool });
    repo.write({ "chairs/stool.chair": taller });
    const { code, out } = repo.git("diff");
    expect(code).toBe(0);
    expect(out).toMatch(/leg +height +440 → 450/);
    expect(out).toContain("10 mm longer");
    expect(repo.ok("-C", "chairs", "diff", "--", "stool.chair")).toContain("440 → 450");
  });

  it("takes added, deleted, staged and renamed files", () => {
    const repo = ready();
    repo.write({ "other.chair": taller });
    repo.ok("add", "-A");
    expect(repo.ok("diff", "--cached")).toContain("new: 450");
    repo.ok("rm", "-q", "--cached", "other.chair");
    repo.ok("rm", "-q", "stool.chair");
    expect(repo.ok("diff", "--cached")).toContain("gone: 440");
    repo.ok("reset", "-q", "--hard");
    repo.ok("mv", "stool.chair", "high-stool.chair");
    writeFileSync(join(repo.at, "high-stool.chair"), taller);
    repo.ok("add", "-A");
    const renamed = repo.ok("diff", "--cached", "-M");
    expect(renamed).toContain("rename from stool.chair");
    expect(renamed).toContain("440 → 450");
  });

  it("reads what a revision names by use as it was at that revision", () => {
    const library = (long: number) => `joint tenon-a {\n  tenon thick 10, long ${long}\n}\n`;
    const user = (height: number) => `use "library.chair"\n${stool.replace("440", String(height))}`;
    const repo = ready({ "library.chair": library(20), "stool.chair": user(440) });
    repo.commit({ "library.chair": library(25), "stool.chair": user(445) });
    repo.write({ "library.chair": library(30), "stool.chair": user(450) });
    const before = repo.ok("diff", "HEAD~1", "HEAD", "--", "stool.chair");
    expect(before).toMatch(/tenon-a +tenon +thick 10, long 20 → thick 10, long 25/);
    const now = repo.ok("diff", "--", "stool.chair");
    expect(now).toMatch(/tenon-a +tenon +thick 10, long 25 → thick 10, long 30/);
    const named = repo.seatwright("compare", "HEAD~1:stool.chair", "HEAD:stool.chair");
    expect(named.out).toMatch(/tenon-a +tenon +thick 10, long 20 → thick 10, long 25/);
    expect(named.code).toBe(1);
  });

  it("says that a path is not merged, and then how each side differs", () => {
    const repo = ready();
    repo.ok("checkout", "-q", "-b", "side");
    repo.commit({ "stool.chair": stool.replace("height 440", "height 430") });
    repo.ok("checkout", "-q", "main");
    repo.commit({ "stool.chair": taller });
    repo.ok("-c", "merge.chair.driver=false", "config", "merge.chair.driver", "false");
    expect(repo.git("merge", "side").code).not.toBe(0);
    const { code, out } = repo.git("diff", "--ours");
    expect(code).toBe(0);
    expect(out).toContain("stool.chair: not merged yet");
  });

  it("shows facts in log and show by textconv, and the driver's words with --ext-diff", () => {
    const repo = ready();
    repo.commit({ "stool.chair": `# lower later\n${taller.replace("  foot", "     foot")}` }, "Taller");
    for (const words of [["log", "-p", "-1"], ["show"]]) {
      const out = repo.ok(...words);
      expect(out).toContain("-leg height: 440\n+leg height: 450");
      expect(out).toMatch(/^-# height: 440 mm\n\+# height: 450 mm$/m);
      expect(out).not.toContain("foot out");
    }
    expect(repo.ok("log", "-p", "-1", "--ext-diff")).toMatch(/leg +height +440 → 450/);
    expect(repo.ok("format-patch", "-1", "--stdout")).toContain("+  height 450");
  });

  it("shows no difference of facts where only the layout is another", () => {
    const repo = ready();
    repo.commit({ "stool.chair": `# a remark\n${stool.replaceAll("  ", "\t")}` });
    expect(repo.ok("show", "--format=")).not.toMatch(/^[-+][^-+]/m);
    expect(repo.ok("diff", "HEAD~1", "HEAD")).toContain("No change of the chair");
  });
});

describe("compare", () => {
  it("takes files, revisions and standard input, and ends with 0, 1 or 2", () => {
    const repo = newRepository();
    repo.commit({ "stool.chair": stool });
    repo.write({ "stool.chair": taller });
    expect(repo.seatwright("compare", "HEAD:stool.chair", "stool.chair").code).toBe(1);
    expect(repo.seatwright("compare", "stool.chair", "stool.chair").code).toBe(0);
    const piped = seatwrightIn(repo.at, ["compare", "stool.chair", "-"], stool);
    expect([piped.code, piped.out]).toEqual([1, expect.stringContaining("450 → 440")]);
    const lost = repo.seatwright("compare", "HEAD:gone.chair", "nothing:stool.chair");
    expect(lost.code).toBe(2);
    expect(lost.error.trimEnd().split("\n")).toEqual([
      'HEAD:gone.chair: revision "HEAD" has no such file.',
      'nothing:stool.chair: there is no revision "nothing".',
    ]);
    const bare = newRepository("--bare");
    repo.ok("push", "-q", bare.at, "main");
    expect(bare.seatwright("compare", "main:stool.chair", "main:stool.chair").code).toBe(0);
  });

  it("takes a revision for a word and never for an option of git", () => {
    const repo = newRepository();
    repo.commit({ "stool.chair": stool });
    const { code, error } = repo.seatwright("compare", "--", "--output=x:stool.chair", "stool.chair");
    expect([code, error]).toEqual([2, expect.stringContaining("there is no revision")]);
  });
});
