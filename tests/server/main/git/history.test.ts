/**
 * A chair's history with the git of this machine.
 */
import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { historyOutput } from "../../../../server/main/cli/schema.ts";
import { gitVersion, newRepository, seatwrightIn, withProgram } from "./repository.ts";

withProgram();

const stool = (height: number, notes = "") =>
  `chair "Stool"\npost leg pair {\n  section 40 x 40\n  foot out 150, back 0\n  height ${height}\n}\n${notes}`;
const first = 'note 2026-03-14 "First one."\n';
const second = 'note 2026-04-02 "Too low, by a hand."\n';

function told() {
  const repo = newRepository();
  repo.commit({ "stool.chair": stool(440, first) }, "First");
  repo.commit({ "stool.chair": `# laid out\n${stool(440, first)}` }, "Laid out");
  repo.ok("mv", "stool.chair", "high stool.chair");
  repo.commit({ "high stool.chair": stool(460, first + second) }, "Higher, and renamed");
  repo.commit({ "high stool.chair": stool(460, first + second).replace("height", "hieght") }, "Mistyped");
  repo.commit({ "high stool.chair": stool(470, first + second) }, 'Said "again", with a comma');
  return repo;
}

describe(`seatwright history (${gitVersion})`, () => {
  it("tells each version with its notes, what was chosen and how values moved, renames followed", () => {
    const repo = told();
    const { out, code } = repo.seatwright(
      "history",
      "high stool.chair",
      "--value",
      "height,leg.length",
      "--format",
      "json",
    );
    const { git, versions } = historyOutput.parse(JSON.parse(out));
    expect([code, git]).toEqual([0, true]);
    expect(versions.map(({ subject, path, errors }) => [subject, path, errors])).toEqual([
      ["First", "stool.chair", 0],
      ["Laid out", "stool.chair", 0],
      ["Higher, and renamed", "high stool.chair", 0],
      ["Mistyped", "high stool.chair", 1],
      ['Said "again", with a comma', "high stool.chair", 0],
    ]);
    expect(versions[0]?.notes).toEqual([{ date: "2026-03-14", text: "First one." }]);
    expect(versions[1]?.chosen).toEqual([]);
    expect(versions[2]).toMatchObject({
      chosen: [{ part: "leg", property: "height", old: "440", new: "460" }],
      notes: [{ date: "2026-04-02", text: "Too low, by a hand." }],
      values: { height: { value: 460, unit: "mm" } },
    });
    expect(versions.map(({ values }) => values["leg.length"]?.value)).toEqual([
      440,
      440,
      460,
      undefined,
      470,
    ]);
    expect(versions.map(({ commit }) => commit)).toEqual(
      repo.ok("log", "--follow", "--format=%H", "--", "high stool.chair").trim().split("\n").reverse(),
    );
  });

  it("says in text which version does not read, and what is not committed yet", () => {
    const repo = told();
    repo.write({ "high stool.chair": stool(480, first + second) });
    const { out } = repo.seatwright("history", "high stool.chair");
    expect(out).toContain("does not read whole: 1 error");
    expect(out).toMatch(/now +not committed\n +leg height: 470 → 480/);
    expect(out).toContain("2026-03-14: First one.");
  });

  it("tells each commit against the one it was made from where branches ran side by side, and the merge as its own version", () => {
    const repo = newRepository();
    repo.commit({ "stool.chair": stool(440, first) }, "First");
    repo.ok("checkout", "-q", "-b", "higher");
    repo.commit({ "stool.chair": stool(460, first) }, "Higher");
    repo.ok("checkout", "-q", "main");
    const stout = (text: string) => text.replace("40 x 40", "45 x 45");
    repo.commit({ "stool.chair": stout(stool(440, first)) }, "Stouter");
    repo.ok("merge", "-q", "--no-commit", "--strategy=ours", "higher");
    repo.commit({ "stool.chair": stout(stool(460, first + second)) }, "Both");
    const { out } = repo.seatwright("history", "stool.chair", "--format", "json");
    const told = historyOutput
      .parse(JSON.parse(out))
      .versions.map(({ subject, chosen, notes }) => [
        subject,
        ...chosen.map(({ property, old, new: now }) => `${property} ${old} to ${now}`),
        ...notes.map(({ date }) => date),
      ]);
    expect(told[0]).toEqual(["First", "2026-03-14"]);
    expect(new Set(told.slice(1, 3).map((each) => each.join("; ")))).toEqual(
      new Set(["Higher; height 440 to 460", "Stouter; section 40 x 40 to 45 x 45"]),
    );
    expect(told.slice(3)).toEqual([["Both", "height 440 to 460", "2026-04-02"]]);
    expect(repo.seatwright("history", "stool.chair").out).not.toContain("not committed");
  });

  it("tells a renamed file against what it was under its old name, whatever was committed beside it meanwhile", () => {
    const repo = newRepository();
    repo.commit({ "stool.chair": stool(440, first) }, "First");
    repo.commit({ "stool.chair": stool(470, first) }, "Higher");
    repo.ok("checkout", "-q", "-b", "renamed", "HEAD~1");
    repo.ok("mv", "stool.chair", "low stool.chair");
    // git tells commits of one second apart by nothing.
    Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 1100);
    repo.commit({ "low stool.chair": stool(430, first) }, "Lower, and renamed");
    repo.ok("merge", "-q", "--no-commit", "--strategy=ours", "main");
    repo.commit({ "low stool.chair": stool(450, first) }, "Between");
    const { out } = repo.seatwright("history", "low stool.chair", "--format", "json");
    const told = historyOutput
      .parse(JSON.parse(out))
      .versions.map(({ subject, chosen }) => [
        subject,
        ...chosen.map(({ old, new: now }) => `${old} to ${now}`),
      ]);
    expect(told).toEqual([
      ["First"],
      ["Higher", "440 to 470"],
      ["Lower, and renamed", "440 to 430"],
      ["Between", "430 to 450"],
    ]);
  });

  it("writes CSV and a plot", () => {
    const repo = told();
    const { out: csv } = repo.seatwright(
      "history",
      "high stool.chair",
      "--value",
      "height",
      "--format",
      "csv",
    );
    const rows = csv.trimEnd().split("\r\n");
    expect(rows[0]).toBe("date,commit,subject,errors,chosen,height (mm)");
    expect(rows.at(-1)).toMatch(/,"Said ""again"", with a comma",0,\d,470$/);
    const { out: svg } = repo.seatwright(
      "history",
      "high stool.chair",
      "--value",
      "height,width",
      "--format",
      "svg",
    );
    expect(svg).toContain("height: 440 mm first, 470 mm last, from 440 mm to 470 mm.");
    expect(svg.match(/<g>/g)).toHaveLength(2);
  });

  it("works in a bare clone, in a worktree, from a folder further in, and without git", () => {
    const repo = told();
    const bare = newRepository("--bare");
    repo.ok("push", "-q", bare.at, "main");
    const versions = (text: string) => historyOutput.parse(JSON.parse(text)).versions.length;
    expect(versions(bare.seatwright("history", "high stool.chair", "--format", "json").out)).toBe(5);
    const tree = `${repo.at}-tree`;
    repo.ok("worktree", "add", "-q", tree);
    expect(versions(seatwrightIn(tree, ["history", "high stool.chair", "--format", "json"]).out)).toBe(5);
    repo.commit({ "in/deep.chair": stool(450) });
    expect(
      versions(seatwrightIn(join(repo.at, "in"), ["history", "deep.chair", "--format", "json"]).out),
    ).toBe(1);
    expect(
      versions(seatwrightIn(tmpdir(), ["history", join(repo.at, "in/deep.chair"), "--format", "json"]).out),
    ).toBe(1);
    const plain = mkdtempSync(join(tmpdir(), "no-git-"));
    writeFileSync(join(plain, "stool.chair"), stool(440, second + first));
    const { out, code } = seatwrightIn(plain, ["history", "stool.chair"]);
    rmSync(plain, { recursive: true });
    expect([code, out]).toEqual([
      0,
      "Stool\nstool.chair: not in git, so only its notes are shown.\n  2026-03-14: First one.\n  2026-04-02: Too low, by a hand.\n",
    ]);
  });

  it("says when there is no such file", () => {
    expect(told().seatwright("history", "gone.chair")).toMatchObject({ code: 2, out: "" });
  });

  it("reads a hundred commits without a process for each", () => {
    const repo = newRepository();
    const commits = Array.from({ length: 100 }, (_, k) => {
      const text = stool(400 + k);
      return `commit refs/heads/main\nmark :${k + 1}\ncommitter A maker <maker@example.org> ${1_700_000_000 + k * 86_400} +0000\ndata 4\nStep${k > 0 ? `\nfrom :${k}` : ""}\nM 100644 inline stool.chair\ndata ${text.length}\n${text}\n`;
    });
    execFileSync("git", ["fast-import", "--quiet"], { cwd: repo.at, input: commits.join("\n") });
    repo.ok("checkout", "-q", "-f", "main");
    const { out } = repo.seatwright("history", "stool.chair", "--value", "height", "--format", "json");
    const { versions } = historyOutput.parse(JSON.parse(out));
    expect(versions.map(({ values }) => values.height?.value)).toEqual(
      Array.from({ length: 100 }, (_, k) => 400 + k),
    );
  });
});
