/**
 * How a piece differs from what it was, as a maker would measure it.
 */
import type { LengthUnit } from "../design/design.ts";
import { printAngle, printLength } from "../design/units.ts";
import type { CutEnd, LaidFace, Mortise, Piece, Spot } from "../joinery/pieces/piece.ts";

export interface Difference {
  /** One phrase a difference. */
  says: string[];
  /** Outlines whose templates no longer hold. */
  templates: string[];
}

/** Less than this makes no difference to a maker: mm, and radians. */
const SAME = 0.05;
const SAME_ANGLE = 0.05 * (Math.PI / 180);

/** Compares two pieces that are one part of two chairs. */
export function howDifferent(was: Piece | undefined, now: Piece | undefined, unit: LengthUnit): Difference {
  if (was === undefined || now === undefined) return { says: [], templates: [] };
  const sizes = sizeWords(was, now, unit);
  const templates = templatesBetween(was, now);
  const says = [
    ...sizes,
    ...betweenWords(was, now, unit),
    ...endWords(was, now, unit),
    ...mortiseWords(was.mortises, now.mortises, unit),
  ];
  const outlines = outlinesBetween(was, now);
  if (outlines.length > 0 && sizes.length === 0) says.push(`other outline of the ${outlines.join(", ")}`);
  if (says.length === 0) says.push("cut to another shape");
  return { says, templates };
}

type Ways = readonly [more: string, less: string];

/** More and less of a piece's length, width and thickness, as that kind of part is looked at. */
const sizeNames: Readonly<Record<"post" | "seat" | "other", readonly [Ways, Ways, Ways]>> = {
  post: [
    ["longer", "shorter"],
    ["deeper", "shallower"],
    ["wider", "narrower"],
  ],
  seat: [
    ["wider", "narrower"],
    ["deeper", "shallower"],
    ["thicker", "thinner"],
  ],
  other: [
    ["longer", "shorter"],
    ["wider", "narrower"],
    ["thicker", "thinner"],
  ],
};

function sizeWords(was: Piece, now: Piece, unit: LengthUnit): string[] {
  const words: string[] = [];
  const put = (before: number | undefined, after: number | undefined, more: string, less: string) => {
    if (before === undefined || after === undefined) return;
    const by = after - before;
    if (Math.abs(by) > SAME) words.push(`${printLength(Math.abs(by), unit)} ${by > 0 ? more : less}`);
  };
  const isRound = was.size.round !== undefined && now.size.round !== undefined;
  if ((was.size.round !== undefined) !== (now.size.round !== undefined))
    words.push(now.size.round ? "round now" : "squared now");
  const [longer, wider, thicker] = sizeNames[now.is === "post" || now.is === "seat" ? now.is : "other"];
  put(was.size.long, now.size.long, ...longer);
  if (isRound) put(was.size.round, now.size.round, "more in diameter", "less in diameter");
  else {
    put(was.size.wide, now.size.wide, ...wider);
    put(was.size.thick, now.size.thick, ...thicker);
  }
  return words;
}

function betweenWords({ between: was }: Piece, { between: now }: Piece, unit: LengthUnit): string[] {
  if (was === undefined || now === undefined || Math.abs(now - was) <= SAME) return [];
  return [`${printLength(was, unit)} → ${printLength(now, unit)} between shoulders`];
}

function endWords(was: Piece, now: Piece, unit: LengthUnit): string[] {
  return now.ends.flatMap((end, k) => {
    const before = was.ends[k];
    if (before === undefined) return [];
    const words = [...bevelWords(before, end), ...tenonWords(before, end, unit)];
    return words.length === 0 ? [] : [`${end.name} end: ${words.join(", ")}`];
  });
}

function bevelWords(was: CutEnd, now: CutEnd): string[] {
  const words = now.bevels.flatMap(({ face, angle }) => {
    const before = was.bevels.find((each) => each.face === face)?.angle;
    if (before === undefined || Math.abs(angle - before) <= SAME_ANGLE) return [];
    return [`${printAngle(before)} → ${printAngle(angle)}`];
  });
  const bevels = [...new Set(words)];
  const slants = [was.slant?.angle, now.slant?.angle];
  if (slants[0] !== undefined && slants[1] !== undefined && Math.abs(slants[1] - slants[0]) > SAME_ANGLE)
    bevels.push(`${printAngle(slants[0])} → ${printAngle(slants[1])}`);
  return bevels.length === 0 ? [] : [`bevel ${bevels.join(" and ")}`];
}

function tenonWords({ tenon: was }: CutEnd, { tenon: now }: CutEnd, unit: LengthUnit): string[] {
  if (was === undefined || now === undefined)
    return was === now ? [] : [now === undefined ? "no tenon now" : `${now.kind} now`];
  const words: string[] = [];
  if (was.kind !== now.kind || was.count !== now.count) words.push(`${now.kind} for ${was.kind}`);
  const put = (before: number, after: number, what: string) => {
    if (Math.abs(after - before) > SAME)
      words.push(`${what} ${printLength(before, unit)} → ${printLength(after, unit)}`);
  };
  put(was.thick, now.thick, "tenon thick");
  put(was.wide, now.wide, "tenon wide");
  put(was.long, now.long, "tenon long");
  put(was.haunch?.long ?? 0, now.haunch?.long ?? 0, "haunch");
  put(was.shoulders[2], now.shoulders[2], `shoulder ${now.edges[0]}`);
  put(was.shoulders[0], now.shoulders[0], `shoulder ${now.cheeks[0]}`);
  const [before, after] = [was, now].map(({ lean }) => Math.hypot(...lean.map(Math.tan))) as [number, number];
  if (Math.abs(Math.atan(after) - Math.atan(before)) > SAME_ANGLE)
    words.push(`tenon leans ${printAngle(Math.atan(before))} → ${printAngle(Math.atan(after))}`);
  return words;
}

function mortiseWords(was: readonly Mortise[], now: readonly Mortise[], unit: LengthUnit): string[] {
  const left = [...was];
  let cutElsewhere = 0;
  let furthest = 0;
  let sized = 0;
  let added = 0;
  for (const mortise of now) {
    const at = left.findIndex((each) => each.is === mortise.is && each.for === mortise.for);
    const fits =
      at >= 0 ? at : left.findIndex((each) => each.is === mortise.is && each.face === mortise.face);
    if (fits < 0) {
      added++;
      continue;
    }
    const before = left.splice(fits, 1)[0]!;
    const by = Math.max(...movesOf(before, mortise));
    const wide = (of: Mortise) => Math.abs(of.to[0] - of.from[0]);
    if (Math.abs(wide(before) - wide(mortise)) > SAME || before.tenon.thick !== mortise.tenon.thick) sized++;
    else if (by > SAME) {
      cutElsewhere++;
      furthest = Math.max(furthest, by);
    }
  }
  const words: string[] = [];
  const say = (count: number, what: string) => {
    if (count > 0) words.push(`${count} ${count === 1 ? "mortise" : "mortises"} ${what}`);
  };
  say(cutElsewhere, `elsewhere, by up to ${printLength(furthest, unit)}`);
  say(sized, "of another size");
  say(added, "more");
  say(left.length, "fewer");
  return words;
}

const movesOf = (a: Mortise, b: Mortise): number[] => [
  Math.abs(a.from[0] - b.from[0]),
  Math.abs(a.to[0] - b.to[0]),
  Math.abs(a.near[0] - b.near[0]),
  Math.abs(a.far[0] - b.far[0]),
  Math.abs((a.deep ?? 0) - (b.deep ?? 0)),
];

/** Faces, or the whole, whose outline is another. */
function outlinesBetween(was: Piece, now: Piece): string[] {
  if (now.plan || was.plan) return sameSpots(was.plan?.ring ?? [], now.plan?.ring ?? []) ? [] : ["plan"];
  if (now.turned || was.turned) {
    const stations = (of: Piece): Spot[] =>
      (of.turned?.stations ?? []).map(({ at, diameter }) => [at, diameter]);
    return sameSpots(stations(was), stations(now)) ? [] : ["turned profile"];
  }
  const faces = now.faces.filter((face) => isOther(was, face, outlineOf));
  return faces.length === now.faces.length ? ["faces"] : facesNamed(faces);
}

/** Of these the shaped ones, which have full-size templates. */
function templatesBetween(was: Piece, now: Piece): string[] {
  if (now.plan) return now.is === "block" ? outlinesBetween(was, now) : [];
  if (now.turned) return outlinesBetween(was, now);
  return facesNamed(now.faces.filter((face) => face.shaped !== undefined && isOther(was, face, drawingOf)));
}

/** In the order of their names, so that a left and a right part say the same. */
const facesNamed = (faces: readonly LaidFace[]): string[] => faces.map(({ name }) => `${name} face`).sort();

function isOther(was: Piece, face: LaidFace, of: (face: LaidFace) => Spot[]): boolean {
  const before = was.faces.find(({ name }) => name === face.name);
  return before === undefined || !sameSpots(of(before), of(face));
}

const outlineOf = ({ rings }: LaidFace): Spot[] => rings.flat();

/** With the mortises, which a template shows too. */
const drawingOf = ({ marks, rings }: LaidFace): Spot[] => [
  ...rings.flat(),
  ...marks.filter(({ is }) => is === "mortise" || is === "hole").flatMap(({ spots }) => spots),
];

const sameSpots = (a: readonly Spot[], b: readonly Spot[]): boolean =>
  a.length === b.length &&
  a.every(([x, y], k) => Math.abs(x - b[k]![0]) < SAME && Math.abs(y - b[k]![1]) < SAME);
