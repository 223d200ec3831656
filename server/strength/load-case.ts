import type { NodeLoad, Support } from "./frame/frame.ts";

export interface LoadCase {
  /** `seat-and-back`, as reports and JSON name it. */
  name: string;
  title: string;
  /** How often. */
  times: number;
  loads: NodeLoad[];
  supports: Support[];
  /** Figures that were not seen in print. */
  fromMemory: boolean;
  /** The file's own. */
  own?: true;
}
