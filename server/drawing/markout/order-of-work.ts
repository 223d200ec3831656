/**
 * The order in which a part is best worked, from what is to be cut in it: common practice, each step before what would spoil it.
 */
import type { BowForm, Mortise, Outline, Piece } from "../../joinery/pieces/piece.ts";

/** Stuff thinner than it was by this much is not of full size any more, mm. */
const FULL = 0.05;

/** One sentence; empty for a part of which nothing has to come before another. */
export function orderOfWork(piece: Piece): string {
  const steps = stepsOf(piece);
  return steps.length > 1 ? `Order of work: ${steps.join("; ")}.` : "";
}

function stepsOf(piece: Piece): string[] {
  if (piece.plan) return planSteps(piece);
  if (piece.form) return bentSteps(piece.size.round !== undefined, piece.form);
  return piece.turned ? turnedSteps(piece) : squaredSteps(piece);
}

function bentSteps(isRound: boolean, { ends, feet, bores }: BowForm): string[] {
  return [
    `plane the strip ${isRound ? "square and then round" : "to its section"}${ends ? ", thinner to its ends" : ""}`,
    "bend it, and let it dry on its form",
    "mark out along the centre line from the left end",
    ...(feet.length ? ["saw the shoulders and cut the tenons"] : ["saw the ends"]),
    ...(bores.length ? [`bore ${letters(bores)}`] : []),
  ];
}

function planSteps({ is, plan, blank }: Piece): string[] {
  if (is === "block") return ["plane to thickness", "saw the corners"];
  const bores = plan?.bores?.length ?? 0;
  return [
    ...((blank?.staves ?? 1) > 1 ? ["glue the boards side by side"] : []),
    "plane to thickness",
    ...(bores ? ["set out the sockets while the edges are square", "bore them"] : []),
    ...(plan?.hollow ? ["hollow the top by its contours"] : []),
    "saw the outline",
    ...(bores && (plan?.layers.length ?? 0) > 1 ? ["bevel the edges"] : []),
    ...(plan?.layers.some(({ openings }) => openings.length > 0)
      ? ["cut the notches, trying them on the frame"]
      : []),
  ];
}

function turnedSteps({ turned, ends, mortises }: Piece): string[] {
  return [
    `turn the outline${ends.some(({ tenon }) => tenon) ? " and the tenons" : ""}`,
    ...(turned?.bent ? ["steam and bend it, and let it dry on its form"] : []),
    "mark the front and the datum",
    ...(mortises.length
      ? [`${mortises.some(({ is }) => is === "mortise") ? "mortise" : "bore"} ${letters(mortises)}`]
      : []),
    ...(ends.some(({ tenon }) => !tenon) ? ["cut the ends to length last"] : []),
  ];
}

function squaredSteps(piece: Piece): string[] {
  const { mortises, ends, outline, notches, rests, datums } = piece;
  const bent = datums.length > 1 || outline?.curves?.some(({ is }) => is === "bow") === true;
  const arch = outline?.curves?.filter(({ is }) => is === "arch") ?? [];
  const taper = !bent && outline !== undefined && outline.rows.length > 1 && arch.length === 0;
  const late = taper ? mortises.filter((mortise) => isTapered(piece, outline, mortise)) : [];
  const arched = arch.map(({ face }) => (face === "top" ? piece.faces[0]?.name : piece.faces[2]?.name));
  const onArch = mortises.filter(({ face }) => arched.includes(face));
  const early = mortises.filter((mortise) => !late.includes(mortise) && !onArch.includes(mortise));
  const tenoned = ends.some(({ tenon }) => tenon);
  return [
    bent ? "saw and plane to the outline by its template" : "plane square",
    "mark out from the face side and the face edge",
    ...(early.length ? [`mortise ${letters(early)}`] : []),
    ...(tenoned ? ["saw the shoulders and cut the tenons"] : []),
    ...(notches?.length ? ["cut the notches"] : []),
    ...(rests?.some(({ is }) => is !== "strip") ? ["cut the rebates and grooves"] : []),
    ...(arch.length ? ["saw the arch"] : []),
    ...(onArch.length ? [`mortise ${letters(onArch)} from the sawn arch`] : []),
    ...(taper ? ["taper"] : []),
    ...(late.length ? [`mortise ${letters(late)}, whose figures run from the tapered faces`] : []),
    ...(ends.some(({ enters }) => !enters) ? ["cut the free ends to length last"] : []),
    ...(rests?.some(({ is }) => is === "strip") ? ["fix the strip once the frame is together"] : []),
  ];
}

const letters = (mortises: readonly { letter: string }[]): string =>
  mortises.length > 3
    ? `${mortises[0]!.letter} to ${mortises[mortises.length - 1]!.letter}`
    : mortises.map(({ letter }) => letter).join(", ");

/** Whether the face that a mortise is cut in, or the one it is gauged from, lies deeper there than where the stuff is at its thickest. */
function isTapered(piece: Piece, { rows }: Outline, { face, gaugedFrom, from, to }: Mortise): boolean {
  const names = piece.faces.map(({ name }) => name);
  return [face, gaugedFrom].some((name) => {
    const k = names.indexOf(name);
    if (k < 0) return false;
    const offsets = rows.map((row) => ({ at: row.at, off: Math.min(...row.offsets[k]!) }));
    const most = Math.max(...offsets.map(({ off }) => off));
    return [...from, ...to].some((at) => offsetAt(offsets, at) < most - FULL);
  });
}

function offsetAt(rows: readonly { at: number; off: number }[], at: number): number {
  const sorted = [...rows].sort((a, b) => a.at - b.at);
  const next = sorted.findIndex((row) => row.at >= at);
  if (next <= 0) return sorted[next === 0 ? 0 : sorted.length - 1]!.off;
  const [a, b] = [sorted[next - 1]!, sorted[next]!];
  return a.off + ((b.off - a.off) * (at - a.at)) / (b.at - a.at || 1);
}
