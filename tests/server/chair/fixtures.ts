/**
 * Designs made by hand, for tests of the chair that do not want the text read first.
 */

import type { Statement } from "../../../grammar/tree.ts";
import type {
  BlockDesign,
  Design,
  EndDesign,
  Given,
  JointDesign,
  JointFacts,
  Knee,
  PartRef,
  PostDesign,
  PostFace,
  PostStation,
  RailCourse,
  RailDesign,
  RailStation,
  SeatDesign,
  SlatDesign,
  TrimDesign,
} from "../../../server/design/design.ts";

export const DEG = Math.PI / 180;

const NOWHERE = { start: 0, end: 0 };
const STATEMENT = { ...NOWHERE, within: "file", parts: [] } as unknown as Statement;

export const given = <T>(value: T): Given<T> => ({ value, at: NOWHERE });

const named = (name: string) => ({ name, at: NOWHERE, statement: STATEMENT });

const maybe = <K extends string, T>(key: K, value: T | undefined): { [P in K]?: Given<T> } =>
  (value === undefined ? {} : { [key]: given(value) }) as { [P in K]?: Given<T> };

export interface PostFacts {
  pair?: boolean;
  section?: [number, number];
  round?: number;
  place?: { station?: PostStation; out: number; back: number };
  height?: number;
  splay?: number;
  rake?: number;
  knees?: Partial<Knee>[];
  tapers?: { section: [number, number]; from: PostStation; to: PostStation; keeping?: PostFace[] }[];
  turn?: number;
  shape?: { station: PostStation; first: number; second: number }[];
  standsOn?: { rail: PartRef; station: RailStation };
  topInto?: { rail: PartRef; joint?: string };
  topSquare?: boolean;
}

export function post(name: string, facts: PostFacts): PostDesign {
  return {
    is: "post",
    ...named(name),
    pair: facts.pair ?? true,
    ...(facts.section ? { section: given({ first: facts.section[0], second: facts.section[1] }) } : {}),
    ...maybe("round", facts.round),
    ...(facts.place ? { place: given({ station: "foot" as PostStation, ...facts.place }) } : {}),
    ...maybe("height", facts.height),
    ...maybe("splay", facts.splay),
    ...maybe("rake", facts.rake),
    knees: (facts.knees ?? []).map((knee) =>
      given({ word: "bend", seen: "side", height: 0, stretch: "above", slope: 0, over: 0, ...knee } as Knee),
    ),
    tapers: (facts.tapers ?? []).map((t) =>
      given({
        section: { first: t.section[0], second: t.section[1] },
        from: t.from,
        to: t.to,
        keeping: t.keeping ?? [],
      }),
    ),
    ...maybe("turn", facts.turn),
    ...maybe("shape", facts.shape),
    ...maybe("standsOn", facts.standsOn),
    ...maybe("topInto", facts.topInto),
    ...maybe("topSquare", facts.topSquare),
  } as PostDesign;
}

export interface RailFacts {
  pair?: boolean;
  course: RailCourse;
  section?: [number, number];
  round?: number;
  up?: number | number[];
  fall?: number;
  slope?: number;
  flat?: boolean;
  face?: "flush" | "centred" | number;
  stand?: "plumb" | "with posts";
  arches?: { rise: number; edge: "below" | "above" }[];
  bow?: { rise: number; towards: "back" | "front" | "out" | "in" };
  tapers?: { section: [number, number]; towards: "end" | "ends" }[];
  joined?: string;
  ends?: { which: string; joined?: string; joint?: JointFacts; over?: number }[];
}

export function rail(name: string, facts: RailFacts): RailDesign {
  const face = facts.face ?? "centred";
  return {
    is: "rail",
    ...named(name),
    pair: facts.pair ?? false,
    course: given(facts.course),
    ...(facts.section ? { section: given({ first: facts.section[0], second: facts.section[1] }) } : {}),
    ...maybe("round", facts.round),
    ups: facts.up === undefined ? [] : [facts.up].flat().map(given),
    ...maybe("fall", facts.fall),
    ...maybe("slope", facts.slope),
    ...maybe("flat", facts.flat),
    face: given(typeof face === "number" ? { is: "inset", inset: face } : { is: face, inset: 0 }),
    stand: given(facts.stand ?? "plumb"),
    arches: (facts.arches ?? []).map(given),
    ...maybe("bow", facts.bow),
    tapers: (facts.tapers ?? []).map((t) =>
      given({ section: { first: t.section[0], second: t.section[1] }, towards: t.towards }),
    ),
    ...maybe("joined", facts.joined),
    shape: [],
    rests: [],
    ends: (facts.ends ?? []).map(endOf),
    halved: [],
  } as RailDesign;
}

function endOf(end: NonNullable<RailFacts["ends"]>[number]): EndDesign {
  return {
    which: given(end.which),
    ...maybe("joined", end.joined),
    joint: end.joint ?? {},
    ...(end.over === undefined ? {} : { over: given({ overhang: end.over }) }),
    statement: STATEMENT,
  } as EndDesign;
}

export const across = (name: string, station?: RailStation): RailCourse =>
  station ? { is: "across", of: { name }, station } : { is: "across", of: { name } };

export const fromTo = (from: string, to: string): RailCourse => ({
  is: "from-to",
  from: ref(from),
  to: ref(to),
});

/** `front` or `front.left`. */
export function ref(text: string): PartRef {
  const [name, side] = text.split(/\.(?=left$|right$)/);
  return side ? { name: name!, side: side as "left" | "right" } : { name: name! };
}

export function slat(
  name: string,
  facts: {
    from: string;
    to: string;
    count?: number;
    stations?: RailStation[];
    section?: [number, number];
    round?: number;
    bow?: SlatDesign["bow"] extends Given<infer B> | undefined ? B : never;
    joined?: string;
  },
): SlatDesign {
  return {
    is: "slat",
    ...named(name),
    from: given(ref(facts.from)),
    to: given(ref(facts.to)),
    ...maybe("count", facts.count),
    ...maybe("stations", facts.stations),
    ...(facts.section ? { section: given({ first: facts.section[0], second: facts.section[1] }) } : {}),
    ...maybe("round", facts.round),
    ...maybe("bow", facts.bow),
    ...maybe("joined", facts.joined),
    ends: [],
  } as SlatDesign;
}

export function block(
  name: string,
  facts: { in: string; along: number; thick: number; up?: number },
): BlockDesign {
  return {
    is: "block",
    ...named(name),
    in: given(ref(facts.in)),
    along: given(facts.along),
    thick: given(facts.thick),
    ...maybe("up", facts.up),
  } as BlockDesign;
}

export function joint(name: string, facts: JointFacts): JointDesign {
  return { is: "joint", ...named(name), ...facts };
}

export function seat(
  kind: SeatDesign["kind"],
  on: string[],
  facts: { thick?: number; proud?: number; sag?: number },
): SeatDesign {
  return {
    is: "seat",
    kind,
    at: NOWHERE,
    statement: STATEMENT,
    on: on.map((name) => given(ref(name))),
    ...maybe("thick", facts.thick),
    ...maybe("proud", facts.proud),
    ...maybe("sag", facts.sag),
  } as SeatDesign;
}

export const trim = (posts: string[], length: number): TrimDesign => ({
  posts: posts.map((name) => given(ref(name))),
  length: given(length),
  statement: STATEMENT,
});

export type Part = PostDesign | RailDesign | SlatDesign | BlockDesign | JointDesign | SeatDesign | TrimDesign;

export function design(...parts: Part[]): Design {
  const of = <T extends Part>(is: string) => parts.filter((part) => "is" in part && part.is === is) as T[];
  const mapOf = <T extends Part & { name: string }>(is: string) =>
    new Map(of<T>(is).map((part) => [part.name, part]));
  const seats = of<SeatDesign>("seat");
  return {
    titleAt: NOWHERE,
    units: "mm",
    sitter: given({ is: "adult" }),
    timber: given({ species: "white-ash", moisture: 9 }),
    lets: new Map(),
    posts: mapOf<PostDesign>("post"),
    rails: mapOf<RailDesign>("rail"),
    slats: mapOf<SlatDesign>("slat"),
    sticks: new Map(),
    bows: new Map(),
    blocks: mapOf<BlockDesign>("block"),
    joints: mapOf<JointDesign>("joint"),
    ...(seats[0] ? { seat: seats[0] } : {}),
    angles: new Map(),
    trims: parts.filter((part): part is TrimDesign => "posts" in part),
    limits: [],
    requires: [],
    accepts: [],
    notes: [],
    boards: new Map(),
    yards: new Map(),
    matches: [],
    loads: new Map(),
    names: new Map(),
    links: [],
    problems: [],
    wanted: new Map(),
  };
}

/** The mess chair of the boathouse, whole. */
export function boathouse(): Design {
  const seatHeight = 440;
  return design(
    joint("rail-tenon", {
      tenonThick: given({ share: 1 / 3, of: "rail" }),
      tenonLong: given({ mm: 28 }),
      shoulderTop: given(12),
      shoulderBottom: given(6),
      haunch: given({ long: 10 }),
      mitre: given({ gap: 1 }),
      glue: given("pva"),
    }),
    joint("crest-tenon", {
      tenonThick: given({ mm: 8 }),
      tenonLong: given({ mm: 18 }),
      shoulderTop: given(10),
      shoulderBottom: given(10),
    }),
    joint("slat-tenon", {
      tenonThick: given("full"),
      tenonLong: given({ mm: 12 }),
      shoulderTop: given(3),
      shoulderBottom: given(3),
    }),
    post("front", {
      section: [40, 40],
      place: { out: 205, back: 20 },
      height: seatHeight - 12,
      tapers: [{ section: [30, 30], from: 250, to: "foot" }],
    }),
    post("back", {
      section: [36, 36],
      place: { out: 175, back: 452 },
      height: 930,
      knees: [
        { word: "kick", height: 100, stretch: "below", slope: -4 * DEG, over: 50 },
        { word: "rake", height: 475, stretch: "above", slope: 6.5 * DEG, over: 90 },
      ],
      tapers: [{ section: [28, 26], from: 480, to: "top" }],
    }),
    rail("seat-front", {
      course: across("front"),
      section: [22, 70],
      up: seatHeight - 12,
      face: 3,
      arches: [{ rise: 14, edge: "below" }],
      joined: "rail-tenon",
    }),
    rail("seat-side", {
      pair: true,
      course: fromTo("front", "back"),
      section: [22, 70],
      up: seatHeight - 12,
      face: 3,
      joined: "rail-tenon",
      ends: [{ which: "back", joint: { line: given("square") } }],
    }),
    rail("seat-back", {
      course: across("back"),
      section: [22, 70],
      up: seatHeight - 12,
      face: 3,
      joined: "rail-tenon",
    }),
    rail("side-stretcher", {
      pair: true,
      course: fromTo("front", "back"),
      section: [18, 40],
      up: 190,
      fall: 15,
      joined: "rail-tenon",
    }),
    rail("back-lower", {
      course: across("back"),
      section: [18, 45],
      up: 570,
      stand: "with posts",
      joined: "rail-tenon",
    }),
    rail("crest", {
      course: across("back"),
      section: [20, 90],
      up: 925,
      stand: "with posts",
      bow: { rise: 22, towards: "back" },
      joined: "crest-tenon",
    }),
    slat("back-slat", { from: "back-lower", to: "crest", count: 4, section: [9, 38], joined: "slat-tenon" }),
    seat("drop-in", ["seat-front", "seat-side", "seat-back"], { thick: 40, proud: 12, sag: 15 }),
    trim(["back"], 10),
  );
}
