/**
 * What is done each time an open file is looked at: findings and drawing are sent, then mends are tried.
 */
import type { Connection } from "vscode-languageserver";
import type { Problem } from "../../grammar/problem.ts";
import { printWorked } from "../chair/values/print.ts";
import { diagnostics } from "../editor/diagnostics.ts";
import type { Settings } from "../editor/settings.ts";
import type { View } from "../editor/view.ts";
import { messageOf } from "../mends/words.ts";
import { isOfReading } from "../rules/file/language.ts";
import { isLateFinding } from "../rules/late-findings.ts";
import type { LateWork } from "../strength/late.ts";
import type { Study } from "../study.ts";
import type { Drawings } from "./drawings.ts";
import type { Files } from "./files.ts";
import { finishInTurns } from "./in-turns.ts";
import { DRAWING } from "./protocol.ts";
import type { Views } from "./views.ts";
import { filesCome } from "./world.ts";

/** A drawing that nobody waits for any more is given up, but not when none has come for so long, ms. */
const LONGEST_UNSHOWN = 150;

/** A file that is looked at again within so long is being typed in; it rests once it has not been for `REST`, ms. */
const TYPING = 1000;
const REST = 300;

interface Given {
  connection: Connection;
  views: Views;
  files: Files;
  drawings: Drawings;
  settings(uri: string): Promise<Settings>;
  /** Whether the client asks for findings itself; then they are not sent. */
  pulls(): boolean;
  /** Asks the client to ask again for hints and lenses, and for findings where those are others. */
  refresh(findings: boolean): void;
  /** Hears of what fails. */
  report(name: string, error: unknown): void;
  /** How what is late is worked out. */
  late(): Promise<LateWork>;
}

export interface Looks {
  /** Sends findings and drawing of a file as it is now; done when both are on their way. Mends are tried after that. */
  look(view: View): Promise<void>;
  /** The file was closed. */
  forget(uri: string): void;
}

/** What is late, in few words: its findings, each with a mark, and its values as printed. */
function lateTold({ problems, late, design }: Study): string {
  const findings = problems
    .filter(isLateFinding)
    .map(({ code, message, start }) => `!${code} ${start} ${message}`);
  const values = (late?.values ?? []).map((each) => `${each.name} ${printWorked(each, design.units)}`);
  return [...findings, ...values].join("\n");
}

export function createLooks(given: Given): Looks {
  const { connection, views, files, drawings, settings, report } = given;
  /** When the last drawing of a file was sent, or the first begun, and of which version it was. */
  const shown = new Map<string, number>();
  const sent = new Map<string, number>();
  /** When a file was last looked at. */
  const looked = new Map<string, number>();
  /** Rules and values whose failing has been logged. */
  const failed = new Set<string>();

  function reportFailures({ failures }: Study) {
    for (const { what, thrown } of failures) {
      if (failed.has(what)) continue;
      failed.add(what);
      report(what, thrown);
    }
  }

  async function publish(view: View, chosen: Settings) {
    const { uri, document } = view;
    await connection.sendDiagnostics({
      uri,
      version: document.version,
      diagnostics: diagnostics(view, chosen),
    });
  }

  /** Sends the drawing of a file that is watched. */
  async function redraw(view: View, chosen: Settings, stop: () => boolean) {
    if (!drawings.watched(view.uri) || stop()) return;
    const drawing = await drawings.draw(view, chosen, stop);
    // Closed meanwhile, and perhaps opened anew with its versions counted from the beginning.
    const now = views.opened(view.uri)?.document.version ?? 0;
    if (!drawing || drawing.version > now || drawing.version < (sent.get(view.uri) ?? 0)) return;
    shown.set(view.uri, performance.now());
    sent.set(view.uri, drawing.version);
    await connection.sendNotification(DRAWING, drawing);
  }

  /** What is late of each file as it was last told. */
  const toldLate = new Map<string, string>();

  /** Works out what is late once the findings are shown, and shows it where it is other than before. */
  async function deepened(view: View, chosen: Settings, stop: () => boolean) {
    if (stop()) return;
    const work = await given.late();
    await finishInTurns(view.deepen(work), stop, true);
    if (stop() || !view.study.late) return;
    reportFailures(view.study);
    const told = lateTold(view.study);
    const before = toldLate.get(view.uri);
    toldLate.set(view.uri, told);
    if (!given.pulls() && told.includes("!")) await publish(view, chosen);
    if (told !== before) given.refresh(told.includes("!") || before?.includes("!") === true);
    // What is drawn may tell of it: the frame at work always, findings where they are other than before.
    if (told !== before || drawings.showsStrength(view.uri)) await redraw(view, chosen, stop);
  }

  /**
   * Done once typing rests: what is late takes longer than findings and drawing together, and between two keystrokes nobody reads it. Nothing
   * is waited for after the first look, after one edit alone, and while the drawing shows it.
   */
  async function rested({ uri }: View, before: number | undefined) {
    if (before === undefined || performance.now() - before > TYPING || drawings.showsStrength(uri)) return;
    await new Promise((resolve) => setTimeout(resolve, REST));
  }

  /** Tries mends of some findings once they are shown; findings and drawing are sent again with them. */
  async function mended(
    view: View,
    chosen: Settings,
    stop: () => boolean,
    of: (problem: Problem) => boolean,
  ) {
    const untried = view.study.problems.filter((problem) => !problem.mends && of(problem));
    if (stop() || untried.length === 0) return;
    await finishInTurns(view.mend(untried), stop, true);
    if (stop() || untried.every((problem) => messageOf(problem) === problem.message)) return;
    if (given.pulls()) given.refresh(true);
    else await publish(view, chosen);
    await redraw(view, chosen, stop);
  }

  return {
    /** Each step asks again whether this version is still the newest. */
    async look(view) {
      const newest = () => views.opened(view.uri) === view;
      const last = looked.get(view.uri);
      looked.set(view.uri, performance.now());
      const watched = drawings.watched(view.uri);
      const before = shown.get(view.uri) ?? performance.now();
      shown.set(view.uri, before);
      // A drawing that is older than the text is still better than none for long: a value may be dragged without a pause.
      const stop = () =>
        !newest() && !(watched && performance.now() - (shown.get(view.uri) ?? before) > LONGEST_UNSHOWN);
      await filesCome(view, files, stop);
      if (newest()) reportFailures(view.study);
      const chosen = await settings(view.uri);
      if (!given.pulls() && newest()) await publish(view, chosen);
      await redraw(view, chosen, stop);
      const old = () => !newest();
      const mend = (of: (problem: Problem) => boolean) =>
        mended(view, chosen, old, of).catch((error) => report("trying mends", error));
      // A word that is misspelt is mended by one trial, and a maker looks for that at once.
      mend(isOfReading)
        .then(() => rested(view, last))
        .then(() => deepened(view, chosen, old))
        .catch((error) => report("strength", error))
        .then(() => mend(() => true));
    },
    forget(uri) {
      shown.delete(uri);
      sent.delete(uri);
      toldLate.delete(uri);
      looked.delete(uri);
    },
  };
}
