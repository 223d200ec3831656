/**
 * Rebates, grooves and strips for a loose seat, set out on a squared rail: their sizes and places, and their lines on its faces.
 */
import type { Rail } from "../../chair/chair.ts";
import { shapeOf, spotOn } from "../../chair/rails/rail-outline.ts";
import type { RailCut, RailStrip } from "../../chair/rails/rest-wood.ts";
import { stripCorners } from "../../chair/rails/rests.ts";
import type { Vec3 } from "../../geometry/solid.ts";
import { dot, sub } from "../../geometry/vec.ts";
import type { LaidStick } from "./lay.ts";
import type { CutRest, Ends, Mark } from "./piece.ts";
import { measured, type Run } from "./runs.ts";
import type { SquaredStick } from "./squared.ts";
import { place } from "./strip.ts";

/** What is cut along a rail or fixed to it, in the order of the text. */
export function restsOf(rail: Rail, run: Run): CutRest[] {
  return [
    ...(rail.cuts ?? []).map((cut) => cutRest(rail, run, cut)),
    ...(rail.strips ?? []).map((strip) => fixedStrip(rail, run, strip)),
  ];
}

function cutRest(rail: Rail, run: Run, { design: { value }, reach }: RailCut): CutRest {
  const { datum } = run;
  if (value.is === "groove") return { ...value, datum: datum.name };
  const along = reach?.map((x) => measured(run, spotOn(rail, x, 0, 0))).sort((a, b) => a - b);
  return {
    is: "rebate",
    wide: value.wide,
    deep: value.deep,
    face: value.face,
    edge: value.edge,
    datum: datum.name,
    ...(along ? { along: [along[0]!, along[1]!] as const } : {}),
  };
}

function fixedStrip(rail: Rail, run: Run, strip: RailStrip): CutRest {
  const ends = ([0, 1] as const)
    .map((which) => stripCorners(rail, strip, which).map((corner) => measured(run, corner)))
    .sort((a, b) => a[0]! - b[0]!);
  const pair = (k: number): Ends => [ends[0]![k]!, ends[1]![k]!];
  const { wide, thick, at, face } = strip.design.value;
  const butts = strip.butts.flatMap((name) => name ?? []);
  return {
    is: "strip",
    wide,
    thick,
    at,
    face,
    datum: run.datum.name,
    on: pair(0),
    far: pair(1),
    below: pair(2),
    long: Math.max(...ends[1]!) - Math.min(...ends[0]!),
    ...(butts.length > 0 ? { butts } : {}),
  };
}

/** Which way a line of a rest runs on a face: at a height, or at a distance outward; both in the rail's own measure. */
interface RestLine {
  face: "top" | "bottom" | "inside" | "outside";
  at: (x: number) => Vec3;
  reach?: readonly [number, number];
}

/** Their lines on the faces. */
export function restMarks(stick: SquaredStick, laid: LaidStick, rail: Rail): { face: number; mark: Mark }[] {
  return linesOf(rail).flatMap(({ face, at, reach }) => {
    const k = stick.names.indexOf(face);
    const own = laid.faces[k];
    if (!own) return [];
    return stick.stretches.flatMap(({ solid }, stretch) => {
      const xs = solid.points.map((p) => dot(sub(p, rail.start), rail.along));
      const [low, high] = [
        Math.max(Math.min(...xs), reach?.[0] ?? Number.NEGATIVE_INFINITY),
        Math.min(Math.max(...xs), reach?.[1] ?? Number.POSITIVE_INFINITY),
      ];
      const panel = laid.panelOf(k, stretch);
      const on = own.panels[panel];
      if (!on || low >= high) return [];
      const spots = [low, high].map((x) => place(on, at(x)));
      return [{ face: k, mark: { is: "rest" as const, spots, panels: [panel, panel] } }];
    });
  });
}

function linesOf(rail: Rail): RestLine[] {
  const shape = shapeOf(rail);
  const onFace = (face: "inside" | "outside", z: number): RestLine => ({
    face,
    at: (x) => spotOn(rail, x, shape[face](x), z),
  });
  const onEdge = (face: "top" | "bottom", out: (x: number) => number): RestLine => ({
    face,
    at: (x) => spotOn(rail, x, out(x), shape[face](x)),
  });
  const cuts = (rail.cuts ?? []).flatMap(({ design: { value }, section, reach }): RestLine[] => {
    const some = reach ? { reach } : {};
    if (value.is === "rebate") {
      const inner = value.face === "inside" ? 1 : 0;
      const level = value.edge === "top" ? 0 : 1;
      return [
        { face: value.face, at: (x) => spotOn(rail, x, shape[value.face](x), section(x).up[level]), ...some },
        { ...onEdge(value.edge, (x) => section(x).out[inner]), ...some },
      ];
    }
    const { face } = value;
    if (face === "inside" || face === "outside")
      return [onFace(face, -value.at), onFace(face, -value.at - value.wide)];
    return ([0, 1] as const).map((side) => onEdge(face, (x) => section(x).out[side]));
  });
  const strips = (rail.strips ?? []).flatMap(({ design: { value } }) => [
    onFace(value.face, -value.at),
    onFace(value.face, -value.at - value.wide),
  ]);
  return [...cuts, ...strips];
}
