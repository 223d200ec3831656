/**
 * A bow as the cutter makes it: bent to its form by a fair curve through the form's places. x to the left from the middle between its ends, y up
 * from the line between them in its plane, z to its front, or to the top of one that lies.
 */
import { beyond, hull, lessThan, roundBar, type Solid, together } from "../solids/manifold.ts";
import { across, direction, inner, outer, plus, times, type V } from "../solids/vectors.ts";
import type { Mates, Mouth, Tenon } from "./mates.ts";
import type { Read, SheetRead } from "./reading.ts";
import type { Flat } from "./stick.ts";

/** Places of a section every so many mm. */
const STEP = 5;
const FLATS = 64;
/** How far it runs on straight before its ends are cut, mm. */
const PAST = 60;
/** Beyond the surface, so that nothing is left of it; mm. */
const OUT = 12;

const NORMAL: V = [0, 0, 1];

interface Spot {
  at: number;
  p: V;
  /** Not of unit length: the rate of the place. */
  way: V;
}

/** Either end: its shoulder, and the way out along the bow's own line. */
interface End extends Flat {
  way: V;
  foot?: Read;
}

export class Bow {
  readonly #sheet: SheetRead;
  readonly #long: number;
  readonly #spots: Spot[];

  constructor(sheet: SheetRead) {
    this.#sheet = sheet;
    const [bend] = sheet.all("bend");
    this.#long = bend!.long("along");
    const half = sheet
      .all("form")
      .map((mark) => ({ at: mark.long("along"), p: [mark.long("across"), mark.long("rise"), 0] as V }));
    const other = half.slice(0, -1).map(({ at, p: [x, y] }) => ({ at: this.#long - at, p: [-x, y, 0] as V }));
    const all = [...half, ...other.reverse()];
    const lean = bend!.towards("ends lean to", "outside", "inside", "angle");
    const [sine, cosine] = [Math.sin(lean), Math.cos(lean)];
    this.#spots = all.map(({ at, p }, k) => {
      if (k === 0) return { at, p, way: [sine, cosine, 0] };
      if (k === all.length - 1) return { at, p, way: [sine, -cosine, 0] };
      const [before, after] = [all[k - 1]!, all[k + 1]!];
      return { at, p, way: times(plus(after.p, before.p, -1), 1 / (after.at - before.at)) };
    });
  }

  cut(): Solid {
    const ends = this.#ends();
    let wood = this.#wood();
    for (const { at, out } of ends) wood = beyond(wood, at, times(out, -1));
    const tenons = ends.flatMap((end) => (end.foot ? [tenonOf(end, end.foot)] : []));
    return this.#bores()
      .map(({ mark, at, into }) => {
        const u = direction(across(NORMAL, into));
        const whole = roundBar(at, into, 150, u, outer(into, u), mark.long("diameter") / 2, FLATS);
        const begun = beyond(whole, plus(at, into, -OUT), into);
        return beyond(begun, plus(at, into, mark.longOr("deep", 100)), times(into, -1));
      })
      .reduce(lessThan, together([wood, ...tenons]));
  }

  mates(): Mates {
    const ends = this.#ends();
    return {
      tenons: ends.flatMap(({ at, way, foot }): Tenon[] => (foot ? [{ end: foot, at, into: way }] : [])),
      mouths: this.#bores(),
      laps: [],
      ends: ends.map(({ at }) => at),
    };
  }

  /** The centre line so far along: the place, and the unit way there. */
  #at(along: number): { p: V; way: V } {
    const next = Math.max(
      1,
      this.#spots.findIndex(({ at }) => at >= along - 1e-9),
    );
    const [a, b] = [this.#spots[next - 1]!, this.#spots[next]!];
    const h = b.at - a.at;
    const t = (along - a.at) / h;
    const mix = (ka: number, kb: number, la: number, lb: number): V =>
      plus(plus(plus(times(a.p, ka), b.p, kb), a.way, la * h), b.way, lb * h);
    const p = mix(
      2 * t ** 3 - 3 * t ** 2 + 1,
      3 * t ** 2 - 2 * t ** 3,
      t ** 3 - 2 * t ** 2 + t,
      t ** 3 - t ** 2,
    );
    const rate = mix(6 * t ** 2 - 6 * t, 6 * t - 6 * t ** 2, 3 * t ** 2 - 4 * t + 1, 3 * t ** 2 - 2 * t);
    return { p, way: direction(rate) };
  }

  #sizeAt(along: number): { thick: number; wide: number } {
    const { stock } = this.#sheet;
    const [bend] = this.#sheet.all("bend");
    const [thick, wide] = stock.has("diameter")
      ? [stock.long("diameter"), stock.long("diameter")]
      : [stock.long("thick"), stock.long("wide")];
    const share = Math.abs((2 * along) / this.#long - 1);
    const mix = (crown: number, end: number) => crown + (end - crown) * share;
    return {
      thick: mix(thick, bend!.longOr("thick at the ends", thick)),
      wide: mix(wide, bend!.longOr("wide at the ends", wide)),
    };
  }

  #ring(p: V, way: V, { thick, wide }: { thick: number; wide: number }): V[] {
    const out = outer(way, NORMAL);
    if (this.#sheet.stock.has("diameter"))
      return Array.from({ length: FLATS }, (_, k): V => {
        const angle = (2 * Math.PI * k) / FLATS;
        return plus(plus(p, out, (thick / 2) * Math.cos(angle)), NORMAL, (thick / 2) * Math.sin(angle));
      });
    return [1, -1].flatMap((a) =>
      [1, -1].map((b) => plus(plus(p, out, (a * thick) / 2), NORMAL, (b * wide) / 2)),
    );
  }

  #wood(): Solid {
    const count = Math.ceil(this.#long / STEP);
    const rings = Array.from({ length: count + 1 }, (_, k) => {
      const along = (this.#long * k) / count;
      const { p, way } = this.#at(along);
      return this.#ring(p, way, this.#sizeAt(along));
    });
    const past = (along: number, by: number): V[] => {
      const { p, way } = this.#at(along);
      return this.#ring(plus(p, way, by), way, this.#sizeAt(along));
    };
    const all = [past(0, -PAST), ...rings, past(this.#long, PAST)];
    return together(all.slice(1).map((ring, k) => hull([...all[k]!, ...ring])));
  }

  #ends(): End[] {
    return [0, 1].map((which) => {
      const name = which === 0 ? "left" : "right";
      const { p, way } = this.#at(which * this.#long);
      const outward = times(way, which === 0 ? -1 : 1);
      const out = outer(way, NORMAL);
      const foot = this.#sheet.all("foot").find(({ mark }) => mark.face === name);
      const slant = (one: string, other: string) =>
        foot ? -Math.tan(foot.towards("longer to", one, other, "angle")) : 0;
      const shoulder = plus(plus(outward, out, slant("outside", "inside")), NORMAL, slant("front", "back"));
      return { at: p, out: direction(shoulder), way: outward, ...(foot && { foot }) };
    });
  }

  #bores(): Mouth[] {
    return this.#sheet.all("bow-bore", "through-bow-bore").map((mark) => {
      const along = mark.long("along");
      const { p, way } = this.#at(along);
      const { thick, wide } = this.#sizeAt(along);
      const out = outer(way, NORMAL);
      const side = faceOf(mark.mark.face, out);
      const beside = faceOf(mark.word("beside"), out);
      const half = (face: V) => (Math.abs(inner(face, NORMAL)) > 0.5 ? wide : thick) / 2;
      let [normal, over] = [side, beside];
      let at = plus(p, side, half(side));
      if (mark.has("round")) {
        const round = mark.angle("round");
        normal = plus(times(side, Math.cos(round)), beside, Math.sin(round));
        over = plus(times(beside, Math.cos(round)), side, -Math.sin(round));
        at = plus(p, normal, thick / 2);
      } else at = plus(at, beside, half(beside) - mark.long("in"));
      const lean = (way: V, one: string, other: string) =>
        times(way, Math.tan(mark.towards("leans to", one, other, "angle")));
      const [one, other] = [mark.word("beside"), OPPOSITE[mark.word("beside")]!];
      const into = plus(plus(times(normal, -1), lean(way, "right end", "left end")), lean(over, one, other));
      return { mark, at, into: direction(into) };
    });
  }
}

const OPPOSITE: Record<string, string> = {
  outside: "inside",
  inside: "outside",
  front: "back",
  back: "front",
  top: "bottom",
  bottom: "top",
};

/** The way that a face looks. */
function faceOf(name: string, out: V): V {
  if (name === "outside") return out;
  if (name === "inside") return times(out, -1);
  return name === "front" || name === "top" ? NORMAL : times(NORMAL, -1);
}

/** A round tenon along the line of the end, from its shoulder to as deep as it goes. */
function tenonOf({ at, out, way }: End, foot: Read): Solid {
  const u = direction(across(NORMAL, way));
  const v = outer(way, u);
  const [root, run] = [foot.long("diameter") / 2, foot.long("along it")];
  const rate = (foot.longOr("at its end", 2 * root) / 2 - root) / run;
  const ring = (by: number): V[] =>
    Array.from({ length: FLATS }, (_, k) => {
      const angle = (2 * Math.PI * k) / FLATS;
      const r = root + rate * by;
      return plus(plus(plus(at, way, by), u, r * Math.cos(angle)), v, r * Math.sin(angle));
    });
  const whole = hull([...ring(-root), ...ring(run + root)]);
  return beyond(beyond(whole, at, out), plus(at, out, foot.long("long")), times(out, -1));
}
