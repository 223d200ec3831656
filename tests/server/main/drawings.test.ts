import { describe, expect, it } from "vitest";
import { readDrawing } from "../../../client/panel/messages.ts";
import { DRAW, WATCH_DRAWING } from "../../../server/main/protocol.ts";
import { services } from "../../../server/main/services.ts";
import { read } from "../../house/project-files.ts";
import { connect } from "./connected.ts";
import { standIn } from "./stand-in.ts";

const uri = "file:///mess/chair.chair";

async function watching(text: string) {
  const c = await connect(standIn());
  c.open(uri, text);
  void c.client.sendNotification(WATCH_DRAWING, { uri, watch: true });
  return c;
}

describe("the drawing", () => {
  it("comes with its version and follows the text", async () => {
    const c = await watching("part-leg");
    expect(await c.drawingWhen((d) => d.version === 1)).toMatchObject({
      uri,
      sheet: { title: "part-leg" },
      stale: false,
    });
    c.change(uri, 2, "part-leg\npart-rail");
    expect(await c.drawingWhen((d) => d.version === 2)).toMatchObject({
      sheet: { title: "part-leg part-rail" },
      stale: false,
    });
  });

  it("has laid over it what is asked for, and nothing that there is not", async () => {
    const services = standIn();
    const asked: string[] = [];
    const c = await connect({
      ...services,
      *draw(chair, overlays = []) {
        asked.push(overlays.join(" "));
        return { ...(yield* services.draw(chair)), title: `over it ${overlays.join(" ")}` };
      },
    });
    c.open(uri, "part-leg");
    const watch = (overlays: unknown) =>
      void c.client.sendNotification(WATCH_DRAWING, { uri, watch: true, overlays });
    const titled = (title: string) => c.drawingWhen((drawing) => drawing.sheet?.title === title);
    watch(["sitter", "walls", "floor"]);
    await titled("over it floor sitter");
    watch("sitter");
    await titled("over it ");
    expect(new Set(asked)).toEqual(new Set(["floor sitter", ""]));
  });

  it("comes with what it takes to turn the chair while that is asked for, and with parts off the bench", async () => {
    const c = await connect(services);
    c.open(uri, read("samples/joined-stool.chair"));
    const watch = (pictorial?: unknown) =>
      void c.client.sendNotification(WATCH_DRAWING, { uri, watch: true, pictorial });
    watch("everything");
    expect((await c.drawingWhen(({ sheet }) => sheet !== null)).pictorial).toBeUndefined();
    watch("whole");
    const whole = await c.drawingWhen(({ pictorial }) => pictorial?.bench === false);
    expect(readDrawing(whole)).toEqual(whole);
    watch("parts");
    const { pictorial } = await c.drawingWhen(({ pictorial }) => pictorial?.bench === true);
    expect(pictorial!.parts.map(({ name }) => name)).toEqual(whole.pictorial!.parts.map(({ name }) => name));
    watch();
    await c.drawingWhen(({ pictorial }) => pictorial === undefined);
  });

  it("keeps the last good sheet while an error takes a part away, and says why", async () => {
    const c = await watching("part-leg\npart-rail");
    await c.drawingWhen((d) => d.version === 1);
    c.change(uri, 2, "part-leg\nwrong-rail");
    const stale = await c.drawingWhen((d) => d.version === 2);
    expect(stale).toMatchObject({ sheet: { title: "part-leg part-rail" }, stale: true });
    expect(stale.reason).toBe("part-rail cannot be drawn until line 2 is mended: This is wrong.");
    c.change(uri, 3, "part-leg\npart-rail");
    expect(await c.drawingWhen((d) => d.version === 3)).toMatchObject({ stale: false });
  });

  it("draws on when an error costs no part", async () => {
    const c = await watching("part-leg");
    c.change(uri, 2, "part-leg\nwrong");
    expect(await c.drawingWhen((d) => d.version === 2)).toMatchObject({
      sheet: { title: "part-leg" },
      stale: false,
    });
  });

  it("lets go of a part that the maker took out", async () => {
    const c = await watching("part-leg\npart-rail");
    await c.drawingWhen((d) => d.version === 1);
    c.change(uri, 2, "part-leg");
    expect(await c.drawingWhen((d) => d.version === 2)).toMatchObject({
      sheet: { title: "part-leg" },
      stale: false,
    });
  });

  it("never goes blank once there was a chair", async () => {
    const c = await watching("part-leg");
    await c.drawingWhen((d) => d.version === 1);
    c.change(uri, 2, "");
    expect(await c.drawingWhen((d) => d.version === 2)).toMatchObject({
      sheet: { title: "part-leg" },
      stale: true,
      reason: "There are no posts or rails to draw yet.",
    });
  });

  it("is null with a reason when there never was a chair", async () => {
    const c = await watching("wrong");
    expect(await c.drawingWhen((d) => d.version === 1)).toMatchObject({
      sheet: null,
      reason: "Nothing can be drawn until line 1 is mended: This is wrong.",
    });
  });

  it("goes on when a watched file is closed and opened again", async () => {
    const c = await watching("part-leg");
    await c.drawingWhen((d) => d.version === 1);
    c.close(uri);
    c.open(uri, "part-arm", 5);
    expect(await c.drawingWhen((d) => d.version === 5)).toMatchObject({
      sheet: { title: "part-arm" },
      stale: false,
    });
  });

  it("follows even while the text changes faster than it can be drawn", async () => {
    const services = standIn();
    const c = await connect({
      ...services,
      *draw(chair, asked) {
        // Longer than the time between two changes, in many steps.
        for (const begun = performance.now(); performance.now() - begun < 40; ) yield;
        return yield* services.draw(chair, asked);
      },
    });
    c.open(uri, "part-leg");
    void c.client.sendNotification(WATCH_DRAWING, { uri, watch: true });
    for (let version = 2; c.drawings.length < 4; version++) {
      c.change(uri, version, `part-leg\n# ${version}`);
      await new Promise(setImmediate);
    }
    const versions = c.drawings.map((d) => d.version);
    expect(versions).toEqual([...versions].sort((a, b) => a - b));
  });

  it("comes when it is asked for, watched or not, and is null for a file that is not open", async () => {
    const c = await connect(standIn());
    c.open(uri, "part-leg\nwrong-rail");
    expect(await c.client.sendRequest(DRAW, { uri })).toMatchObject({
      version: 1,
      sheet: { title: "part-leg" },
      faults: [{ letter: "A", severity: "error", message: "This is wrong." }],
    });
    expect(await c.client.sendRequest(DRAW, { uri: "file:///mess/other.chair" })).toBeNull();
    expect(c.drawings).toEqual([]);
  });

  it("stops when no longer watched", async () => {
    const c = await watching("part-leg");
    await c.drawingWhen((d) => d.version === 1);
    void c.client.sendNotification(WATCH_DRAWING, { uri, watch: false });
    c.change(uri, 2, "part-leg\npart-rail");
    await c.diagnosticsWhen((p) => p.version === 2);
    c.change(uri, 3, "part-leg");
    await c.diagnosticsWhen((p) => p.version === 3);
    // The first may have been drawn twice: when it was opened and when it was watched.
    expect(new Set(c.drawings.map((d) => d.version))).toEqual(new Set([1]));
  });
});
