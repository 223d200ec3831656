/**
 * The steps of the walkthrough: each is ticked when it has come about, not when its button was pressed.
 */
import { commands, type Disposable, languages, workspace } from "vscode";

/** Names of the context keys by which the manifest knows that a step is done. */
type Step = "chairStarted" | "drawingOpened" | "hoverShown" | "findingShown";

/** Ticks a step. */
export function done(step: Step): void {
  void commands.executeCommand("setContext", `seatwright.${step}`, true);
}

/** Ticks the last step when a chair first has a finding. */
export function watchFindings(language: string): Disposable {
  const watch = languages.onDidChangeDiagnostics(({ uris }) => {
    const chairs = workspace.textDocuments.filter((document) => document.languageId === language);
    const here = chairs.filter(({ uri }) => uris.some((each) => each.toString() === uri.toString()));
    if (!here.some(({ uri }) => languages.getDiagnostics(uri).length > 0)) return;
    done("findingShown");
    watch.dispose();
  });
  return watch;
}
