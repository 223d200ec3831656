/**
 * Where the text has errors, what is found may only follow from them: one mistake, one message.
 */

import type { Problem, Span } from "../../../grammar/problem.ts";
import type { Tree } from "../../../grammar/tree.ts";
import type { Chair } from "../../chair/chair.ts";
import type { Named, RailCourse, SeatDesign } from "../../design/design.ts";
import { partName, partsNamed, SEAT, stemOf } from "../../design/identity.ts";

export interface Doubt {
  /** The text has an error, or a part or value of it could not be worked out: whatever asks after what is missing keeps quiet. */
  anywhere: boolean;
  /** Whether an error stands in what a finding speaks of: its parts, or the joint between them. */
  about(subject: string): boolean;
  /** Whether a place lies in a block with an error. */
  at(place: Span): boolean;
}

/** What the errors of a file leave in doubt. */
export function doubtIn(chair: Chair, problems: readonly Problem[]): Doubt {
  const errors = problems.filter(({ severity }) => severity === "error");
  const within = anyWithin(errors);
  const doubtful = new Set<Named | SeatDesign>();
  const { names, seat } = chair.design;
  for (const declared of [...names.values(), ...(seat ? [seat] : [])]) {
    const { start, end } = declared.statement;
    if (declared.file === undefined && within(start, end)) doubtful.add(declared);
  }
  for (const name of halfPairs(chair, errors)) doubtful.add(name);
  return {
    anywhere:
      errors.length > 0 ||
      !allBuilt(chair) ||
      chair.faults.some(({ is }) => is === "failed" || is === "not-buildable"),
    at: ({ start, end }) =>
      [...doubtful].some(
        ({ statement, file }) => file === undefined && statement.start <= start && end <= statement.end,
      ),
    about(subject) {
      if (doubtful.size === 0) return false;
      const joint = chair.joints.get(subject)?.design;
      const spoken = [...partsNamed(subject).map(stemOf), ...(joint === undefined ? [] : [joint])];
      return spoken.some((name) => {
        const declared = name === partName(SEAT) ? seat : names.get(name);
        return declared !== undefined && doubtful.has(declared);
      });
    },
  };
}

/**
 * Problems without those of a value's range, or of a size that another one does not allow, where a line of the statement or of its block
 * was not read as it was meant: what they come to follows from that.
 */
export function withoutMisread(
  { statements, problems }: Tree,
  earlier: readonly Problem[],
): readonly Problem[] {
  if (!earlier.some(({ code }) => code === OUT_OF_RANGE || code === IMPOSSIBLE)) return earlier;
  const misread = statements.filter(({ start, end }) =>
    problems.some((each) => each.severity === "error" && each.start >= start && each.end <= end),
  );
  const inOne = (some: readonly Span[], { start, end }: Span): boolean =>
    some.some((each) => each.start <= start && end <= each.end);
  return earlier.filter(
    ({ code, ...span }) => !((code === OUT_OF_RANGE || code === IMPOSSIBLE) && inOne(misread, span)),
  );
}

const OUT_OF_RANGE = "let-out-of-range";
const IMPOSSIBLE = "impossible-size";

/** Whether some span lies within a stretch of text; asked quickly however many there are. */
function anyWithin(spans: readonly Span[]): (start: number, end: number) => boolean {
  const sorted = [...spans].sort((a, b) => a.start - b.start);
  // Of each and all after it, where the first ends.
  const firstEnd = new Array<number>(sorted.length);
  let least = Number.POSITIVE_INFINITY;
  for (let k = sorted.length - 1; k >= 0; k--) {
    least = Math.min(least, sorted[k]?.end ?? least);
    firstEnd[k] = least;
  }
  return (start, end) => {
    let [low, high] = [0, sorted.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((sorted[middle]?.start ?? 0) < start) low = middle + 1;
      else high = middle;
    }
    return (firstEnd[low] ?? Number.POSITIVE_INFINITY) <= end;
  };
}

/** Parts that stand once where a rail needs a pair, and the rails that run to them: all of them are built other than was meant. */
function halfPairs({ design }: Chair, errors: readonly Problem[]): Named[] {
  const places = errors.flatMap(({ code, related = [] }) => (code === "not-a-pair" ? related : []));
  const single = [...design.names.values()].filter(({ at, file }) =>
    places.some((place) => place.file === file && place.start === at.start),
  );
  const names = new Set(single.map(({ name }) => name));
  const reaching = [...design.rails.values()].filter(({ course }) =>
    coursesTo(course?.value).some((name) => names.has(name)),
  );
  return [...single, ...reaching];
}

const coursesTo = (course: RailCourse | undefined): string[] =>
  course === undefined ? [] : course.is === "from-to" ? [course.from.name, course.to.name] : [course.of.name];

function allBuilt(chair: Chair): boolean {
  const built = new Set([...chair.members.values()].map(({ id }) => id.stem));
  const { posts, rails, slats, sticks, bows, blocks } = chair.design;
  return [posts, rails, slats, sticks, bows, blocks].every((parts) =>
    [...parts.keys()].every((name) => built.has(name)),
  );
}
