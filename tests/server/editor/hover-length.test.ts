import { describe, expect, it } from "vitest";
import { MOST_LINES, shortened } from "../../../server/editor/about/short.ts";
import { hover, textOf } from "../../../server/editor/hover.ts";
import { pageLink } from "../../../server/editor/pages/kinds.ts";
import { projectFiles, read } from "../../house/project-files.ts";
import { address, plainView } from "./view.ts";

const paths = projectFiles().filter((path) => /^samples\/.*\.chair$/.test(path));
const files = Object.fromEntries(paths.map((path) => [path.slice("samples/".length), read(path)]));

/** Lines as they are shown: pictures, fences and rules between parts are none. */
const linesOf = (markdown: string) =>
  markdown.split("\n").filter((line) => line.trim() && !/^(---|```|!\[)/.test(line));

describe("hovers", () => {
  it.each(paths)("of everything in %s are a dozen lines at most, figures before descriptions", (path) => {
    const text = read(path);
    const view = plainView(text, address, files);
    const seen = new Set<string>();
    for (const { index } of text.matchAll(/[A-Za-z][A-Za-z0-9.-]*/g)) {
      const told = hover(view, index + 1);
      if (!told) continue;
      const says = textOf(told);
      if (seen.has(says)) continue;
      seen.add(says);
      expect(linesOf(says).length, says).toBeLessThanOrEqual(MOST_LINES);
    }
    expect(seen.size).toBeGreaterThan(2);
    for (const { name, description } of view.study.design.names.values()) {
      const at = text.search(new RegExp(`^\\w+ ${name}\\b`, "m"));
      if (!description || at < 0) continue;
      const lines = linesOf(textOf(hover(view, text.indexOf(name, at) + 1)!));
      const figure = lines.findIndex((line) => /\d/.test(line));
      const words = lines.findIndex((line) => line.startsWith(description.slice(0, 12)));
      if (words >= 0 && figure >= 0 && figure !== words) expect(figure).toBeLessThan(words);
    }
  });

  it("say how much they leave out, with a link to it where the client can follow one", () => {
    const long = Array.from({ length: 30 }, (_, k) => `- line ${k}`).join("\n");
    expect(linesOf(shortened(long)).at(-1)).toBe("…and 19 more lines");
    expect(linesOf(shortened(long))).toHaveLength(MOST_LINES);
    const link = pageLink("values", "file:///a.chair");
    expect(shortened(long, link)).toContain(`[19 more lines](${link})`);
    expect(link).toBe("command:seatwright.page.values?%5B%22file%3A%2F%2F%2Fa.chair%22%5D");
    expect(shortened("- a\n- b")).toBe("- a\n- b");
  });
});
