import type { Problem } from "../../../grammar/problem.ts";
import type { Chair } from "../../../server/chair/chair.ts";
import type { Design } from "../../../server/design/design.ts";
import type { Sheet } from "../../../server/drawing/sheet.ts";
import type { Services } from "../../../server/main/put-to-work.ts";
import type { Late } from "../../../server/strength/late.ts";
import type { Study } from "../../../server/study.ts";

/**
 * A language of our own for tests of the server alone: every "wrong" in the text is an error, `use "x"` reads another file,
 * every word that starts a line with `part-` is a part, and every `failing-` word is something that failed.
 */
export function standIn(): Services & { studied: string[] } {
  const studied: string[] = [];
  return {
    studied,
    vocabulary: { rows: [], words: [] },
    rules: [],
    *parse(text) {
      yield;
      return { text, statements: [], comments: [], problems: wrongs(text) };
    },
    *study({ text, address, files }) {
      yield;
      studied.push(text);
      if (text.includes("explode")) throw new Error("the study exploded");
      const other = /use "(.*)"/.exec(text)?.[1];
      const used = other === undefined ? "" : files.read(files.resolve(address, other) ?? "");
      const problems = wrongs(text);
      if (used === undefined)
        problems.push({
          start: 0,
          end: 3,
          code: "file-not-found",
          severity: "error",
          message: "No such file.",
        });
      for (const _ of (used ?? "").matchAll(/wrong/g)) {
        problems.push({
          start: 0,
          end: 3,
          code: "used-wrong",
          severity: "warning",
          message: "The other file is wrong.",
        });
      }
      const parts = [...text.matchAll(/^part-[a-z]+/gm)].map((match) => match[0]);
      return {
        address,
        text,
        tree: { text, statements: [], comments: [], problems: wrongs(text) },
        design: { names: new Map(), lets: new Map() } as unknown as Design,
        chair: {
          values: new Map(),
          members: new Map(parts.map((part) => [part, {}])),
          posts: new Map(parts.map((part) => [part, {}])),
          rails: new Map(),
          slats: new Map(),
          blocks: new Map(),
        } as unknown as Chair,
        problems,
        accepted: [],
        failures: [...text.matchAll(/failing-[a-z]+/g)].map(([what]) => ({
          what,
          thrown: new Error("it failed"),
        })),
        grounds: { also: [], found: new Map() },
      } satisfies Study;
    },
    *deepen(study) {
      yield;
      return study;
    },
    late: async () =>
      function* () {
        yield;
        return { values: [] } as unknown as Late;
      },
    settle: () => ({ chair: { values: new Map() } as unknown as Chair }),
    *mend() {},
    *draw(chair) {
      yield;
      return { title: [...chair.posts.keys()].join(" ") } as Sheet;
    },
  };
}

function wrongs(text: string): Problem[] {
  return [...text.matchAll(/wrong/g)].map((match) => ({
    start: match.index,
    end: match.index + match[0].length,
    code: "wrong-word",
    severity: "error",
    message: "This is wrong.",
  }));
}
