/**
 * One version of one file: read and worked out when it is first asked for, a step at a time.
 */
import type { TextDocument } from "vscode-languageserver-textdocument";
import type { Steps } from "../../grammar/steps.ts";
import type { Tree } from "../../grammar/tree.ts";
import { type Outline, outlineOf } from "../editor/names/outline.ts";
import type { View } from "../editor/view.ts";
import type { OtherFiles, Study } from "../study.ts";
import { sameAddress } from "./addresses.ts";
import { withCarried } from "./carried.ts";
import { resolveNamed } from "./named-files.ts";
import type { Services } from "./put-to-work.ts";

/** A view with what it was worked out from. */
export interface Entry {
  view: View;
  /** Addresses of the files that its study read. */
  reads: Set<string>;
  /** Another file has changed: its study no longer holds. */
  drop(): void;
}

interface Given {
  document: TextDocument;
  services: Services;
  /** Another file's text, if it can be had now. */
  textOf(address: string): string | undefined;
  other(address: string): TextDocument | undefined;
  /** The last whole study of an earlier version. */
  earlier?: Study;
}

/** A view of a file; nothing is worked out yet. */
export function viewOfFile({ document, services, textOf, other, earlier }: Given): Entry {
  const reads = new Set<string>();
  const address = document.uri;
  let tree: Tree | undefined;
  let study: Study | undefined;
  let outline: Outline | undefined;
  let last = earlier;
  let steps: Steps<Study> | undefined;

  const others: OtherFiles = {
    resolve: resolveNamed,
    read(path) {
      reads.add(sameAddress(path));
      return textOf(path);
    },
  };

  function* studyAfresh(): Steps<Study> {
    reads.clear();
    tree ??= yield* services.parse(document.getText());
    // Whoever asks for the tree alone is answered here.
    yield;
    const asked = { text: document.getText(), address, tree, files: others };
    const study = yield* services.study({ ...asked, ...(last && { earlier: last.chair }) });
    return withCarried(study, last);
  }

  /** Everybody who asks for the study goes on with the same steps; steps that throw are begun anew by whoever asks next. */
  function step(): void {
    const going = steps ?? studyAfresh();
    steps = undefined;
    const { value, done } = going.next();
    if (done) last = study = value;
    else steps = going;
  }

  const view: View = {
    uri: address,
    document,
    get tree() {
      while (!tree) step();
      return tree;
    },
    get outline() {
      outline ??= outlineOf(document.getText(), services.vocabulary);
      return outline;
    },
    get study() {
      while (!study) step();
      return study;
    },
    get lastStudy() {
      return last;
    },
    *work() {
      while (!study) {
        step();
        if (!study) yield;
      }
      return study;
    },
    *deepen(work) {
      const quick = view.study;
      if (quick.late) return;
      const deep = yield* services.deepen(quick, work);
      // Another file may have changed meanwhile.
      if (study === quick) last = study = deep;
    },
    *reread(text) {
      const tree = yield* services.parse(text);
      return (yield* services.study({ text, address, tree, files: others })).problems;
    },
    rework: (changed) => services.settle({ tree: changed, address, files: others }).chair,
    mend: (problems) => services.mend(view.study, others, problems),
    files: others,
    ranges: new Map(),
    vocabulary: services.vocabulary,
    rules: services.rules,
    other,
    resolve: (path) => resolveNamed(address, path),
  };
  return {
    view,
    reads,
    drop() {
      study = undefined;
      steps = undefined;
    },
  };
}
