/**
 * What the drawing's panel and the status bar ask for.
 */
import { type OverlayName, overlayNames } from "../../drawing/sheet.ts";
import { summary } from "../../editor/summary.ts";
import { isOldChair } from "../comparing.ts";
import {
  DRAW,
  type DrawParams,
  SUMMARY,
  type SummaryParams,
  WATCH_DRAWING,
  type WatchDrawingParams,
} from "../protocol.ts";
import { filesCome } from "../world.ts";
import type { Session } from "./session.ts";

/** Answers requests for a drawing or a summary, and draws what is watched whenever it changes. */
export function answerDrawing(session: Session): void {
  const { connection, views, drawings, runSafe, host } = session;
  const opened = (uri: unknown) => (typeof uri === "string" ? views.opened(uri) : undefined);

  connection.onNotification(WATCH_DRAWING, (params: WatchDrawingParams) => watch(session, params));

  connection.onRequest(SUMMARY, ({ uri }: SummaryParams, token): unknown => {
    const view = opened(uri);
    const summed = async () => {
      if (view) await filesCome(view, host.files);
      return view ? summary(view) : null;
    };
    return session.refusal() ?? runSafe("summary", null, token, summed);
  });

  connection.onRequest(DRAW, ({ uri }: DrawParams, token): unknown => {
    const view = opened(uri);
    const stop = () => token.isCancellationRequested;
    const drawn = async () =>
      (view && (await drawings.draw(view, await session.settings.of(view.uri), stop))) ?? null;
    return session.refusal() ?? runSafe("draw", null, token, drawn);
  });
}

function watch(
  { views, drawings, schedule }: Session,
  { uri, watch: watched, overlays, post, compareWith, pictorial, strength }: WatchDrawingParams,
): void {
  if (typeof uri !== "string") return;
  drawings.watch(views.opened(uri)?.uri ?? uri, watched === true, {
    overlays: known(overlays),
    ...(typeof post === "string" && { post }),
    ...(isOldChair(compareWith) && { compareWith }),
    ...(strength === true && { strength: true as const }),
    ...((pictorial === "whole" || pictorial === "parts") && { pictorial }),
  });
  const view = views.opened(uri);
  if (view && watched) schedule.touch(view.uri);
}

/** Those overlays that there are, of whatever was sent. */
function known(sent: unknown): OverlayName[] {
  return Array.isArray(sent) ? overlayNames.filter((name) => sent.includes(name)) : [];
}
