import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createAdjusting, type OpenText } from "../../../client/panel/adjusting.ts";
import type { Span } from "../../../grammar/problem.ts";
import type { Adjustable } from "../../../server/editor/adjustable.ts";

/** A text with two values in it, its steps to undo, and a drawing of it whenever one is asked for. */
function textOf(
  first: string,
  delayed: (act: () => void) => Promise<void> = async (act) => act(),
  inSight = true,
) {
  let text = first;
  let version = 1;
  const steps: string[] = [];
  let begun = false;
  const open: OpenText = {
    get version() {
      return version;
    },
    inSight,
    slice: ({ start, end }) => text.slice(start, end),
    async replace({ start, end }: Span, figure, { begins, ends }) {
      const seen = version;
      let done = false;
      await delayed(() => {
        if (version !== seen) return;
        if (begins || !begun) steps.push(text);
        begun = !ends;
        text = text.slice(0, start) + figure + text.slice(end);
        version += 1;
        done = true;
      });
      return done;
    },
  };
  return {
    open: async () => open,
    get text() {
      return text;
    },
    /** What is typed at an offset, a step of its own. */
    type(at: number, words: string) {
      steps.push(text);
      begun = false;
      text = text.slice(0, at) + words + text.slice(at);
      version += 1;
    },
    undo() {
      text = steps.pop() ?? text;
      version += 1;
      begun = false;
    },
    drawing() {
      const adjustables = ["height", "lean"].map((name): Adjustable => {
        const found = new RegExp(`${name} = (\\S+)`).exec(text)!;
        const start = found.index + name.length + 3;
        const at = { start, end: start + found[1]!.length };
        return { name, value: Number(found[1]), low: 0, high: 9999, step: 1, unit: "mm", at, plain: true };
      });
      return { version, adjustables };
    },
  };
}

const settled = () => new Promise<void>((done) => setImmediate(done));

describe("moving a value", () => {
  it("writes each place and is undone at once", async () => {
    const t = textOf("let height = 440\nlet lean = 6");
    const adjusting = createAdjusting(t.open);
    adjusting.drawn(t.drawing());
    for (const value of [441, 999, 1000, 1001]) {
      adjusting.move({ name: "height", value, done: false });
      await settled();
      expect(t.text).toBe(`let height = ${value}\nlet lean = 6`);
    }
    adjusting.move({ name: "height", value: 1001, done: true });
    await settled();
    t.undo();
    expect(t.text).toBe("let height = 440\nlet lean = 6");
  });

  it("undone before it was let go stays undone", async () => {
    const t = textOf("let height = 440\nlet lean = 6");
    const adjusting = createAdjusting(t.open);
    adjusting.drawn(t.drawing());
    adjusting.move({ name: "height", value: 441, done: false });
    await settled();
    t.undo();
    adjusting.drawn(t.drawing());
    // A run of keys is let go only after a rest.
    adjusting.move({ name: "height", value: 441, done: true });
    await settled();
    expect(t.text).toBe("let height = 440\nlet lean = 6");
    adjusting.move({ name: "height", value: 441, done: true });
    await settled();
    expect(t.text).toBe("let height = 441\nlet lean = 6");
  });

  it("is another step after it was let go, and for another value", async () => {
    const t = textOf("let height = 440\nlet lean = 6");
    const adjusting = createAdjusting(t.open);
    adjusting.drawn(t.drawing());
    // Each let go before the one before was written.
    adjusting.move({ name: "height", value: 450, done: true });
    adjusting.move({ name: "height", value: 460, done: true });
    adjusting.move({ name: "lean", value: 7, done: false });
    adjusting.move({ name: "lean", value: 8, done: true });
    await settled();
    const seen = [t.text];
    for (let k = 0; k < 3; k++) {
      t.undo();
      seen.push(t.text);
    }
    expect(seen).toEqual([
      "let height = 460\nlet lean = 8",
      "let height = 460\nlet lean = 6",
      "let height = 450\nlet lean = 6",
      "let height = 440\nlet lean = 6",
    ]);
  });

  it("that ends where it began writes nothing", async () => {
    const t = textOf("let height = 440\nlet lean = 6");
    const adjusting = createAdjusting(t.open);
    adjusting.drawn(t.drawing());
    adjusting.move({ name: "height", value: 440, done: false });
    adjusting.move({ name: "height", value: 440, done: true });
    await settled();
    expect(t.drawing().version).toBe(1);
  });

  it("waits for the drawing when the maker types meanwhile, and does not belong to what was typed", async () => {
    const t = textOf("let height = 440\nlet lean = 6");
    const adjusting = createAdjusting(t.open);
    adjusting.drawn(t.drawing());
    adjusting.move({ name: "height", value: 450, done: false });
    await settled();
    t.type(0, "# words\n");
    adjusting.move({ name: "height", value: 455, done: false });
    await settled();
    expect(t.text).toBe("# words\nlet height = 450\nlet lean = 6");
    adjusting.drawn(t.drawing());
    await settled();
    expect(t.text).toBe("# words\nlet height = 455\nlet lean = 6");
    t.undo();
    expect(t.text).toBe("# words\nlet height = 450\nlet lean = 6");
  });

  it("out of sight writes only where it was let go", async () => {
    const t = textOf("let height = 440\nlet lean = 6", undefined, false);
    const adjusting = createAdjusting(t.open);
    adjusting.drawn(t.drawing());
    adjusting.move({ name: "height", value: 450, done: false });
    await settled();
    expect(t.text).toBe("let height = 440\nlet lean = 6");
    adjusting.move({ name: "height", value: 460, done: true });
    await settled();
    expect(t.text).toBe("let height = 460\nlet lean = 6");
  });

  it("leaves a value alone that is worked out from others", async () => {
    const t = textOf("let height = 440\nlet lean = 6");
    const adjusting = createAdjusting(t.open);
    const { version, adjustables } = t.drawing();
    adjusting.drawn({ version, adjustables: adjustables.map((each) => ({ ...each, plain: false })) });
    adjusting.move({ name: "height", value: 450, done: true });
    await settled();
    expect(t.text).toBe("let height = 440\nlet lean = 6");
  });

  it("never loses what is typed, in whatever order all of it comes", async () => {
    const move = fc.record({
      is: fc.constant("move" as const),
      name: fc.constantFrom("height", "lean"),
      value: fc.integer({ min: 0, max: 9999 }),
      done: fc.boolean(),
    });
    const typing = fc.record({ is: fc.constant("type" as const), early: fc.boolean() });
    const other = fc.record({ is: fc.constantFrom("draw" as const, "late" as const) });
    const act = fc.oneof(move, typing, other);
    await fc.assert(
      fc.asyncProperty(fc.scheduler(), fc.array(act, { maxLength: 25 }), async (scheduler, acts) => {
        const t = textOf("let height = 440\nlet lean = 6\n", async (change) => {
          await scheduler.schedule(Promise.resolve());
          change();
        });
        const adjusting = createAdjusting(t.open);
        adjusting.drawn(t.drawing());
        let old = t.drawing();
        let typed = 0;
        const last = new Map<string, number>();
        for (const each of acts) {
          if (each.is === "move") {
            adjusting.move(each);
            last.set(each.name, each.value);
          } else if (each.is === "type") t.type(each.early ? 0 : t.text.length, `# ${++typed}\n`);
          else {
            if (each.is === "draw") old = t.drawing();
            adjusting.drawn(old);
          }
          if (scheduler.count()) await scheduler.waitOne();
          else await settled();
        }
        // In the end all is drawn and written.
        for (let k = 0; k < acts.length + 2; k++) {
          adjusting.drawn(t.drawing());
          await scheduler.waitAll();
          await settled();
        }
        for (let k = 1; k <= typed; k++) expect(t.text).toContain(`# ${k}\n`);
        for (const [name, value] of last) expect(t.text).toContain(`let ${name} = ${value}\n`);
        expect(t.text.replace(/# \d+\n/g, "")).toMatch(/^let height = \d+\nlet lean = \d+\n$/);
      }),
    );
  });
});
