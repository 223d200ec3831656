/**
 * The open files and what is known of them. A study is kept for one version of a file and for the texts it read from others.
 */
import { TextDocument, type TextDocumentContentChangeEvent } from "vscode-languageserver-textdocument";
import type { View } from "../editor/view.ts";
import type { Study } from "../study.ts";
import { sameAddress } from "./addresses.ts";
import type { Files } from "./files.ts";
import type { Services } from "./put-to-work.ts";
import { type Entry, viewOfFile } from "./view-of-file.ts";

export interface Views {
  open(uri: string, languageId: string, version: number, text: string): void;
  change(uri: string, version: number, changes: TextDocumentContentChangeEvent[]): void;
  close(uri: string): void;
  /** An open file. */
  opened(uri: string): View | undefined;
  /** An open file, or one that can be read. */
  get(uri: string): View | undefined;
  /** All open files. */
  all(): View[];
  /** Open files whose study read this one. */
  dependents(uri: string): View[];
  /** The text of a file has come: studies made without it no longer hold. */
  arrived(uri: string): void;
  /** A file that is not open has changed: what was worked out from it no longer holds. */
  forget(uri: string): void;
}

/** An empty set of views over these files. */
export function createViews(services: Services, files: Files): Views {
  const open = new Map<string, Entry>();
  /** Files read for searches over the workspace or for the other side of a `use`, by address. */
  const closed = new Map<string, Entry>();

  function textOf(address: string): string | undefined {
    return open.get(sameAddress(address))?.view.document.getText() ?? files.read(address);
  }

  function other(address: string): TextDocument | undefined {
    const entry = open.get(sameAddress(address));
    if (entry) return entry.view.document;
    const text = files.read(address);
    return text === undefined ? undefined : TextDocument.create(address, "chair", 0, text);
  }

  const enter = (document: TextDocument, earlier?: Study): Entry =>
    viewOfFile({ document, services, textOf, other, ...(earlier && { earlier }) });

  function changed(uri: string) {
    const key = sameAddress(uri);
    closed.delete(key);
    for (const entry of [...open.values(), ...closed.values()]) if (entry.reads.has(key)) entry.drop();
  }

  return {
    open(uri, languageId, version, text) {
      open.set(sameAddress(uri), enter(TextDocument.create(uri, languageId, version, text)));
      changed(uri);
    },
    change(uri, version, changes) {
      const before = open.get(sameAddress(uri));
      if (!before) return;
      // A fresh document, so that whoever still holds the older view keeps its text.
      const { document } = before.view;
      const copy = TextDocument.create(
        document.uri,
        document.languageId,
        document.version,
        document.getText(),
      );
      open.set(sameAddress(uri), enter(TextDocument.update(copy, changes, version), before.view.lastStudy));
      changed(uri);
    },
    close(uri) {
      open.delete(sameAddress(uri));
      files.forget(uri);
      changed(uri);
    },
    opened: (uri) => open.get(sameAddress(uri))?.view,
    get(uri) {
      const key = sameAddress(uri);
      const entry = open.get(key);
      if (entry) return entry.view;
      const text = files.read(uri);
      if (text === undefined) return undefined;
      const kept = closed.get(key);
      if (kept && kept.view.document.getText() === text) return kept.view;
      const fresh = enter(TextDocument.create(uri, "chair", 0, text));
      closed.set(key, fresh);
      return fresh.view;
    },
    all: () => [...open.values()].map((entry) => entry.view),
    dependents(uri) {
      const key = sameAddress(uri);
      return [...open.values()].filter((entry) => entry.reads.has(key)).map((entry) => entry.view);
    },
    arrived: changed,
    forget(uri) {
      files.forget(uri);
      changed(uri);
    },
  };
}
