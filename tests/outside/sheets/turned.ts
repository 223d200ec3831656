/**
 * Turned stuff as the cutter makes it: x along the line of its own datum, then towards its front, then a quarter round from there.
 */
import { beyond, hull, lessThan, roundBar, type Solid, together } from "../solids/manifold.ts";
import { across, direction, inner, minus, outer, plus, size, times, type V } from "../solids/vectors.ts";
import type { Mouth, Tenon } from "./mates.ts";
import type { Read, SheetRead } from "./reading.ts";
import { ALONG, type Flat } from "./stick.ts";
import { tenonOf, tenonsAt } from "./tenons.ts";

const FLATS = 64;
const PAST = 60;
/** Beyond the surface, so that nothing is left of it; mm. */
const OUT = 12;

interface Run {
  origin: V;
  way: V;
}

export class TurnedStick {
  readonly #sheet: SheetRead;
  readonly #faces: string[];
  readonly #axis: { at: number; p: V }[];
  readonly #runs = new Map<string, Run>();

  constructor(sheet: SheetRead) {
    this.#sheet = sheet;
    const own = sheet.all("datum").find((datum) => datum.has("line"))!;
    this.#faces = own.word("faces").split(", ");
    const [a, b, c, d] = this.#faces as [string, string, string, string];
    for (const datum of sheet.all("datum")) {
      const turn = (one: string, other: string) => Math.tan(datum.towards("turns to", one, other, "angle"));
      this.#runs.set(
        datum.word("name"),
        datum === own
          ? { origin: [0, 0, 0], way: ALONG }
          : {
              origin: [
                datum.long("along"),
                datum.towards("to", a, c, "long"),
                datum.towards("to", b, d, "long"),
              ],
              way: direction([1, turn(a, c), turn(b, d)]),
            },
      );
    }
    const bent = sheet
      .all("axis")
      .map(
        (mark): V => [mark.long("at"), mark.towards("to", a, c, "long"), mark.towards("to", b, d, "long")],
      );
    const stations = sheet.all("station");
    const line: V[] = bent.length
      ? bent
      : [
          [0, 0, 0],
          [stations[stations.length - 1]!.long("at"), 0, 0],
        ];
    let at = 0;
    this.#axis = line.map((p, k) => {
      if (k > 0) at += size(minus(p, line[k - 1]!));
      return { at, p };
    });
  }

  cut(): Solid {
    const ends = this.#sheet.all("end");
    let wood = this.#wood();
    const planes = ends.map((end) => this.#end(end));
    planes.forEach(({ at, out }, k) => {
      wood = beyond(wood, plus(at, out, ends[k]!.longOr("runs on", 0)), times(out, -1));
    });
    ends.forEach((end, k) => {
      const { stands, bored } = tenonOf(this.#sheet, end.mark.face, this.#place(end, planes[k]!));
      if (stands) wood = together([wood, stands]);
      if (bored) wood = lessThan(wood, bored);
    });
    return this.#holes().reduce(lessThan, wood);
  }

  /** Radius at a distance along the axis. */
  #radius(at: number): number {
    const stations = this.#sheet
      .all("station")
      .map((mark) => ({ at: mark.long("at"), d: mark.long("diameter") }));
    const next = stations.findIndex((station, k) => k > 0 && station.at >= at);
    const k = next < 0 ? stations.length - 1 : next;
    const [a, b] = [stations[k - 1]!, stations[k]!];
    const t = Math.min(1, Math.max(0, (at - a.at) / (b.at - a.at)));
    return (a.d + (b.d - a.d) * t) / 2;
  }

  /** A point of the axis and its way there; `t` along it. */
  #onAxis(t: number): { p: V; way: V } {
    const next = this.#axis.findIndex(({ at }, k) => k > 0 && at >= t);
    const k = next < 0 ? this.#axis.length - 1 : next;
    const [a, b] = [this.#axis[k - 1]!, this.#axis[k]!];
    const way = direction(minus(b.p, a.p));
    return { p: plus(a.p, way, t - a.at), way };
  }

  #wood(): Solid {
    const long = this.#axis[this.#axis.length - 1]!.at;
    const stops = [
      -PAST,
      ...this.#axis.map(({ at }) => at),
      ...this.#sheet.all("station").map((mark) => mark.long("at")),
      long + PAST,
    ]
      .sort((a, b) => a - b)
      .filter((t, k, all) => k === 0 || t - all[k - 1]! > 1e-3);
    const rings = stops.map((t) => {
      const { p } = this.#onAxis(t);
      const way = direction(plus(this.#onAxis(t - 1e-3).way, this.#onAxis(t + 1e-3).way));
      const u = direction(across([0, 1, 0], way));
      const v = outer(way, u);
      const r = this.#radius(t);
      return Array.from({ length: FLATS }, (_, k): V => {
        const angle = (2 * Math.PI * k) / FLATS;
        return plus(plus(p, u, r * Math.cos(angle)), v, r * Math.sin(angle));
      });
    });
    return together(rings.slice(1).map((ring, k) => hull([...rings[k]!, ...ring])));
  }

  /** Out of the axis, so far round from the front. */
  #out(way: V, round: number): V {
    const zero = direction(across([0, 1, 0], way));
    return plus(times(zero, Math.cos(round)), outer(way, zero), Math.sin(round));
  }

  #end(end: Read): Flat {
    const first = end.word("is") === "first";
    const { p, way } = this.#onAxis(first ? 0 : this.#axis[this.#axis.length - 1]!.at);
    const outward = first ? times(way, -1) : way;
    if (!end.has("slant")) return { at: p, out: outward };
    const lean = Math.PI / 2 - end.angle("slant");
    const longest = this.#out(way, end.angle("longest at"));
    return { at: p, out: plus(times(outward, Math.cos(lean)), longest, -Math.sin(lean)) };
  }

  #place(end: Read, shoulder: Flat) {
    const first = end.word("is") === "first";
    const t = first ? 0 : this.#axis[this.#axis.length - 1]!.at;
    const { p, way } = this.#onAxis(t);
    const u = direction(across([0, 1, 0], way));
    const v = outer(way, u);
    const ways = [u, v, times(u, -1), times(v, -1)];
    return {
      shoulder,
      outward: first ? times(way, -1) : way,
      faces: this.#faces,
      way: (face: number) => ways[face]!,
      inside: (face: number, q: V) => this.#radius(t) - inner(minus(q, p), ways[face]!),
    };
  }

  /** What stands at its ends, or is let into them. */
  tenons(): Tenon[] {
    return this.#sheet
      .all("end")
      .flatMap((end) => tenonsAt(this.#sheet, end, this.#place(end, this.#end(end))));
  }

  /** Where its axis ends. */
  ends(): V[] {
    return this.#sheet.all("end").map((end) => this.#end(end).at);
  }

  /** What is entered. */
  mouths(): Mouth[] {
    return this.#sheet.all("hole", "through-hole", "mortise", "through-mortise").map((mark) => {
      if (mark.has("diameter")) {
        const { start, into } = this.#start(mark, mark.long("at"));
        return { mark, at: start, into };
      }
      const { start, into, run, tangent } = this.#start(mark, (mark.long("from") + mark.long("to")) / 2);
      return {
        mark,
        at: plus(start, tangent, this.#off(mark)),
        into,
        thick: direction(
          outer(
            into,
            plus(run.way, tangent, Math.tan(mark.towards("turns", "onward round", "back round", "angle"))),
          ),
        ),
      };
    });
  }

  /** How far onward round a mortise lies off the line that its place is told on. */
  #off(mark: Read): number {
    const back = mark.has("off to") && mark.word("off to") === "back round";
    return mark.longOr("off", 0) * (back ? -1 : 1);
  }

  #holes(): Solid[] {
    const all = this.#sheet.all("hole", "through-hole", "mortise", "through-mortise");
    return all.map((mark) => (mark.has("diameter") ? this.#bored(mark) : this.#chopped(mark)));
  }

  /** How far along the axis a place of a run lies. */
  #alongAxis({ origin, way }: Run, at: number): number {
    const p = plus(origin, way, at);
    let best = { off: Number.POSITIVE_INFINITY, t: 0 };
    for (let k = 1; k < this.#axis.length; k++) {
      const [a, b] = [this.#axis[k - 1]!, this.#axis[k]!];
      const run = direction(minus(b.p, a.p));
      const s = Math.min(b.at - a.at, Math.max(0, inner(minus(p, a.p), run)));
      const off = size(minus(p, plus(a.p, run, s)));
      if (off < best.off) best = { off, t: a.at + s };
    }
    return best.t;
  }

  /** Where it is marked on the surface, and the way in. */
  #start(mark: Read, at: number): { run: Run; out: V; tangent: V; start: V; into: V; radius: number } {
    const run = this.#runs.get(mark.mark.datum)!;
    const out = this.#out(run.way, mark.angle("round"));
    const tangent = outer(run.way, out);
    const radius = this.#radius(this.#alongAxis(run, at));
    const [first, last] = this.#sheet.all("end").map((end) => end.mark.face) as [string, string];
    const along = Math.tan(mark.towards("leans to", last, first, "angle"));
    const onward = Math.tan(mark.towards("leans", "onward round", "back round", "angle"));
    return {
      run,
      out,
      tangent,
      radius,
      start: plus(plus(run.origin, run.way, at), out, radius),
      into: direction(plus(plus(times(out, -1), run.way, along), tangent, onward)),
    };
  }

  #bored(mark: Read): Solid {
    const { start, into, run } = this.#start(mark, mark.long("at"));
    const u = direction(across(run.way, into));
    const whole = roundBar(start, into, 150, u, outer(into, u), mark.long("diameter") / 2);
    const deep = mark.longOr("deep", 140);
    return beyond(beyond(whole, plus(start, into, -OUT), into), plus(start, into, deep), times(into, -1));
  }

  #chopped(mark: Read): Solid {
    const [from, to] = [mark.long("from"), mark.long("to")];
    const { run, out, tangent, into, radius } = this.#start(mark, (from + to) / 2);
    const off = this.#off(mark);
    const half = mark.long("thick") / 2;
    const deep = mark.longOr("deep", 140);
    const down = -inner(into, out);
    const turn = mark.towards("turns", "onward round", "back round", "angle");
    const middle = (from + to) / 2;
    const points = [from, to].flatMap((end) =>
      [-half, half].flatMap((side) => {
        const x = end - side * Math.sin(turn);
        const y = off + (end - middle) * Math.tan(turn) + side * Math.cos(turn);
        const p = plus(plus(plus(run.origin, run.way, x), out, radius), tangent, y);
        return [plus(p, into, -OUT / down), plus(p, into, deep / down)];
      }),
    );
    return hull(points);
  }
}
