/**
 * Open files beside other chairs, for the panel. Comparing itself is loaded when it is first asked for.
 */

import type { Side } from "../compare/compare.ts";
import type { Behind } from "../drawing/sheet.ts";
import type { View } from "../editor/view.ts";
import type { OtherFiles } from "../study.ts";
import type { Working } from "./comparison.ts";
import { LARGEST } from "./files.ts";
import type { ComparisonTold, OldChair } from "./protocol.ts";

export interface Comparing {
  /** The drawing's share: the old chair to lay behind, and the difference in words. */
  with(view: View, old: OldChair): Promise<{ behind: Behind; told: ComparisonTold }>;
  /** Nobody compares this file any more. */
  forget(uri: string): void;
}

/** Keeps the old chairs worked out while they are compared with: typing works only the new one out. */
export function createComparing(study: Working): Comparing {
  const kept = new Map<string, { old: OldChair; side: Side }>();

  function sideOf({ uri, files }: View, old: OldChair): Side {
    const before = kept.get(uri);
    if (before && before.old.text === old.text && before.old.address === old.address) return before.side;
    let whole = true;
    const read: OtherFiles = {
      resolve: files.resolve,
      read(address) {
        const text = files.read(address);
        whole &&= text !== undefined;
        return text;
      },
    };
    const side = { study: study({ text: old.text, address: old.address, files: read }), files };
    // In the browser files come later than they are asked for: then it is worked out again.
    if (whole) kept.set(uri, { old, side });
    return side;
  }

  return {
    async with(view, old) {
      const { besides } = await import("./comparison.ts");
      return besides(view, sideOf(view, old), old);
    },
    forget: (uri) => void kept.delete(uri),
  };
}

/** Whether a client's word for an old chair is one. */
export const isOldChair = (given: unknown): given is OldChair => {
  const { label, text, address } = (given ?? {}) as Partial<OldChair>;
  return [label, text, address].every((each) => typeof each === "string") && text!.length <= LARGEST;
};
