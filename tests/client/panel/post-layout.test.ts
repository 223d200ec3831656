import { describe, expect, it } from "vitest";
import { estimate } from "../../../client/panel/webview/lettering/type-scale.ts";
import { postLaid } from "../../../client/panel/webview/post-layout.ts";
import { postFaces } from "../../../server/drawing/post-faces.ts";
import { chairs } from "./sample-sheets.ts";

describe("a post's faces in the panel", () => {
  it.each([360, 900])("have all names and figures, none on another, in a room %i wide", (width) => {
    for (const [path, { study }] of chairs) {
      for (const name of study.chair.posts.keys()) {
        const faces = postFaces(study.chair, name)!;
        const { placed, width: wide, height, overall } = postLaid(faces, width, estimate);
        const said = placed.map(({ lines }) => lines.join(" "));
        for (const { caption, mouths } of faces.faces) {
          expect(said).toContain(caption);
          for (const { part, label } of mouths)
            expect(said, `${path}, ${name}`).toContain(`${part} ${label}`);
        }
        expect(said).toContain(faces.overall.label);
        expect(said).toContain(faces.sections[0]!.label);
        for (const [k, { box, lines }] of placed.entries()) {
          expect(box.left).toBeGreaterThanOrEqual(0);
          expect(box.right).toBeLessThanOrEqual(wide);
          expect(box.foot).toBeLessThanOrEqual(height);
          for (const other of placed.slice(k + 1)) {
            const apart =
              box.left >= other.box.right ||
              other.box.left >= box.right ||
              box.top >= other.box.foot ||
              other.box.top >= box.foot;
            expect(apart, `${path}, ${name}: ${lines} on ${other.lines}`).toBe(true);
          }
        }
        expect(overall.line[1][0]).toBeLessThanOrEqual(wide);
      }
    }
  });
});
