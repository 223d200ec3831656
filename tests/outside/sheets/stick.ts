/**
 * Squared stuff as the cutter sets it out: x along the stick from its own datum, then towards its first face and towards its second.
 */
import { hull, type Solid, together } from "../solids/manifold.ts";
import { across, direction, inner, minus, outer, plus, size, times, type V } from "../solids/vectors.ts";
import type { Read, SheetRead } from "./reading.ts";

/** A straight run: where its datum crosses the centre line, and its way. */
export interface CutRun {
  origin: V;
  way: V;
}

export interface Flat {
  at: V;
  out: V;
}

/** Further than any tenon is long, mm. */
const PAST = 90;

/** A rail's section at a station: how far its faces lie up and outward of the line, and how much a distance square to them is there. */
export interface Section {
  at: number;
  inside: number;
  outside: number;
  straightBottom: number;
  square: number;
}

/** On a face this narrow a mark half a step off turns a line further than a bevel half a tenth of a degree off; its stock lies on as much, mm. */
const NARROW = 57;

export const ALONG: V = [1, 0, 0];

export class Stick {
  readonly faces: readonly string[];
  readonly runs: ReadonlyMap<string, CutRun>;
  readonly ends: readonly Read[];
  readonly #square: boolean;
  readonly #stations: { at: number; corners: V[] }[];

  constructor(sheet: SheetRead) {
    const [own, ...others] = sheet.all("datum").sort((a, b) => Number(b.has("line")) - Number(a.has("line")));
    this.faces = own!.word("faces").split(", ");
    this.ends = sheet.all("end");
    this.#square = sheet.stock.has("section");
    const runs = new Map<string, CutRun>([[own!.word("name"), { origin: [0, 0, 0], way: ALONG }]]);
    for (const datum of others) runs.set(datum.word("name"), this.#runOf(datum));
    this.runs = runs;
    const stations = sheet.all("station");
    const central = own!.word("line").startsWith("centre");
    const [wide, thick] = [sheet.stock.long("wide"), sheet.stock.long("thick")];
    const plain = central ? [wide / 2, thick / 2, wide / 2, thick / 2] : [0, 0, wide, thick];
    this.#stations = stations.length
      ? stations.map((mark) => ({
          at: mark.long("at"),
          corners: this.#cornersOf(mark.long("at"), (k, beside) => {
            const name = this.faces[k]!;
            return mark.longOr(`${name} at ${this.faces[beside]}`, mark.longOr(name, Number.NaN));
          }),
        }))
      : [0, sheet.stock.long("long")].map((at) => ({ at, corners: this.#cornersOf(at, (k) => plain[k]!) }));
  }

  #runOf(datum: Read): CutRun {
    const [a, b, c, d] = this.faces as [string, string, string, string];
    const turn = (one: string, other: string) => Math.tan(datum.towards("turns to", one, other, "angle"));
    return {
      origin: [datum.long("along"), datum.towards("to", a, c, "long"), datum.towards("to", b, d, "long")],
      way: direction([1, turn(a, c), turn(b, d)]),
    };
  }

  /** The corner between each face and the next; `off` gives how far a face lies from the line at its arris with another. */
  #cornersOf(at: number, off: (face: number, beside: number) => number): V[] {
    return [
      [at, off(0, 1), off(1, 0)],
      [at, -off(2, 1), off(1, 2)],
      [at, -off(2, 3), -off(3, 2)],
      [at, off(0, 3), -off(3, 0)],
    ];
  }

  /** Those of a rail, whose faces are its top, outside, bottom and inside. */
  sections(): Section[] {
    const all = this.#stations;
    const own = all.map(({ at, corners: [topOutside, , bottomInside] }) => ({
      at,
      outside: topOutside![2],
      inside: bottomInside![2],
      bottom: bottomInside![1],
    }));
    const [first, last] = [own[0]!, own[own.length - 1]!];
    return own.map(({ at, outside, inside }, k) => {
      const [a, b] = [own[Math.max(0, k - 1)]!, own[Math.min(own.length - 1, k + 1)]!];
      const slope = (b.inside - a.inside) / (b.at - a.at);
      const straightBottom =
        first.bottom + ((last.bottom - first.bottom) * (at - first.at)) / (last.at - first.at);
      return { at, outside, inside, straightBottom, square: Math.hypot(1, slope) };
    });
  }

  sectionAt(x: number): Section {
    const all = this.sections();
    const next = Math.max(
      1,
      all.findIndex(({ at }) => at >= x) < 0 ? all.length - 1 : all.findIndex(({ at }) => at >= x),
    );
    const [a, b] = [all[next - 1]!, all[next]!];
    const t = (x - a.at) / (b.at - a.at);
    const mid = (p: number, q: number) => p + (q - p) * t;
    return {
      at: x,
      outside: mid(a.outside, b.outside),
      inside: mid(a.inside, b.inside),
      straightBottom: mid(a.straightBottom, b.straightBottom),
      square: mid(a.square, b.square),
    };
  }

  run(name: string): CutRun {
    const run = this.runs.get(name);
    if (!run) throw new Error(`no datum ${name}`);
    return run;
  }

  /** The point of an arris at a distance along a run. */
  arris(k: number, run: CutRun, at: number): V {
    return this.#segment(k, run, at).point;
  }

  arrisWay(k: number, run: CutRun, at: number): V {
    return this.#segment(k, run, at).way;
  }

  #segment(k: number, { origin, way }: CutRun, at: number): { point: V; way: V; long: number } {
    const points = this.#stations.map(({ corners }) => corners[k]!);
    const x = points.map((p) => inner(minus(p, origin), way));
    let next = x.findIndex((value, i) => i > 0 && value >= at);
    if (next < 0) next = points.length - 1;
    const [a, b] = [points[next - 1]!, points[next]!];
    const t = (at - x[next - 1]!) / (x[next]! - x[next - 1]!);
    return { point: plus(a, minus(b, a), t), way: direction(minus(b, a)), long: size(minus(b, a)) };
  }

  /** The face there, looking out of the wood. */
  flat(face: number, run: CutRun, at: number): Flat {
    const { way } = run;
    const [before, after] = [(face + 3) % 4, face];
    const p = this.arris(before, run, at);
    const q = this.arris(after, run, at);
    const mean = plus(this.arrisWay(before, run, at), this.arrisWay(after, run, at));
    // Figures of two arrises, each rounded, would turn a narrow face by more than a square does.
    const over = this.#square ? outer(way, direction(across(this.way(face), way))) : minus(q, p);
    const out = direction(outer(mean, over));
    return { at: p, out: inner(out, this.way(face)) < 0 ? times(out, -1) : out };
  }

  /** The way that a face looks, square to the stick's own line. */
  way(face: number): V {
    return (
      [
        [0, 1, 0],
        [0, 0, 1],
        [0, -1, 0],
        [0, 0, -1],
      ] as V[]
    )[face]!;
  }

  faceNamed(name: string): number {
    const k = this.faces.indexOf(name);
    if (k < 0) throw new Error(`no face "${name}"`);
    return k;
  }

  /** All wood, running on past both ends. */
  wood(): Solid {
    const sections = this.#stations.map(({ corners }) => corners);
    const on = (from: V[], to: V[]) => to.map((p, k) => plus(p, direction(minus(p, from[k]!)), PAST));
    const long = [
      on(sections[1]!, sections[0]!),
      ...sections,
      on(sections[sections.length - 2]!, sections[sections.length - 1]!),
    ];
    const pieces = long.slice(1).map((section, k) => hull([...long[k]!, ...section]));
    return together(pieces);
  }

  /** The plane that an end is cut to, by the lines on its four faces: each through its marks, or by the bevel where that is truer. */
  cut(end: Read, sheet: SheetRead): Flat {
    const name = end.mark.face;
    const run = this.run(end.mark.datum);
    const outward = end.word("is") === "first" ? times(run.way, -1) : run.way;
    const corners: V[] = [];
    const ways: V[] = [];
    for (const line of sheet.all("line").filter((mark) => mark.word("end") === name)) {
      const face = this.faceNamed(line.mark.face);
      const stock = this.faceNamed(line.word("stock"));
      const shared = stock === (face + 1) % 4 ? face : (face + 3) % 4;
      const other = shared === face ? (face + 3) % 4 : face;
      corners[shared] ??= this.arris(shared, run, line.long("at"));
      corners[other] ??= this.arris(other, run, line.long("across"));
      const over = minus(corners[other]!, corners[shared]!);
      const { way: arris, long } = this.#segment(shared, run, line.long("at"));
      const inward = inner(arris, outward) > 0 ? times(arris, -1) : arris;
      const way = size(over) < NARROW && long > NARROW ? bevelled(inward, over, line) : direction(over);
      ways[face] = shared === face ? times(way, -1) : way;
    }
    const [a, b, c, d] = corners as [V, V, V, V];
    const out = direction(outer(minus(ways[0]!, ways[2]!), minus(ways[1]!, ways[3]!)));
    const middle = times(plus(plus(a, b), plus(c, d)), 1 / 4);
    return { at: middle, out: inner(out, outward) < 0 ? times(out, -1) : out };
  }

  /** The way out of an end. */
  outward(end: Read): V {
    const { way } = this.run(end.mark.datum);
    return end.word("is") === "first" ? times(way, -1) : way;
  }

  /** The way that a face looks at an end, square to the stick there. */
  wayAt(face: number, end: Read): V {
    const outward = this.outward(end);
    const run = this.run(end.mark.datum);
    const { out } = this.flat(
      face,
      run,
      end.word("is") === "first" ? this.reach(run)[0] : this.reach(run)[1],
    );
    return direction(across(out, outward));
  }

  /** How far the wood's first and last stations lie along a run. */
  reach({ origin, way }: CutRun): [number, number] {
    const x = (corners: V[]) => corners.map((p) => inner(minus(p, origin), way));
    const last = this.#stations[this.#stations.length - 1]!;
    return [Math.min(...x(this.#stations[0]!.corners)), Math.max(...x(last.corners))];
  }
}

/** The way of a line across a face: at the bevel to the arris, which runs inward, and towards the other arris. */
function bevelled(inward: V, over: V, line: Read): V {
  const side = direction(plus(over, inward, -inner(over, inward)));
  const lean = line.has("slope") ? line.angle("slope") * Math.sign(90 - line.number("bevel")) : 0;
  return plus(times(side, Math.cos(lean)), inward, Math.sin(lean));
}
