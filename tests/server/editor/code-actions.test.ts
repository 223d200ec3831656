import { describe, expect, it } from "vitest";
import type { CodeAction } from "vscode-languageserver-types";
import type { Problem } from "../../../grammar/problem.ts";
import { finish, type Steps } from "../../../grammar/steps.ts";
import { codeActions, FIX_ALL } from "../../../server/editor/code-actions.ts";
import { defaultSettings } from "../../../server/editor/settings.ts";
import type { View } from "../../../server/editor/view.ts";
import type { Rule } from "../../../server/rules/machinery/rule.ts";
import { examples } from "../../rule-examples.ts";
import { edited } from "./frame.ts";
import { viewOf } from "./view.ts";

const everywhere = (view: View) => ({ start: 0, end: view.document.getText().length });
const titles = (actions: readonly CodeAction[]) =>
  actions.map(({ title, isPreferred }) => `${title}${isPreferred ? " *" : ""}`);
const apply = (view: View, action: CodeAction | undefined) =>
  edited(view, action?.edit?.changes?.[view.uri] ?? []);

/** Every fix mends all. */
function* noProblems(): Steps<Problem[]> {
  yield;
  return [];
}

/** A view with findings of our own, as a rule would give them. */
function withFindings(text: string, problems: Partial<Problem>[], table: Partial<Rule>[] = []): View {
  const { view } = viewOf(text);
  const study = {
    ...view.study,
    problems: problems.map(
      (problem) =>
        ({ code: "made-up", severity: "warning", message: "So.", start: 0, end: 5, ...problem }) as Problem,
    ),
  };
  return { ...view, study, rules: table as Rule[], reread: () => noProblems() };
}

describe("quick fixes", () => {
  it("mend a mistyped word, the only fix as the preferred one", () => {
    const { view, offset } = viewOf("post front pair {\n  sect|oin 40 x 40\n  foot out 205, back 20\n}\n");
    finish(view.mend(view.study.problems));
    const actions = codeActions(view, { start: offset, end: offset }, defaultSettings);
    expect(actions[0]?.isPreferred).toBe(true);
    expect(apply(view, actions[0])).toContain("  section 40 x 40\n");
    expect(actions[0]?.diagnostics?.[0]?.code).toBe("unknown-word");
  });

  it("are offered only where the finding is", () => {
    const { view } = viewOf("units mm\npost front pair {\n  sectoin 40 x 40\n  foot out 205, back 20\n}\n");
    expect(codeActions(view, { start: 0, end: 4 }, defaultSettings)).toEqual([]);
  });

  it("are none preferred when there are several", () => {
    const fixes = [
      { title: "One", edits: [{ start: 0, end: 5, text: "a" }] },
      { title: "Two", edits: [{ start: 0, end: 5, text: "b" }] },
    ];
    const view = withFindings("units mm\n", [{ mends: fixes }]);
    expect(titles(codeActions(view, everywhere(view), defaultSettings))).toEqual(["One", "Two"]);
  });

  it("are not offered for a rule that is turned off", () => {
    const view = withFindings("units mm\n", [{ mends: [{ title: "One", edits: [] }] }]);
    expect(codeActions(view, everywhere(view), { ...defaultSettings, rules: { "made-up": "off" } })).toEqual(
      [],
    );
  });
});

describe("accepting with a reason", () => {
  const madeUp = [{ code: "made-up", find: () => [] }];

  it("adds a line at the end, the reason left to write", () => {
    const view = withFindings("units mm\n", [{ subject: "front.left" }], madeUp);
    const [action] = codeActions(view, everywhere(view), defaultSettings);
    expect(action?.title).toBe("Accept this on front, with a reason");
    expect(apply(view, action)).toBe('units mm\n\naccept made-up on front because ""\n');
  });

  it("puts the caret between the quotes where the editor takes snippets", () => {
    const view = withFindings("units mm\n", [{ subject: "front.left" }], madeUp);
    const [action] = codeActions(view, everywhere(view), defaultSettings, { placesCaret: true });
    expect(action?.edit).toEqual({
      documentChanges: [
        {
          textDocument: { uri: view.uri, version: view.document.version },
          edits: [
            {
              range: expect.anything(),
              snippet: { kind: "snippet", value: '\n\naccept made-up on front because "$1"\n' },
            },
          ],
        },
      ],
    });
  });

  it("adds it below those that are there", () => {
    const text = 'accept made-up on a because "so"  # agreed\nnote 2026-03-14 "x"\n';
    const view = withFindings(text, [{}], madeUp);
    expect(apply(view, codeActions(view, everywhere(view), defaultSettings)[0])).toBe(
      'accept made-up on a because "so"  # agreed\naccept made-up because ""\nnote 2026-03-14 "x"\n',
    );
  });

  it("sets the finding aside, whichever rule found it, once a reason is written", () => {
    const found = examples
      .filter(({ rule }) => rule.find)
      .flatMap(({ rule, example }) => {
        const { view } = viewOf(example);
        const problem = view.study.problems.find(({ code }) => code === rule.code);
        const actions = problem
          ? codeActions(view, problem, defaultSettings).filter(({ title }) => title.startsWith("Accept"))
          : [];
        const own = actions.filter(({ diagnostics }) => diagnostics?.[0]?.code === rule.code);
        return own.map((action) => {
          const text = apply(view, action).replace('because ""', 'because "so it shall be"');
          const everywhere = action.title.includes("everywhere");
          const after = viewOf(text).view.study;
          const same = (other: Problem) => other.code === rule.code && other.start === problem?.start;
          const still = after.problems.filter(
            (other) => same(other) && (everywhere || other.subject === problem?.subject),
          );
          const before = new Set(view.study.problems.map(({ code }) => code));
          const fresh = after.problems.filter(({ code }) => !before.has(code)).map(({ message }) => message);
          return {
            rule: rule.code,
            alone: rule.alone ?? false,
            action: action.title,
            still: still.length,
            fresh,
          };
        });
      });
    expect(found.length).toBeGreaterThan(20);
    // A rule that silences the others lets them speak once it is set aside; no other rule brings out anything.
    expect(found.filter(({ still, fresh, alone }) => still > 0 || fresh.length > 0 !== alone)).toEqual([]);
  });

  it("is not offered for what the language itself finds", () => {
    const view = withFindings("units mm\n", [{}], [{ code: "made-up" }]);
    expect(codeActions(view, everywhere(view), defaultSettings)).toEqual([]);
  });
});

describe("fixes that would spoil a text", () => {
  const post = (line: string) =>
    `post front pair {\n  section 40 x 40\n  foot out 205, back 20\n  height 430\n  ${line}\n}\n`;
  const offered = (text: string, at: string) => {
    const { view } = viewOf(text);
    const start = text.indexOf(at);
    finish(view.mend(view.study.problems));
    return codeActions(view, { start, end: start + at.length }, defaultSettings).map((action) => ({
      title: action.title,
      text: apply(view, action),
    }));
  };
  const allFixed = (text: string) => {
    const { view } = viewOf(text);
    return apply(view, codeActions(view, everywhere(view), defaultSettings, { only: [FIX_ALL] })[0]);
  };

  it.each([
    ["let a = 1/7.5\n"],
    ["let a = 1..5\n"],
    ['note 14.3.2026 "x"\n'],
    [post("rake 7dg above 100")],
    ["require weight at most 5degkg\n"],
    [`${post("splay 1deg")}rail a {\n  across front\n  section 20 x 40\n  up 430 20\n}\n`],
  ])("are not applied: %j", (text) => {
    expect(allFixed(text)).toBe(text);
  });

  it("a missing section goes in as a line of its own where the header was deleted", () => {
    const text = `${post("splay 1deg")}  foot out 175, back 452\n  height 930\n}\n`;
    const texts = offered(text, "foot out 175").map((each) => each.text);
    for (const each of texts) expect(each).toContain("  foot out 175, back 452\n");
  });

  it("a let that is missing is not replaced by one that needs it", () => {
    expect(offered("let seat-1 = seat-2 + 1\n", "seat-2").map(({ title }) => title)).toEqual([]);
    const round = "let seat-1 = seat-3 + 1\nlet seat-2 = seat-1 + 1\n";
    expect(offered(round, "seat-3")).toEqual([]);
  });

  it("an accept is not accepted in its turn", () => {
    const text = examples.find(({ rule }) => rule.code === "accept-accepts-nothing")?.example ?? "";
    const titled = offered(text, "accept tenon-too-thin on seat-front").map(({ title }) => title);
    expect(titled).toContain("Take the line out");
    expect(titled.filter((title) => title.startsWith("Accept"))).toEqual([]);
  });
});

describe("fix all", () => {
  const certain = (start: number, end: number, text: string) => ({
    start,
    end,
    fixes: [{ title: "Mend", edits: [{ start, end, text }], certain: true }],
    mends: [{ title: "Mend", edits: [{ start, end, text }], certain: true }],
  });

  it("applies every certain fix and no other", () => {
    const view = withFindings("aaa bbb ccc\n", [
      certain(0, 3, "A"),
      { start: 4, end: 7, fixes: [{ title: "Perhaps", edits: [{ start: 4, end: 7, text: "B" }] }] },
      certain(8, 11, "C"),
    ]);
    const actions = codeActions(view, everywhere(view), defaultSettings, { only: ["source.fixAll"] });
    expect(actions.map(({ kind }) => kind)).toEqual([FIX_ALL]);
    expect(apply(view, actions[0])).toBe("A bbb C\n");
  });

  it("leaves out a fix that touches another", () => {
    const view = withFindings("aaa bbb\n", [certain(0, 3, "A"), certain(2, 7, "B")]);
    expect(apply(view, codeActions(view, everywhere(view), defaultSettings, { only: [FIX_ALL] })[0])).toBe(
      "A bbb\n",
    );
  });

  it("is not offered unless asked for, nor when there is nothing to do", () => {
    const view = withFindings("aaa\n", [certain(0, 3, "A")]);
    expect(codeActions(view, everywhere(view), defaultSettings).map(({ kind }) => kind)).toEqual([
      "quickfix",
    ]);
    expect(
      codeActions(withFindings("aaa\n", []), { start: 0, end: 3 }, defaultSettings, { only: [FIX_ALL] }),
    ).toEqual([]);
  });
});
