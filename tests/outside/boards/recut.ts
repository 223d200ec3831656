/**
 * A plan carried out again by an independent polygon library: what is wrong with it, in words; empty when nothing is.
 */
import { Clipper, EndType, FillRule, JoinType, type Path64 } from "clipper2-ts";
import type { Plan, PlannedBoard, PlannedPiece, Stock } from "../../../server/boards/plan.ts";

/** Thousandths of a millimetre: rounded to the library's whole numbers, pieces that touch along 600 mm share less than is nothing. */
const FINE = 1000;
/** Overlaps smaller than this are rounding, mm². */
const NOTHING = 0.5;

type Box = { x: number; y: number; long: number; wide: number };

const path = (spots: readonly (readonly [number, number])[]): Path64 =>
  spots.map(([x, y]) => ({ x: Math.round(x * FINE), y: Math.round(y * FINE) }));

const boxPath = ({ x, y, long, wide }: Box): Path64 =>
  path([
    [x, y],
    [x + long, y],
    [x + long, y + wide],
    [x, y + wide],
  ]);

const piecePath = (piece: PlannedPiece): Path64 => (piece.outline ? path(piece.outline) : boxPath(piece));

const area = (paths: Path64[]): number =>
  Math.abs(paths.reduce((sum, each) => sum + Clipper.area(each), 0)) / FINE ** 2;

const shared = (a: Path64, b: Path64): number => area(Clipper.intersect([a], [b], FillRule.NonZero));

/** Grown all round, with round corners. */
const grown = (one: Path64, by: number): Path64 =>
  by === 0 ? one : (Clipper.inflatePaths([one], by * FINE, JoinType.Round, EndType.Polygon)[0] ?? one);

export function faultsOf(stock: Stock, plan: Plan): string[] {
  const faults: string[] = [];
  for (const board of plan.boards) faults.push(...boardFaults(board, stock));
  const cut = new Map<string, number>();
  for (const { part } of plan.boards.flatMap(({ pieces }) => pieces)) cut.set(part, (cut.get(part) ?? 0) + 1);
  for (const line of stock.lines) {
    const short = plan.lacking.find(({ part }) => part === line.name)?.number ?? 0;
    const made = cut.get(line.name) ?? 0;
    if (made + short !== line.number)
      faults.push(`${line.name}: ${made} cut and ${short} lacking of ${line.number}`);
  }
  for (const { board, pieces } of plan.boards)
    for (const piece of pieces) {
      const line = stock.lines.find(({ name }) => name === piece.part)!;
      if ((["thick", "wide", "long"] as const).some((size) => piece[size] < line.blank[size] - 0.011))
        faults.push(`${piece.part} on ${board.source} is smaller than its blank`);
      if (line.timber && board.timber && line.timber.species !== board.timber.species)
        faults.push(`${piece.part} is sawn from ${board.timber.species}`);
    }
  const names = plan.boards.filter(({ board }) => board.from === "hand").map(({ name }) => name);
  if (new Set(names).size !== names.length) faults.push("a board is sawn twice");
  const used = plan.boards.reduce(
    (sum, { board, offcuts }) =>
      sum +
      board.thick * (board.long * board.wide - offcuts.reduce((all, { long, wide }) => all + long * wide, 0)),
    0,
  );
  if (Math.abs(used - plan.used) > 1e-6 * used + 1) faults.push(`used ${plan.used} where ${used} is`);
  if (plan.bound > plan.used * (1 + 1e-9))
    faults.push(`the bound ${plan.bound} is over what is used ${plan.used}`);
  return faults;
}

/**
 * Why a defect may not stay in a piece. It may under a hidden flat face of a piece that is not resawn, else up to the middle from a hidden
 * edge, and never where the part has a joint, which for a turned outline may be either way round.
 */
function hiddenFault(
  piece: PlannedPiece,
  own: Path64,
  defect: Box,
  hides: Stock["lines"][number]["hides"],
): string | undefined {
  if (!hides) return ", and no hidden face";
  const told = piece.under?.find(({ x, y }) => x === defect.x && y === defect.y);
  if (!told) return " that is not told";
  const joints = (ends: "as they are" | "swapped") =>
    hides.joints.some(([a, b]) => {
      const [from, to] = ends === "swapped" ? [piece.long - b, piece.long - a] : [a, b];
      const there = boxPath({ x: piece.x + from, y: -1e4, long: to - from, wide: 2e4 });
      return Clipper.intersect([there], [own], FillRule.NonZero).some(
        (one) => shared(one, boxPath(defect)) > NOTHING,
      );
    });
  if (joints("as they are") && (!piece.turned || joints("swapped"))) return ", at a joint";
  if (told.deepest !== undefined)
    return hides.flat && piece.thick > 0 && told.face === hides.flat
      ? undefined
      : ", and no flat face is hidden";
  // Half the piece: its outline squeezed towards either edge, column by column.
  const inHalf = (half: "low" | "high") => {
    for (
      let x = Math.max(piece.x, defect.x) + 0.5;
      x < Math.min(piece.x + piece.long, defect.x + defect.long);
      x++
    ) {
      const column = Clipper.intersect(
        [own],
        [boxPath({ x, y: -1e4, long: 0.02, wide: 2e4 })],
        FillRule.NonZero,
      );
      const ys = column.flatMap((one) => one.map(({ y }) => y / FINE));
      if (ys.length === 0) continue;
      const [low, high] = [Math.min(...ys), Math.max(...ys)];
      if (defect.y > high || defect.y + defect.wide < low) continue;
      const middle = (low + high) / 2;
      if (half === "low" ? defect.y + defect.wide > middle + 0.1 : defect.y < middle - 0.1) return false;
    }
    return true;
  };
  return inHalf("low") || inHalf("high") ? undefined : ", past the middle of the piece";
}

function boardFaults({ name, board, pieces, offcuts, cuts }: PlannedBoard, stock: Stock): string[] {
  const { saw } = stock.allowances;
  const faults: string[] = [];
  const say = (fault: string) => faults.push(`${name}: ${fault}`);
  const clear = boxPath(board.clear);
  const paths = pieces.map(piecePath);
  for (const [k, piece] of pieces.entries()) {
    const own = paths[k]!;
    if (area([own]) - shared(own, clear) > NOTHING) say(`${piece.part} is beyond the board's clear part`);
    if (piece.z < -1e-9 || piece.z + piece.thick > board.thick + 1e-6)
      say(`${piece.part} is beyond the board's thickness`);
    for (const defect of board.defects)
      if (shared(own, boxPath(defect)) > NOTHING) {
        const line = stock.lines.find(({ name: part }) => part === piece.part)!;
        const fault = hiddenFault(piece, own, defect, line.hides);
        if (fault) say(`${piece.part} has a defect in it${fault}`);
      }
    const around = grown(own, Math.max(0, saw - 0.02));
    for (const [n, other] of pieces.entries()) {
      if (n <= k || !layersMeet(piece, other, saw)) continue;
      if (shared(around, paths[n]!) > NOTHING) say(`no saw cut between ${piece.part} and ${other.part}`);
    }
    for (const offcut of offcuts)
      if (shared(around, boxPath(offcut)) > NOTHING) say(`no saw cut between ${piece.part} and an offcut`);
  }
  for (const [k, offcut] of offcuts.entries()) {
    const { x, y, long, wide } = offcut;
    if (x < -1e-6 || y < -1e-6 || x + long > board.long + 1e-6 || y + wide > board.wide + 1e-6)
      say("an offcut is beyond the board");
    for (const other of offcuts.slice(k + 1))
      if (shared(boxPath(offcut), boxPath(other)) > NOTHING) say("two offcuts overlap");
  }
  return [...faults, ...sawnFaults({ name, board, pieces, cuts, offcuts }, saw)];
}

const layersMeet = (a: PlannedPiece, b: PlannedPiece, saw: number): boolean =>
  a.z < b.z + b.thick + saw - 0.02 && b.z < a.z + a.thick + saw - 0.02;

/** The board cut as it says, one cut after the other, each right across what it cuts: in the end each piece is apart from its neighbours. */
function sawnFaults({ name, board, pieces, cuts }: PlannedBoard, saw: number): string[] {
  let rests: Box[] = [{ x: 0, y: 0, long: board.long, wide: board.wide }];
  for (const { is, at, from, to } of cuts) {
    if (is !== "crosscut" && is !== "rip") continue;
    const [along, across] = is === "crosscut" ? (["x", "y"] as const) : (["y", "x"] as const);
    const [size, other] = is === "crosscut" ? (["long", "wide"] as const) : (["wide", "long"] as const);
    rests = rests.flatMap((rest) => {
      const inside = rest[across] >= from - 0.01 && rest[across] + rest[other] <= to + 0.01;
      const meets = rest[along] < at + saw - 1e-6 && at + 1e-6 < rest[along] + rest[size];
      if (!inside || !meets) return [rest];
      const before = { ...rest, [size]: at - rest[along] };
      const after = { ...rest, [along]: at + saw, [size]: rest[along] + rest[size] - at - saw };
      return [before, after].filter((each) => each.long > 0.01 && each.wide > 0.01);
    });
  }
  return pieces.flatMap((piece) => {
    const home = rests.find(
      ({ x, y, long, wide }) =>
        piece.x >= x - 0.02 &&
        piece.y >= y - 0.02 &&
        piece.x + piece.long <= x + long + 0.02 &&
        piece.y + piece.wide <= y + wide + 0.02,
    );
    if (!home) return [`${name}: a cut goes through ${piece.part}`];
    const beside = pieces.filter(
      (other) =>
        other !== piece &&
        !(other.outline && piece.outline) &&
        (Math.abs(other.x - piece.x) > 0.02 || Math.abs(other.y - piece.y) > 0.02) &&
        other.x >= home.x - 0.02 &&
        other.y >= home.y - 0.02 &&
        other.x + other.long <= home.x + home.long + 0.02 &&
        other.y + other.wide <= home.y + home.wide + 0.02,
    );
    return beside.length > 0 ? [`${name}: no cut parts ${piece.part} from ${beside[0]!.part}`] : [];
  });
}
