import { describe, expect, it } from "vitest";
import {
  atFirst,
  eyeAfter,
  eyePulled,
  nameOfEye,
  readTurned,
} from "../../../client/panel/webview/pictorial/state.ts";
import { eyes, spokenEye } from "../../../server/drawing/pictorial/eye.ts";

const pressed = (keys: readonly (readonly [key: string, shift: boolean])[]) =>
  keys.reduce((eye, [key, shift]) => eyeAfter(eye, key, shift) ?? eye, atFirst.eye);

describe("turning the pictorial view", () => {
  it("goes by 15° a key and by 5° with Shift, the chair the way of the arrow", () => {
    expect(spokenEye(pressed([["ArrowLeft", false]]))).toBe(
      "from 15° on from the front left, 25° above level",
    );
    expect(spokenEye(pressed([["ArrowRight", true]]))).toBe(
      "from 5° back from the front left, 25° above level",
    );
    expect(spokenEye(pressed([["ArrowDown", false]]))).toBe("from the front left, 40° above level");
    expect(spokenEye(pressed([["ArrowUp", true]]))).toBe("from the front left, 20° above level");
  });

  it("is back where it was after a whole turn, to the last bit", () => {
    expect(pressed(Array.from({ length: 24 }, () => ["ArrowLeft", false]))).toEqual(eyes["front-left"]);
    expect(pressed(Array.from({ length: 72 }, () => ["ArrowRight", true]))).toEqual(eyes["front-left"]);
  });

  it("goes no farther than straight above and straight below", () => {
    expect(spokenEye(pressed(Array.from({ length: 9 }, () => ["ArrowDown", false])))).toBe("from above");
    expect(spokenEye(pressed(Array.from({ length: 9 }, () => ["ArrowUp", false])))).toBe("from below");
  });

  it("goes back to the front left by 0, and leaves other keys alone", () => {
    expect(eyeAfter(eyes.back!, "0", false)).toEqual(eyes["front-left"]);
    for (const key of ["n", "+", "Enter", "toString"])
      expect(eyeAfter(eyes.back!, key, false)).toBeUndefined();
  });

  it("follows a pull: to the right shows more of the sitter's right, down shows more of the top", () => {
    const { round, above } = eyePulled(eyes.front!, [10, 10]);
    expect(round).toBeGreaterThan(Math.PI);
    expect(above).toBeGreaterThan(0);
  });

  it("knows the sides and corners by name, and what lies between by none", () => {
    for (const [name, eye] of Object.entries(eyes)) expect(nameOfEye(eye)).toBe(name);
    expect(nameOfEye({ round: 1, above: 0.1 })).toBeUndefined();
  });

  it("keeps what can be used of what was kept", () => {
    expect(readTurned(undefined)).toEqual(atFirst);
    expect(readTurned({ eye: { round: "no" }, apart: 7, joints: "yes", glueUp: -1 })).toEqual({
      ...atFirst,
      apart: 1,
    });
    const kept = { eye: eyes.back!, apart: 0.5, joints: true, glueUp: 2 };
    expect(readTurned(kept)).toEqual(kept);
  });
});
