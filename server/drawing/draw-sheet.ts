import { finish, type Steps } from "../../grammar/steps.ts";
import type { Chair } from "../chair/chair.ts";
import type { LengthUnit } from "../design/design.ts";
import { outlinesOf } from "./areas.ts";
import { chainSteps } from "./chains.ts";
import { around, extentOf, leanLine, lengthLines, reachOf } from "./dimension-lines.ts";
import { floorLines } from "./floor-line.ts";
import { type Seen, type SeenLine, seeSteps } from "./hidden-lines.ts";
import { WORDS } from "./label-room.ts";
import { layOut, type Placed } from "./layout.ts";
import { type Extent, leanMeasures, lengthMeasures, type Reach } from "./measures.ts";
import { overlaysOf, overlayViews, pointsOf } from "./overlays.ts";
import { type ScenePart, sceneOf } from "./scene.ts";
import type {
  Area,
  Behind,
  DimensionLine,
  Overlay,
  OverlayName,
  Point,
  Sheet,
  Stroke,
  View,
} from "./sheet.ts";
import { motionInto, sights } from "./sight.ts";

const captions: Record<View["name"], string> = {
  front: "Front",
  side: "Side (from the sitter's left)",
  plan: "Plan (from above)",
};
const unitWords: Record<LengthUnit, string> = { mm: "millimetres", cm: "centimetres", in: "inches" };
/** How far the centre line runs past the chair, mm. */
const PAST = 28;
/** From the lowest thing in a view to its caption. */
const CAPTION = 30;

/**
 * Front, side and plan of a chair as it stands on the floor, hidden lines taken out, with its main dimensions in the file's units,
 * laid out on one sheet. The sheet is full size: one millimetre of the chair is one of the sheet. `asked` are laid over it.
 */
export const drawSheet = (chair: Chair, asked: readonly OverlayName[] = []): Sheet =>
  finish(sheetSteps(chair, asked));

/** The same, resting after each part in each view. */
export function* sheetSteps(chair: Chair, asked: readonly OverlayName[] = [], behind?: Behind): Steps<Sheet> {
  const parts = sceneOf(chair);
  const bodies = parts.map(({ body }) => body);
  const hidden: Record<View["name"], SeenLine[]> | undefined = asked.includes("hidden")
    ? { front: [], side: [], plan: [] }
    : undefined;
  const seen = {
    front: yield* seeSteps(bodies, motionInto(sights.front, chair.stance), [], hidden?.front),
    side: yield* seeSteps(bodies, motionInto(sights.side, chair.stance), [], hidden?.side),
    plan: yield* seeSteps(bodies, motionInto(sights.plan, chair.stance), [], hidden?.plan),
  };
  const before = behind && (yield* ghostSteps(behind.chair));
  const extents = {
    front: extentOfSeen(seen.front),
    side: extentOfSeen(seen.side),
    plan: extentOfSeen(seen.plan),
  };
  const measures = lengthMeasures(chair, extents);
  const laid = overlaysOf(chair, asked, extents);
  const look = (name: View["name"]): Look => {
    const overlays = laid.map(({ overlay }) => overlay).filter((each) => overlayViews[each.name] === name);
    const beside = [...overlays.flatMap(pointsOf), ...(before?.[name] ?? []).flatMap(({ points }) => points)];
    const whole = beside.length ? around(extents[name], extentOf(beside)) : extents[name];
    const dimensions = lengthLines(
      measures.filter((measure) => measure.view === name),
      whole,
    );
    if (name === "side") {
      const outlines = seen.side.bodies.flatMap(({ hiders }) => hiders.map(({ outline }) => outline));
      dimensions.push(...leanMeasures(chair).map((measure) => leanLine(measure, outlines)));
    }
    const { [name]: extent } = extents;
    const ghost = before?.[name] ?? [];
    const changed = behind?.changed;
    const look = {
      name,
      parts,
      seen: seen[name],
      extent,
      whole,
      dimensions,
      overlays,
      ghost,
      hidden: hidden?.[name] ?? [],
    };
    return { ...look, centred: isPaired(chair), ...(changed && { changed }) };
  };
  yield;
  const views = {
    front: yield* drawView(look("front")),
    side: yield* drawView(look("side")),
    plan: yield* drawView(look("plan")),
  };
  const sheet = layOut(views, chair.design.units, laid.length + 1 + Number(behind !== undefined));
  return {
    title: chair.design.title?.value ?? "",
    ...sheet,
    notes: [
      "As it stands on the floor.",
      `Lengths in ${unitWords[chair.design.units]}.`,
      ...laid.map(({ note }) => note),
      ...(behind ? ["Dashed: the old chair. Heavy: parts that differ."] : []),
    ],
  };
}

interface Look {
  name: View["name"];
  parts: readonly ScenePart[];
  seen: Seen;
  extent: Extent;
  /** With what is laid over it. */
  whole: Extent;
  dimensions: DimensionLine[];
  overlays: Overlay[];
  centred: boolean;
  /** What other wood hides. */
  hidden: readonly SeenLine[];
  /** The chair behind. */
  ghost: readonly Stroke[];
  changed?: ReadonlySet<string>;
}

/** What is seen of the chair behind, its hidden lines left out. */
function* ghostSteps(chair: Chair): Steps<Record<View["name"], Stroke[]>> {
  const parts = sceneOf(chair);
  const bodies = parts.map(({ body }) => body);
  const ghost: Record<View["name"], Stroke[]> = { front: [], side: [], plan: [] };
  for (const name of ["front", "side", "plan"] as const) {
    const { lines } = yield* seeSteps(bodies, motionInto(sights[name], chair.stance));
    const chains = yield* chainSteps(lines);
    ghost[name] = chains.map(({ body, points }) => ({ points, is: "before", part: parts[body]!.name }));
  }
  return ghost;
}

/** A view as seen, y up, with all that goes with it. */
function* drawView(given: Look): Steps<Placed> {
  const { name, parts, seen, extent, whole, dimensions, overlays, centred, ghost, hidden, changed } = given;
  const chains = yield* chainSteps(seen.lines);
  yield;
  const strokes: Stroke[] = [...ghost];
  for (const { body, points } of yield* chainSteps(hidden))
    strokes.push({ points, is: "hidden", part: parts[body]!.name });
  for (const { body, is, points } of chains) {
    const part = parts[body]!.name;
    strokes.push({ points, is, part, ...(changed?.has(part) && { changed: true }) });
  }
  if (name !== "plan") strokes.push(...floorLines(whole).map((points): Stroke => ({ points, is: "floor" })));
  if (centred && name !== "side") strokes.push(centreLine(extent));
  const lines = strokes.filter(({ part }) => part === undefined).flatMap(({ points }) => points);
  const reach = dimensions
    .map(reachOf)
    .reduce(around, around(whole, extentOf([...lines, [extent.left, extent.low]])));
  const captionAt: Point = [(extent.left + extent.right) / 2, reach.low - CAPTION - WORDS];
  const view = {
    name,
    caption: captions[name],
    captionAt,
    strokes,
    areas: yield* areasOf(parts, seen),
    dimensions,
    ...(overlays.length > 0 && { overlays }),
  };
  return { view, extent, reach: { ...reach, low: captionAt[1] - WORDS / 2 } };
}

function centreLine({ low, high }: Extent): Stroke {
  return {
    points: [
      [0, low - PAST],
      [0, high + PAST],
    ],
    is: "centre",
  };
}

/** Outlines of the parts, the nearest last. */
function* areasOf(parts: readonly ScenePart[], { bodies }: Seen): Steps<Area[]> {
  const fromFar = bodies
    .map(({ cover, near }, index) => ({ cover, near, part: parts[index]! }))
    .sort((a, b) => a.near - b.near);
  const areas: Area[] = [];
  for (const { cover, part } of fromFar) {
    const { name, at, file } = part;
    for (const points of outlinesOf(cover))
      areas.push({ part: name, at, ...(file !== undefined && { file }), points });
    yield;
  }
  return areas;
}

/** Whether the chair has a left and a right. */
function isPaired({ posts }: Chair): boolean {
  for (const { side } of posts.values()) if (side !== "middle") return true;
  return false;
}

/** The highest place of a view counts as wide as what lies within this of it, mm. */
const LEVEL = 1;

function extentOfSeen({ bodies }: Seen): Reach {
  const boxes = bodies.filter(({ hiders }) => hiders.length > 0);
  const extent = extentOf(
    boxes.flatMap(({ left, right, low, high }): Point[] => [
      [left, low],
      [right, high],
    ]),
  );
  let topLeft = extent.right;
  for (const { hiders } of boxes.filter(({ high }) => high > extent.high - LEVEL)) {
    for (const { outline } of hiders) {
      for (const [u, v] of outline) if (v > extent.high - LEVEL && u < topLeft) topLeft = u;
    }
  }
  return { ...extent, topLeft };
}
