/**
 * Mortises and holes in squared stuff by what the sheet says of them.
 */
import { beyond, hull, roundBar, type Solid } from "../solids/manifold.ts";
import { across, direction, inner, minus, outer, plus, size, times, type V } from "../solids/vectors.ts";
import type { Lap, Mouth } from "./mates.ts";
import type { Read, SheetRead } from "./reading.ts";
import type { Flat, Stick } from "./stick.ts";

/** Beyond the face, so that nothing is left of it; mm. */
const OUT = 2;

/** What is chopped and bored out of the stick; peg holes, which hold no wood of another part, apart. */
export function mortisesOf(sheet: SheetRead, stick: Stick): Solid[] {
  return [
    ...sheet.all("mortise", "socket", "sloped-socket").map((mark) => chopped(mark, sheet, stick)),
    ...sheet.all("through-mortise").map((mark) => through(mark, sheet, stick)),
    ...sheet.all("hole", "through-hole").map((mark) => bored(mark, stick)),
    ...sheet.all("notch").map((mark) => notchOf(mark, stick)),
  ];
}

/** Each mortise and hole as something that is entered; pegs' holes, sockets of haunches and exits belong to another. */
export function mouthsOf(sheet: SheetRead, stick: Stick): Mouth[] {
  const chops = sheet.all("mortise", "through-mortise").map((mark): Mouth => {
    const { corners, flat, into } = mouthOf(mark, stick);
    const [a, b, c, d] = corners;
    const over = minus(plus(b, d), plus(a, c));
    const on = minus(plus(c, d), plus(a, b));
    // The cheeks run along the longer sides of what goes in.
    const isAlong =
      Math.abs(size(over) / 2 - mark.long("thick")) < Math.abs(size(on) / 2 - mark.long("thick"));
    const at = times(plus(plus(a, b), plus(c, d)), 1 / 4);
    return { mark, at, into, face: times(flat.out, -1), thick: direction(outer(into, isAlong ? on : over)) };
  });
  const bores = sheet.all("hole", "through-hole").map((mark): Mouth => {
    const { flat, into } = way(mark, stick, mark.long("at"));
    return {
      mark,
      at: onFace(mark, stick, mark.long("at"), mark.long("in")),
      into,
      face: times(flat.out, -1),
    };
  });
  return [...chops, ...bores];
}

/** Each notch for a rail that crosses: the middle of its floor, the way out of it, and the way that the other rail lies in it. */
export const lapsOf = (sheet: SheetRead, stick: Stick): Lap[] =>
  sheet.all("notch").map((mark) => {
    const lines = notchLines(mark, stick).map((line) => line.map(([, bottom]) => bottom));
    const [one, other] = lines.map(([p, q]) => times(plus(p!, q!), 1 / 2)) as [V, V];
    const lengthwise = lines.map(([p, q]) => direction(minus(q!, p!)));
    const through = direction(minus(other, one));
    const floor = outer(through, plus(lengthwise[0]!, lengthwise[1]!));
    const { out } = stick.flat(
      stick.faceNamed(mark.mark.face),
      stick.run(mark.mark.datum),
      mark.long(`from on ${stick.faces[(stick.faceNamed(mark.mark.face) + 1) % 4]}`),
    );
    const up = direction(inner(floor, out) < 0 ? times(floor, -1) : floor);
    return {
      mark,
      at: times(plus(one, other), 1 / 2),
      out: up,
      through,
      axis: stick.run(mark.mark.datum).way,
    };
  });

/** A notch by its lines on the two faces beside the one it opens in. */
function notchOf(mark: Read, stick: Stick): Solid {
  const lines = notchLines(mark, stick).map((line) =>
    line.flatMap(([mouth, bottom]) => {
      const into = direction(minus(bottom, mouth));
      return [plus(mouth, into, -OUT), bottom];
    }),
  );
  // Out of the wood at both sides along its own lines, so that no skin is left.
  const points = lines.flatMap((line, side) =>
    line.map((p, k) => plus(p, direction(minus(p, lines[1 - side]![k]!)), OUT)),
  );
  return hull(points);
}

/** On either side face, the notch's two lines: from the arris down to the floor. */
function notchLines(mark: Read, stick: Stick): [V, V][][] {
  const run = stick.run(mark.mark.datum);
  const open = stick.faceNamed(mark.mark.face);
  return [(open + 1) % 4, (open + 3) % 4].map((side) => {
    const name = stick.faces[side]!;
    const arris = side === (open + 1) % 4 ? open : side;
    const deep = mark.long(`deep on ${name}`);
    return (["from", "to"] as const).map((end, k): [V, V] => {
      const at = mark.long(`${end} on ${name}`);
      const floor = mark.longOr(`floor ${end} on ${name}`, at);
      const depth = k === 0 ? deep : mark.longOr(`deep at its end on ${name}`, deep);
      const { out } = stick.flat(open, run, at);
      const beside = stick.flat(side, run, at).out;
      // Along the side face, square in from the open one.
      const into = direction(plus(times(out, -1), beside, inner(out, beside)));
      const bottom = plus(stick.arris(arris, run, floor), into, depth / inner(times(out, -1), into));
      return [stick.arris(arris, run, at), bottom];
    });
  });
}

interface Opening {
  /** Near and far at the start, near and far at the end. */
  corners: [V, V, V, V];
  flat: Flat;
  into: V;
}

function mouthOf(mark: Read, stick: Stick): Opening {
  const [from, to, near, far] = ["from", "to", "near", "far"].map((name) => mark.long(name)) as number[];
  const spot = (along: number, gauge: number) => onFace(mark, stick, along, gauge);
  const [fromOver, toOver] = [mark.longOr("from over", from!), mark.longOr("to over", to!)];
  const [nearOn, farOn] = [mark.longOr("near on", near!), mark.longOr("far on", far!)];
  const corners: Opening["corners"] = [
    spot(from!, near!),
    spot(fromOver, far!),
    spot(to!, nearOn),
    spot(toOver, farOn),
  ];
  return { corners, ...way(mark, stick, (from! + to!) / 2) };
}

/** A point of the face: along the stick, and square in from the arris that it shares with the gauged one. */
function onFace(mark: Read, stick: Stick, at: number, gauge: number): V {
  const run = stick.run(mark.mark.datum);
  const face = stick.faceNamed(mark.mark.face);
  const after = stick.faceNamed(mark.word("gauged")) === (face + 1) % 4;
  const [arris, other] = after ? [face, (face + 3) % 4] : [(face + 3) % 4, face];
  const from = stick.arris(arris, run, at);
  const over = direction(minus(stick.arris(other, run, at), from));
  const sine = Math.sqrt(1 - inner(over, stick.arrisWay(arris, run, at)) ** 2);
  return plus(from, over, gauge / sine);
}

/** The face there, and the way that the chisel or the bit goes. */
function way(mark: Read, stick: Stick, at: number): { flat: Flat; into: V } {
  const run = stick.run(mark.mark.datum);
  const face = stick.faceNamed(mark.mark.face);
  const flat = stick.flat(face, run, at);
  const lengthwise = direction(across(run.way, flat.out));
  const [first, last] = stick.ends.map((end) => end.mark.face) as [string, string];
  const [one, other] = [stick.faces[(face + 1) % 4]!, stick.faces[(face + 3) % 4]!];
  const side = outer(flat.out, lengthwise);
  const towards = inner(side, stick.way((face + 1) % 4)) > 0 ? side : times(side, -1);
  const along = Math.tan(mark.towards("leans to", last, first, "angle"));
  const sideways = Math.tan(mark.towards("leans to", one, other, "angle"));
  return { flat, into: direction(plus(plus(times(flat.out, -1), lengthwise, along), towards, sideways)) };
}

function chopped(mark: Read, sheet: SheetRead, stick: Stick): Solid {
  const { corners, flat, into } = mouthOf(mark, stick);
  const deep = mark.long("deep");
  const sloped = mark.mark.kind === "sloped-socket";
  const own = sheet.all("mortise").find((each) => each.word("letter") === mark.word("letter"));
  // A sloped socket runs out on the side away from its mortise.
  const outAtStart = sloped && own !== undefined && own.long("from") > mark.long("from");
  const points = corners.flatMap((p, k) => {
    const none = sloped && k < 2 === outAtStart;
    const down = -inner(into, flat.out);
    return [plus(p, into, -OUT / down), plus(p, into, none ? 0 : deep / down)];
  });
  return hull(points);
}

function through(mark: Read, sheet: SheetRead, stick: Stick): Solid {
  const exit = sheet.all("exit").find((each) => each.word("letter") === mark.word("letter"));
  if (!exit) throw new Error("a through mortise whose other side is not told");
  const a = mouthOf(mark, stick).corners;
  const b = mouthOf(exit, stick).corners;
  const pairs = a.map((p, k) => {
    const q = b[k]!;
    return [plus(p, direction(minus(p, q)), OUT), plus(q, direction(minus(q, p)), OUT)];
  });
  return hull(pairs.flat() as V[]);
}

function bored(mark: Read, stick: Stick): Solid {
  const at = mark.long("at");
  const start = onFace(mark, stick, at, mark.long("in"));
  const { flat, into } = way(mark, stick, at);
  const u = direction(
    across(flat.out, into).some((v) => Math.abs(v) > 1e-6) ? across([1, 0, 0], into) : [1, 0, 0],
  );
  const v = outer(into, u);
  const deep = mark.longOr("deep", 200);
  const whole = roundBar(start, into, 210, u, v, mark.long("diameter") / 2);
  return beyond(beyond(whole, plus(start, into, -20), into), plus(start, into, deep), times(into, -1));
}
