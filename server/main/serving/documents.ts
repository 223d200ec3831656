/**
 * What becomes of files: opened, typed in, closed, changed on disk, come late; and of settings.
 */
import type { Session } from "./session.ts";

/** Keeps the session's views as the client's files are, and looks again at whatever a change touches. */
export function followDocuments(session: Session): void {
  const { connection, views, schedule, drawings, looks, host } = session;

  connection.onDidOpenTextDocument(({ textDocument: { uri, languageId, version, text } }) => {
    views.open(uri, languageId, version, text);
    schedule.touch(uri);
    session.touchDependents(uri);
  });

  connection.onDidChangeTextDocument(({ textDocument: { uri, version }, contentChanges }) => {
    views.change(uri, version, contentChanges);
    schedule.touch(uri);
    session.touchDependents(uri);
  });

  connection.onDidCloseTextDocument(({ textDocument: { uri } }) => {
    schedule.drop(uri);
    drawings.forget(uri);
    looks.forget(uri);
    const dependents = views.dependents(uri);
    views.close(uri);
    if (!session.pulls) void connection.sendDiagnostics({ uri, diagnostics: [] });
    session.touchAll(dependents);
  });

  connection.onDidChangeWatchedFiles(({ changes }) => {
    for (const { uri } of changes) {
      if (views.opened(uri)) continue;
      views.forget(uri);
      session.touchDependents(uri);
    }
  });

  connection.onDidChangeConfiguration(({ settings }) => {
    session.settings.changed(settings);
    session.lookAtAll();
  });

  host.files.onArrival?.((uri) => {
    views.arrived(uri);
    session.touchDependents(uri);
  });
}
