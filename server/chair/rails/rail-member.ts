import type { RailDesign } from "../../design/design.ts";
import type { PartId, Side } from "../../design/identity.ts";

/** One of a design's rails: which side, and which of a repeated row. */
export interface RailMember {
  design: RailDesign;
  side: Side;
  /** Index into `ups`; of a row with one member 0. */
  index: number;
  id: PartId;
  name: string;
}
