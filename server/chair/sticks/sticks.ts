import { sentence } from "../../../grammar/sentences/sentence.ts";
import type { Design, StickDesign } from "../../design/design.ts";
import { type PartId, partName } from "../../design/identity.ts";
import { printLength } from "../../design/units.ts";
import { lineMeets } from "../../geometry/plane.ts";
import type { Plane } from "../../geometry/solid.ts";
import { cross, dot, mirrored, negate, squareTo, sub, unit } from "../../geometry/vec.ts";
import { attempt } from "../attempt.ts";
import { nearestOnBow } from "../bows/bow.ts";
import type { Bow, Member, Rail, RailEnd, SeatSurface, Side } from "../chair.ts";
import type { Fault } from "../fault.ts";
import { hostOf } from "../joints/hosting.ts";
import type { RailFrame } from "../rails/rail-frame.ts";
import { keepShape } from "../rails/rail-outline.ts";
import { alongStick, makeStick } from "../rails/stick.ts";
import { isOnPlan } from "../seat/solid/within.ts";
import { type HeadLine, headLine } from "./line.ts";
import { linesOf, type StickLine } from "./places.ts";

/** Less than this off a face is nothing, mm. */
const OFF = 0.05;

/** The sticks of one row, or of both rows of a pair: the left one's first. */
export function buildSticks(
  design: Design,
  stick: StickDesign,
  seat: SeatSurface | undefined,
  memberNamed: (name: string) => Member | undefined,
  faults: Fault[],
): Rail[] {
  const held = stick.to && memberNamed(holderName(stick, design));
  if (!seat || !stick.round || (held?.is !== "rail" && held?.is !== "bow")) return [];
  const bow = stick.through && memberNamed(stick.through.value.bow.name);
  const heads = headLine(held);
  const sides: Side[] = stick.pair ? ["left", "right"] : ["middle"];
  const part = stick.name;
  const lines = linesOf({
    stick,
    seat,
    heads,
    ...(bow?.is === "bow" && { through: bow }),
    units: design.units,
    tell: (at, message) => faults.push({ is: "no-room", part, at, message }),
  });
  if (!lines) return [];
  return lines.flatMap((line, k) =>
    sides.flatMap((side) => {
      const id: PartId = { stem: stick.name, ...(stick.count.value > 1 && { row: k + 1 }), side };
      const own = side === "right" ? mirror(line, heads) : line;
      const made = attempt(partName(id), stick.at, faults, () =>
        buildStick(stick, id, own, { seat, heads, head: stick.to!.value.name }, faults),
      );
      if (!made) return [];
      tellOutside(stick, made, seat, own, faults);
      if (bow?.is === "bow") passThrough(stick, made, bow, design, faults);
      return [made];
    }),
  );
}

/** A stick's head is held by what stands once; a repeated rail's first member where none is named. */
const holderName = ({ to }: StickDesign, { rails }: Design): string => {
  const name = to!.value.name;
  return (rails.get(name)?.ups.length ?? 0) > 1 ? `${name}.1` : name;
};

const mirror = ({ foot, head, s }: StickLine, { length }: HeadLine): StickLine => ({
  foot: mirrored(foot),
  head: mirrored(head),
  s: length - s,
});

function buildStick(
  stick: StickDesign,
  id: PartId,
  { foot, head, s }: StickLine,
  { seat, heads, head: headName }: { seat: SeatSurface; heads: HeadLine; head: string },
  faults: Fault[],
): Rail | undefined {
  const name = partName(id);
  const direction = unit(sub(head, foot));
  const outward = unit(squareTo([0, 1, 0], direction));
  const across = cross(direction, outward);
  const upward = across[0] < 0 ? negate(across) : across;
  const hosts = [hostOf(seat), heads.host(s)] as const;
  const cuts: [Plane, Plane] = [seat.plane, hosts[1].face(negate(direction), head)];
  const end = lineMeets(cuts[1], head, direction);
  if (!end || dot(sub(end, foot), direction) <= 0) return undefined;
  const round = stick.round!.value;
  const frame: RailFrame = {
    start: foot,
    end,
    along: direction,
    outward,
    upward,
    cuts,
    free: [0, Number.POSITIVE_INFINITY],
    wind: 0,
  };
  const tapers = stick.tapers.map(({ value }) => ({
    thick: value.diameter,
    wide: value.diameter,
    towards: value.towards,
  }));
  const stations = stick.shape.map(({ value }) => value);
  const built = makeStick(frame, {
    thick: round,
    wide: round,
    round: true,
    tapers,
    ...(stations.length > 0 && { stations }),
    past: [0, hosts[1].fallBack((tapers[0]?.thick ?? round) / 2, end)],
    enters: [[], hosts[1].pieces],
  });
  const ends = ["seat", headName].map(
    (endName, which): RailEnd => ({
      name: endName,
      entered: hosts[which]!.entered,
      shoulder: cuts[which]!,
      ...built.shoulders[which]!,
    }),
  ) as [RailEnd, RailEnd];
  const found = hosts[1].check(ends[1].corners, cuts[1]);
  const common = { part: name, end: headName, at: (stick.heads ?? stick).at, towards: ends[1].entered!.name };
  if (found.gap !== undefined) faults.push({ is: "end-reaches-nothing", ...common, gap: found.gap });
  else if (found.off > OFF) faults.push({ is: "rail-misses-post", ...common, by: found.off });
  const rail: Rail = {
    is: "stick",
    id,
    name,
    side: id.side,
    design: stick,
    ...(stick.timber && { timber: stick.timber.value }),
    ends,
    start: foot,
    end,
    along: direction,
    outward,
    upward,
    thick: round,
    wide: round,
    round,
    length: built.length,
    body: built.body,
    ...alongStick(frame, built),
  };
  return keepShape(rail, built.shape);
}

/** A stick whose foot is not in the seat. */
function tellOutside(
  stick: StickDesign,
  made: Rail,
  seat: SeatSurface,
  { foot }: StickLine,
  faults: Fault[],
): void {
  if (made.side === "right" || isOnPlan(seat, foot)) return;
  const at = (stick.feet ?? stick.place ?? stick.through ?? stick).at;
  const message = sentence("fault.stick-outside");
  if (!faults.some((fault) => fault.at === at)) faults.push({ is: "no-room", part: made.name, at, message });
}

/** Bored where the stick passes; one that passes beside the bow is told. */
function passThrough(stick: StickDesign, made: Rail, bow: Bow, { units }: Design, faults: Fault[]): void {
  const { s, off, at } = nearestOnBow(bow, made.start, made.along);
  const { thick, wide } = bow.sizeAt(s);
  const room = Math.max(thick, wide) / 2;
  const x = dot(sub(at, made.start), made.along);
  if (off < room && x > 0 && x < made.length) {
    made.passes = { bow: bow.name, s, at, off };
    return;
  }
  if (made.side === "right") return;
  const [found, most] = [off, room].map((mm) => printLength(mm, units));
  const message = sentence("fault.stick-passes", { found: found!, bow: bow.name, most: most! });
  const fault: Fault = { is: "no-room", part: made.name, at: stick.through!.at, message };
  if (!faults.some((other) => other.at === fault.at)) faults.push(fault);
}
