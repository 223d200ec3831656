/**
 * What passes between server, extension and panel about the drawing. Each message is checked where it arrives in the extension.
 */
import * as z from "zod";
import type { BoardsShown } from "../../server/drawing/boards/shown.ts";
import { overlayNames } from "../../server/drawing/sheet.ts";
import type { DrawingParams, RangeResult } from "../../server/main/protocol.ts";
import { type LookName, type ShowName, showNames } from "./webview/showable.ts";

const point = z.tuple([z.number(), z.number()]);
const span = z.object({ start: z.number().int().nonnegative(), end: z.number().int().nonnegative() });

const overlay = z.object({
  name: z.enum(["floor", "sitter"]),
  strokes: z.array(
    z.object({
      points: z.array(point),
      is: z.enum(["foot", "support", "tipping", "load", "centre", "quarter", "body", "arm"]),
    }),
  ),
  words: z.array(
    z.object({
      text: z.string(),
      of: z.enum(["line", "load", "weight"]),
      at: point,
      anchor: z.enum(["start", "middle", "end"]),
      upright: z.literal(true).optional(),
    }),
  ),
});

const sheet = z.object({
  title: z.string(),
  views: z.array(
    z.object({
      name: z.enum(["front", "side", "plan"]),
      caption: z.string(),
      captionAt: point,
      bounds: z.object({ x: z.number(), y: z.number(), width: z.number(), height: z.number() }),
      strokes: z.array(
        z.object({
          points: z.array(point),
          is: z.enum(["edge", "outline", "floor", "centre", "seat", "before", "hidden"]),
          part: z.string().optional(),
          changed: z.literal(true).optional(),
        }),
      ),
      areas: z.array(
        z.object({ part: z.string(), at: span, file: z.string().optional(), points: z.array(point) }),
      ),
      dimensions: z.array(
        z.object({
          name: z.string(),
          label: z.string(),
          labelAt: point,
          upright: z.literal(true).optional(),
          lines: z.array(z.string()).optional(),
          line: z.tuple([point, point]),
          extensions: z.array(z.tuple([point, point])),
          arc: z.array(point).optional(),
        }),
      ),
      overlays: z.array(overlay).optional(),
    }),
  ),
  width: z.number().positive(),
  height: z.number().positive(),
  scaleBar: z.object({
    at: point,
    length: z.number(),
    label: z.string(),
    divisions: z.number().int().positive(),
  }),
  titleAt: z.object({ x: z.number(), y: z.number(), width: z.number() }).optional(),
  notes: z.array(z.string()).optional(),
});

const adjustable = z.object({
  name: z.string(),
  description: z.string().optional(),
  value: z.number(),
  low: z.number(),
  high: z.number(),
  step: z.number().positive(),
  unit: z.enum(["mm", "cm", "in", "deg", ""]),
  at: span,
  plain: z.boolean(),
});

const fault = z.object({
  letter: z.string(),
  severity: z.enum(["error", "warning", "information", "hint"]),
  code: z.string(),
  message: z.string(),
  at: z.number().int().nonnegative(),
  parts: z.array(z.object({ part: z.string(), towards: z.string().optional() })),
});

const told = z.object({
  part: z.string(),
  title: z.string(),
  description: z.string().optional(),
  lines: z.array(z.string()),
  brief: z.array(z.string()).optional(),
});

const faces = z.object({
  post: z.string(),
  overall: z.object({ from: z.number(), to: z.number(), label: z.string() }),
  half: z.number().positive(),
  sections: z.array(z.object({ at: z.number(), label: z.string() })),
  faces: z.array(
    z.object({
      caption: z.string(),
      strokes: z.array(z.object({ points: z.array(point), is: z.enum(["edge", "mouth", "hidden", "peg"]) })),
      mouths: z.array(z.object({ part: z.string(), label: z.string(), at: point })),
    }),
  ),
});

const strength = z.object({
  width: z.number().positive(),
  height: z.number().positive(),
  says: z.string(),
  cases: z.array(
    z.object({
      name: z.string(),
      title: z.string(),
      says: z.string(),
      parts: z.array(
        z.object({
          part: z.string(),
          points: z.array(point),
          bent: z.array(point),
          weight: z.number(),
          label: z.string().optional(),
          labelAt: point,
        }),
      ),
      joints: z.array(
        z.object({
          name: z.string(),
          at: point,
          radius: z.number(),
          label: z.string().optional(),
        }),
      ),
    }),
  ),
});

const comparison = z.object({
  label: z.string(),
  says: z.string().optional(),
  sections: z.array(
    z.object({
      name: z.enum(["chosen", "follows", "found", "anew"]),
      title: z.string(),
      rows: z.array(
        z.object({
          cells: z.array(z.string()),
          at: span.extend({ side: z.enum(["old", "new"]) }).optional(),
          part: z.string().optional(),
        }),
      ),
      more: z.number().int(),
    }),
  ),
});

/** Long lists of numbers, looked through in one go. */
const numbers = z.custom<number[]>((given) => Array.isArray(given) && given.every(Number.isFinite));
const triple = z.tuple([z.number(), z.number(), z.number()]);

const body = z.object({
  places: numbers,
  directions: numbers,
  pieces: z.array(z.object({ corners: numbers, planes: numbers })),
  edges: numbers,
});

const turnable = z.object({
  bench: z.boolean(),
  parts: z.array(z.object({ name: z.string(), body })),
  stance: z.object({ rotation: z.tuple([triple, triple, triple]), shift: triple }),
  tenons: z.array(z.object({ part: z.string(), body })),
  offsets: z.array(z.object({ part: z.string(), by: triple })),
  glueUps: z.array(
    z.object({
      title: z.string(),
      lines: z.array(z.string()),
      parts: z.array(z.object({ name: z.string(), by: triple })),
    }),
  ),
});

const drawing = z.object({
  uri: z.string(),
  version: z.number().int(),
  sheet: sheet.nullable(),
  stale: z.boolean(),
  reason: z.string().optional(),
  adjustables: z.array(adjustable).optional(),
  faults: z.array(fault).optional(),
  told: z.array(told).optional(),
  faces: faces.optional(),
  comparison: comparison.optional(),
  pictorial: turnable.optional(),
  strength: strength.optional(),
}) satisfies z.ZodType<DrawingParams>;

/** A drawing from the server, or nothing when it is not one. */
export function readDrawing(given: unknown): DrawingParams | undefined {
  return drawing.safeParse(given).data;
}

/** The pictorial view as the panel shows it, to be kept beside the others. */
const picture = z.object({
  caption: z.string(),
  width: z.number().positive(),
  height: z.number().positive(),
  strokes: z.array(
    z.object({ points: z.array(point.readonly()), is: z.enum(["edge", "outline"]), part: z.string() }),
  ),
  tenons: z.array(z.object({ points: z.array(point.readonly()), part: z.string() })),
});
export type PictureShown = z.infer<typeof picture>;

/** Panel → extension. */
const fromPanel = z.discriminatedUnion("type", [
  /** The panel has loaded, or loaded anew, and wants what there is. */
  z.object({ type: z.literal("ready"), overlays: z.array(z.enum(overlayNames)) }),
  /** What is shown now. */
  z.object({ type: z.literal("shown"), names: z.array(z.enum(showNames)), words: z.boolean() }),
  /** The boards are to be shown, or no longer; and the plan that there is will do. */
  z.object({ type: z.literal("boards"), on: z.boolean() }),
  z.object({ type: z.literal("stopBoards") }),
  /** What is to be laid over the drawing. */
  z.object({ type: z.literal("overlays"), names: z.array(z.enum(overlayNames)) }),
  /** The frame at work is to be shown, or no longer. */
  z.object({ type: z.literal("strength"), on: z.boolean() }),
  /** The post to be shown from each of its faces; none when that is off. */
  z.object({ type: z.literal("post"), name: z.string().optional() }),
  /** A part was chosen: show its text. */
  z.object({ type: z.literal("reveal"), part: z.string() }),
  /** A finding was chosen: show its place in the text. */
  z.object({ type: z.literal("revealFault"), letter: z.string() }),
  /** A place in the text was chosen. */
  span.extend({ type: z.literal("revealPlace") }),
  /** The chair behind is to be taken away. */
  z.object({ type: z.literal("endComparison") }),
  /** Asks how far an adjustable value may go. */
  z.object({ type: z.literal("range"), name: z.string() }),
  /** Asks for what the pictorial view needs, or no longer. */
  z.object({ type: z.literal("pictorial"), wanted: z.enum(["whole", "parts"]).optional() }),
  /** The drawing is to be saved or printed, with the pictorial view as it is shown. */
  z.object({ type: z.literal("keep"), what: z.enum(["save", "print"]), picture: picture.optional() }),
  /** An adjustable value was moved; `done` when it was let go. */
  z.object({ type: z.literal("adjust"), name: z.string(), value: z.number(), done: z.boolean() }),
]);
export type FromPanel = z.infer<typeof fromPanel>;

/** A message from the panel, or nothing when it is not one. */
export function readFromPanel(given: unknown): FromPanel | undefined {
  return fromPanel.safeParse(given).data;
}

const range = z.object({
  name: z.string(),
  version: z.number().int(),
  low: z.number(),
  high: z.number(),
  free: z.array(z.tuple([z.number(), z.number()])),
  bands: z.array(
    z.object({
      from: z.number(),
      to: z.number(),
      severity: z.enum(["error", "warning"]),
      label: z.string(),
      message: z.string(),
    }),
  ),
  words: z.string(),
}) satisfies z.ZodType<RangeResult>;

/** How far a value may go, from the server, or nothing when it is not that. */
export function readRange(given: unknown): RangeResult | undefined {
  return range.safeParse(given).data;
}

/** The boards as far as they are planned, or why they are not. */
export type BoardsTold =
  | {
      is: "boards";
      shown: BoardsShown;
      /** The boards, not the stock list, are of the text before. */
      stale: boolean;
      /** It looks for something better. */
      progress?: { pass: number; of: number };
      stopped?: true;
    }
  | { is: "refused"; because: string };

/** Extension → panel. */
export type ToPanel =
  /** Whose drawing this panel shows: its file's address, and whether it stays with it; kept over a reload. */
  | { type: "subject"; uri: string; locked: boolean }
  | { type: "drawing"; drawing: DrawingParams }
  /** How far an adjustable value may go in the version that the drawing is of. */
  | { type: "range"; range: RangeResult }
  | { type: "boards"; boards: BoardsTold }
  /** The parts the caret is in, by full name. */
  | { type: "highlight"; parts: string[] }
  /** The drawing is to be kept: the panel answers with a message of this type, which has its pictorial view. */
  | { type: "keep"; what: "save" | "print" }
  /** One of the views, or all; nearer or farther; something shown or no longer; all of it in words. */
  | { type: "look"; look: LookName }
  | { type: "zoom"; nearer: boolean }
  | { type: "show"; name: ShowName; on: boolean }
  | { type: "words"; on: boolean }
  /** Words for a screen reader, about something the maker asked for. */
  | { type: "say"; words: string };

const panelState = z.object({ uri: z.string(), locked: z.boolean().default(false) });
type PanelState = z.infer<typeof panelState>;

/** What a panel kept over a reload of the window, or nothing when that cannot be read. */
export function readPanelState(given: unknown): PanelState | undefined {
  return panelState.safeParse(given).data;
}
