/**
 * What a loose seat rests on: how high that puts it, and how far its frame reaches.
 */
import type { RestDesign, SeatDesign, SeatRest } from "../../design/design.ts";
import type { Rail } from "../chair.ts";
import type { Drop } from "./seat-frame.ts";
import type { SeatLayer } from "./seat-layer.ts";
import type { Reach } from "./seat-outline.ts";

const KINDS = { strips: "strip", rebates: "rebate", grooves: "groove" } as const;

/** The clearance that a frame keeps when the text gives none, mm ("rests" in the language). */
const GAP = 1;

/** What the seat rests in or on at a rail; undefined where the rail has none. */
export function restAt(rail: Rail, rests: Exclude<SeatRest, "rails">): RestDesign | undefined {
  if (rail.design.is !== "rail") return undefined;
  const found = rail.design.rests.map(({ value }) => value).filter(({ is }) => is === KINDS[rests]);
  return found.find((each) => each.face === "inside" && !(each.is === "rebate" && each.edge === "bottom"));
}

/** How a frame lies that rests in or on something of its rails. */
export interface Rest {
  drop: Drop;
  /** The frame's upper face above what the rails' rests make a plane of, mm. */
  rise: number;
  /** Its upper face above the rails' tops, mm: what `proud` would have to say. */
  proud: number;
  clearance: number;
  /** The reach of each of its slabs, and between which depths below its upper face. */
  slabs: (Pick<SeatLayer, "from" | "to"> & { reach: Reach })[];
}

/** Undefined where it rests on the rails' tops, or where none of them has what it is to rest in or on. */
export function restOf(seat: SeatDesign, rails: readonly Rail[]): Rest | undefined {
  const rests = seat.rests?.value ?? "rails";
  if (rests === "rails" || seat.kind === "woven") return undefined;
  const first = rails.flatMap((rail) => restAt(rail, rests) ?? [])[0];
  if (!first) return undefined;
  const thick = seat.thick?.value ?? 0;
  const gap = seat.gap?.value ?? GAP;
  const cover = seat.cover?.value ?? 0;
  // A rail without a rest of its own is taken to carry the seat as the others do; a rule names it.
  const drop: Drop = (rail) => depthOf(restAt(rail, rests) ?? first);
  const mean = rails.reduce((sum, rail) => sum + drop(rail), 0) / rails.length;
  const within = (rail: Rail) => {
    const own = restAt(rail, rests);
    return (own?.is === "rebate" ? own.wide : 0) - gap - cover;
  };
  if (first.is !== "groove") {
    const rise = thick + cover;
    return {
      drop,
      rise,
      proud: rise - mean,
      clearance: gap + cover,
      slabs: thick > 0 ? [{ from: 0, to: thick, reach: within }] : [],
    };
  }
  const tongue = Math.min(thick, first.wide);
  const into = (rail: Rail) => {
    const own = restAt(rail, rests);
    return (own?.is === "groove" ? own.deep : 0) - gap;
  };
  return {
    drop,
    rise: 0,
    proud: -mean,
    clearance: gap,
    slabs: [
      ...(tongue > 0 ? [{ from: 0, to: tongue, reach: into }] : []),
      ...(thick > tongue ? [{ from: tongue, to: thick, reach: () => -gap }] : []),
    ],
  };
}

const depthOf = (rest: RestDesign): number => (rest.is === "rebate" ? rest.deep : rest.at);
