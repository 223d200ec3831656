/**
 * The pictorial view: the chair turned in the page, by the same pass that draws the other views. Loaded when it is first asked for.
 */
import { eyes, spokenEye } from "../../../../server/drawing/pictorial/eye.ts";
import { captionOf, framed } from "../../../../server/drawing/pictorial/framed.ts";
import { lookAt, middleSeen, type Room, roomOf } from "../../../../server/drawing/pictorial/look.ts";
import { unpacked } from "../../../../server/drawing/pictorial/packed.ts";
import type { Turnable } from "../../../../server/drawing/pictorial/turnable.ts";
import type { Point } from "../../../../server/drawing/sheet.ts";
import type { DrawingParams } from "../../../../server/main/protocol.ts";
import type { Pictorial, PictorialGiven } from "../pictorial-view.ts";
import { createClosing } from "./closing.ts";
import { createControls } from "./controls.ts";
import { createPictureElements } from "./picture.ts";
import { eyeAfter, eyePulled, readTurned, type Turned } from "./state.ts";

/** How long nothing turns before it counts as at rest, ms. */
const REST = 120;

/** Nothing to show yet. */
export function create(given: PictorialGiven): Pictorial {
  const { focus } = given;
  let turned = readTurned(given.turned);
  let turnable: Turnable | undefined;
  let room: Room | undefined;
  let drawing: DrawingParams | undefined;
  let packed: DrawingParams["pictorial"];
  let changed: ReadonlySet<string> = new Set();
  let frame: number | undefined;
  let isMoving = false;
  let sayWhenAtRest = false;
  /** The scale that it was at rest at last. */
  let restedAt: number | undefined;
  let resting: ReturnType<typeof setTimeout> | undefined;
  const picture = createPictureElements(given.flagged);
  const closing = createClosing((apart) => turn({ ...turned, apart }, { moving: true }));

  const wantsParts = () => turned.apart > 0 || turned.glueUp !== undefined;
  const glueUps = () => turnable?.glueUps ?? [];

  const controls = createControls(given.controls, {
    from: (name) => turn({ ...turned, eye: eyes[name] ?? turned.eye }, { said: true }),
    joints: (joints) => turn({ ...turned, joints }, {}),
    apart(apart) {
      closing.stop();
      turn({ ...turned, apart }, { moving: true });
    },
    glueUp: goTo,
    step(by) {
      const at = turned.glueUp;
      const next = at === undefined ? 0 : at + by;
      const there = next >= 0 && next < glueUps().length ? next : undefined;
      // Forwards as they are glued: what is open comes together before the next is laid out.
      if (by > 0 && at !== undefined) closing.run(turned.apart, () => goTo(there));
      else goTo(there);
    },
  });

  function goTo(glueUp: number | undefined) {
    closing.stop();
    const { eye, joints } = turned;
    turn({ eye, joints, apart: glueUp === undefined ? 0 : 1, ...(glueUp !== undefined && { glueUp }) }, {});
    const now = glueUp === undefined ? undefined : glueUps()[glueUp];
    given.told(
      now
        ? `Glue-up ${glueUp! + 1} of ${glueUps().length}: ${now.title}. ${now.lines.join(" ")}`
        : "The whole chair.",
    );
  }

  function turn(next: Turned, { moving = false, said = false }) {
    const before = { parts: wantsParts(), glueUp: turned.glueUp };
    turned = next;
    if (wantsParts() !== before.parts) given.asks(wantsParts() ? "parts" : "whole");
    if (wantsParts() !== before.parts || turned.glueUp !== before.glueUp) {
      measure();
      given.resized();
    }
    controls.show(turned, glueUps(), (turnable?.offsets.size ?? 0) > 0);
    sayWhenAtRest ||= said;
    soon(moving);
  }

  function measure() {
    if (!turnable) return;
    const { glueUp } = safe(turned, turnable);
    room = roomOf(turnable, { apart: wantsParts(), ...(glueUp !== undefined && { glueUp }) });
  }

  function shown() {
    if (!turnable || !room) return undefined;
    const look = safe(turned, turnable);
    const caption = captionOf(turnable, look);
    return {
      looked: lookAt(turnable, look),
      caption,
      middle: middleSeen(room, turned.eye),
      room,
      faults: drawing?.faults ?? [],
      changed,
      ...given.seenAt(),
    };
  }

  /** At most once a frame; the rest of it when nothing has moved for a while. */
  function soon(moving: boolean) {
    clearTimeout(resting);
    if (moving) resting = setTimeout(rest, REST);
    // The newest counts: a frame that was asked for while it moved may come after it stopped.
    isMoving = moving;
    frame ??= requestAnimationFrame(() => {
      frame = undefined;
      if (!isMoving) return rest();
      const now = shown();
      if (now) picture.lines(now);
    });
  }

  function rest() {
    given.changed(turned);
    if (sayWhenAtRest) given.told(`Seen ${spokenEye(turned.eye)}.`);
    sayWhenAtRest = false;
    const now = shown();
    if (now) atRest(now);
  }

  function atRest(now: NonNullable<ReturnType<typeof shown>>) {
    restedAt = now.scale;
    picture.rest(now);
    focus.setAttribute("aria-label", now.caption);
    given.drawn(picture.parts, { caption: now.caption, glueUps: glueUps() });
  }

  focus.addEventListener("keydown", (event) => {
    const { key, shiftKey, ctrlKey, metaKey, altKey } = event;
    const eye = ctrlKey || metaKey || altKey ? undefined : eyeAfter(turned.eye, key, shiftKey);
    if (!eye) return;
    event.preventDefault();
    event.stopPropagation();
    turn({ ...turned, eye }, { moving: true, said: true });
  });

  return {
    get wants() {
      return wantsParts() ? "parts" : "whole";
    },
    show(next) {
      drawing = next;
      if (next.pictorial && next.pictorial !== packed) {
        packed = next.pictorial;
        turnable = unpacked(next.pictorial);
        measure();
      }
      changed = new Set(
        (next.sheet?.views ?? []).flatMap(({ strokes }) =>
          strokes.flatMap(({ part, changed }) => (changed && part !== undefined ? [part] : [])),
        ),
      );
      controls.show(turned, glueUps(), (turnable?.offsets.size ?? 0) > 0);
      rest();
    },
    get room() {
      return room && { width: room.width, height: room.height };
    },
    element: picture.element,
    rescaled() {
      const now = isMoving ? undefined : shown();
      if (now && now.scale !== restedAt) atRest(now);
    },
    pulled: (by: Point) => turn({ ...turned, eye: eyePulled(turned.eye, by) }, { moving: true }),
    picture() {
      const now = shown();
      return now && framed(now.looked, now.caption);
    },
    stop() {
      closing.stop();
      clearTimeout(resting);
      if (frame !== undefined) cancelAnimationFrame(frame);
      frame = undefined;
    },
  };
}

/** A glue-up that the text no longer has is the whole chair. */
function safe(turned: Turned, { glueUps }: Turnable): Turned {
  const { glueUp, ...rest } = turned;
  return glueUp !== undefined && glueUps[glueUp] ? turned : rest;
}
