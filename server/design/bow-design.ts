import type { SawnDesign } from "./board-design.ts";
import type { Given } from "./given.ts";
import type { Named, Section, TimberDesign } from "./shared-facts.ts";

export interface BowDesign extends Named, SawnDesign {
  is: "bow";
  /** Of a hoop: its feet on a solid seat's top, level; of an arm bow: its hands. */
  feet?: Given<{ out: number; back: number }>;
  hands?: Given<{ out: number; back: number }>;
  /** Of a hoop, radians from plumb, positive with the top back. */
  rake?: Given<number>;
  /** Of an arm bow: its top face at the hands, and the drop to its crown. */
  lie?: Given<{ up: number; fall: number }>;
  /** Width of the centre line where it is widest, and how far that is from its ends. */
  wide?: Given<{ wide: number; at: number }>;
  rise?: Given<number>;
  /** first: in its plane, second: square to it. */
  section?: Given<Section>;
  round?: Given<number>;
  /** To both ends. */
  tapers: Given<Section>[];
  joined?: Given<string>;
  timber?: Given<TimberDesign>;
}
