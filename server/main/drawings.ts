/**
 * The drawing of each watched file. It never goes blank: while errors keep parts from being built, the last good sheet is
 * given again with the reason.
 */

import type { Problem } from "../../grammar/problem.ts";
import { editorSentence } from "../../grammar/sentences/editor-sentence.ts";
import type { Steps } from "../../grammar/steps.ts";
import type { Chair } from "../chair/chair.ts";
import { SEAT, stemOf } from "../design/identity.ts";
import { type PackedTurnable, packedSteps } from "../drawing/pictorial/packed.ts";
import { turnableSteps } from "../drawing/pictorial/turnable.ts";
import { type PostFaces, postFaces } from "../drawing/post-faces.ts";
import type { Behind, OverlayName, Sheet } from "../drawing/sheet.ts";
import { type StrengthShown, strengthShown } from "../drawing/strength-view.ts";
import { type PartTold, partsTold } from "../editor/about/parts-told.ts";
import { adjustables } from "../editor/adjustable.ts";
import { faultsOf } from "../editor/faults.ts";
import type { Settings } from "../editor/settings.ts";
import type { View } from "../editor/view.ts";
import type { Comparing } from "./comparing.ts";
import { finishInTurns } from "./in-turns.ts";
import type { ComparisonTold, DrawingParams, OldChair, PictorialWanted } from "./protocol.ts";

interface Good {
  sheet: Sheet;
  parts: Set<string>;
  told: PartTold[];
  comparison?: ComparisonTold;
  pictorial?: PackedTurnable;
}

/** What is asked for beside the sheet: laid over it, and a post from each of its faces. */
interface Asked {
  overlays: readonly OverlayName[];
  post?: string;
  /** The chair to lay behind it. */
  compareWith?: OldChair;
  /** The frame at work. */
  strength?: true;
  /** The chair to be turned, whole or in parts. */
  pictorial?: PictorialWanted;
}

export interface Drawings {
  /** Starts or stops drawing a file, with what is asked for. */
  watch(uri: string, watch: boolean, asked?: Asked): void;
  watched(uri: string): boolean;
  /** Whether the frame at work is asked for. */
  showsStrength(uri: string): boolean;
  /** The drawing to show for this version, made in turns; nothing when `stop` says that nobody waits for it any more. */
  draw(view: View, settings: Settings, stop: () => boolean): Promise<DrawingParams | undefined>;
  /** The file was closed: its last good drawing is let go. */
  forget(uri: string): void;
}

/** Drawings made by `drawing`; `failed` hears when drawing itself goes wrong. */
export function createDrawings(
  drawing: (chair: Chair, asked: readonly OverlayName[], behind?: Behind) => Steps<Sheet>,
  failed: (error: unknown) => void,
  comparing?: Comparing,
): Drawings {
  /** What is asked for beside each file's drawing. */
  const watching = new Map<string, Asked>();
  const lastGood = new Map<string, Good>();

  async function fresh(view: View, stop: () => boolean): Promise<Good | { reason: string } | undefined> {
    const { chair } = view.study;
    const parts = partsOf(chair);
    const lost = lostToError(view, lastGood.get(view.uri)?.parts ?? new Set(), parts);
    if (lost)
      return {
        reason: editorSentence("drawing.part-until", { part: lost.part, ...placed(view, lost.error) }),
      };
    if (!parts.size) {
      const error = view.study.problems.find(isError);
      return {
        reason: error
          ? editorSentence("drawing.nothing-until", placed(view, error))
          : editorSentence("drawing.none"),
      };
    }
    try {
      const beside = await compared(view);
      const overlays = watching.get(view.uri)?.overlays ?? [];
      const sheet = await finishInTurns(drawing(chair, overlays, beside?.behind), stop);
      const words = await told(view, stop);
      const pictorial = await turnable(chair, watching.get(view.uri)?.pictorial, stop);
      if (!sheet || !words || pictorial === "stopped") return undefined;
      const more = { ...(beside && { comparison: beside.told }), ...(pictorial && { pictorial }) };
      return { sheet, parts, told: words, ...more };
    } catch (fault) {
      failed(fault);
      return { reason: editorSentence("drawing.failed") };
    }
  }

  /** The chair it is compared with; a drawing without it is better than none. */
  async function compared(view: View) {
    const old = watching.get(view.uri)?.compareWith;
    try {
      return old && (await comparing?.with(view, old));
    } catch (fault) {
      failed(fault);
      return undefined;
    }
  }

  /** A drawing that cannot be turned is better than none. */
  async function turnable(chair: Chair, wanted: PictorialWanted | undefined, stop: () => boolean) {
    if (!wanted) return undefined;
    const bench = wanted === "parts";
    try {
      return (await finishInTurns(readyToTurn(chair, bench), stop)) ?? "stopped";
    } catch (fault) {
      failed(fault);
      return undefined;
    }
  }

  /** A drawing without words is better than none. */
  async function told(view: View, stop: () => boolean): Promise<PartTold[] | undefined> {
    try {
      return await finishInTurns(partsTold(view), stop);
    } catch (fault) {
      failed(fault);
      return [];
    }
  }

  /** The frame at work, once it is worked out for this version. */
  function strengthIn(view: View): { strength?: StrengthShown } {
    const late = watching.get(view.uri)?.strength && view.study.late;
    try {
      const strength = late && strengthShown(late.strength, view.study.design.units);
      return strength ? { strength } : {};
    } catch (fault) {
      failed(fault);
      return {};
    }
  }

  function facesIn(view: View): { faces?: PostFaces } {
    const post = watching.get(view.uri)?.post;
    try {
      const faces = post === undefined ? undefined : postFaces(view.study.chair, post);
      return faces ? { faces } : {};
    } catch (fault) {
      failed(fault);
      return {};
    }
  }

  return {
    watch: (uri, watch, asked = { overlays: [] }) =>
      void (watch ? watching.set(uri, asked) : watching.delete(uri)),
    watched: (uri) => watching.has(uri),
    showsStrength: (uri) => watching.get(uri)?.strength === true,
    async draw(view, settings, stop) {
      const { uri } = view;
      const drawn = await fresh(view, stop);
      if (!drawn) return undefined;
      if ("sheet" in drawn) lastGood.set(uri, drawn);
      const shown = lastGood.get(uri);
      return {
        uri,
        version: view.document.version,
        sheet: shown?.sheet ?? null,
        stale: shown !== undefined && shown !== drawn,
        ...("reason" in drawn && { reason: drawn.reason }),
        adjustables: adjustables(view),
        faults: faultsOf(view, settings, shown?.parts ?? new Set()),
        told: shown?.told ?? [],
        ...facesIn(view),
        ...strengthIn(view),
        ...(shown?.comparison && { comparison: shown.comparison }),
        ...(shown?.pictorial && { pictorial: shown.pictorial }),
      };
    },
    forget(uri) {
      lastGood.delete(uri);
      comparing?.forget(uri);
    },
  };
}

/**
 * A part that was drawn before and is missing now because of an error, with the error. A part that the maker has taken out of
 * the text is not lost: it is missing from the text too, and the text reads without errors.
 */
function lostToError(
  view: View,
  before: Set<string>,
  now: Set<string>,
): { part: string; error: Problem } | undefined {
  const { tree, design, problems } = view.study;
  for (const part of before) {
    if (now.has(part)) continue;
    const name = stemOf(part);
    const declared = design.names.has(name) || (name === SEAT.stem && design.seat !== undefined);
    const errors = (declared ? problems : tree.problems).filter(isError);
    const error = errors.find((problem) => problem.subject === part || problem.subject === name) ?? errors[0];
    if (error) return { part, error };
  }
  return undefined;
}

function* readyToTurn(chair: Chair, bench: boolean): Steps<PackedTurnable> {
  return yield* packedSteps(yield* turnableSteps(chair, bench), bench);
}

/** Names of all that was built. */
const partsOf = (chair: Chair): Set<string> => new Set(chair.members.keys());

function isError(problem: Problem): boolean {
  return problem.severity === "error";
}

function placed(view: View, { start, message }: Problem): { line: number; message: string } {
  return { line: view.document.positionAt(start).line + 1, message };
}
