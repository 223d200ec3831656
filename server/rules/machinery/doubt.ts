/**
 * Where the text has errors, what is found may only follow from them: one mistake, one message.
 */

import type { Problem } from "../../../grammar/problem.ts";
import type { Chair } from "../../chair/chair.ts";
import type { Named } from "../../design/design.ts";
import { partsNamed, stemOf } from "../../design/identity.ts";

export interface Doubt {
  /** The text has an error, or a part or value of it could not be worked out: whatever asks after what is missing keeps quiet. */
  anywhere: boolean;
  /** Whether an error stands in what a finding speaks of: its parts, or the joint between them. */
  about(subject: string): boolean;
}

/** What the errors of a file leave in doubt. */
export function doubtIn(chair: Chair, problems: readonly Problem[]): Doubt {
  const errors = problems.filter(({ severity }) => severity === "error");
  const doubtful = new Set<Named>();
  for (const declared of chair.design.names.values()) {
    const { start, end } = declared.statement;
    if (declared.file === undefined && errors.some((error) => error.start >= start && error.end <= end)) {
      doubtful.add(declared);
    }
  }
  const { names } = chair.design;
  return {
    anywhere: errors.length > 0 || !allBuilt(chair) || chair.faults.some(({ is }) => is === "failed"),
    about(subject) {
      if (doubtful.size === 0) return false;
      const joint = chair.joints.get(subject)?.design;
      const spoken = [...partsNamed(subject).map(stemOf), ...(joint === undefined ? [] : [joint])];
      return spoken.some((name) => {
        const declared = names.get(name);
        return declared !== undefined && doubtful.has(declared);
      });
    },
  };
}

function allBuilt(chair: Chair): boolean {
  const built = new Set([...chair.members.values()].map(({ id }) => id.stem));
  const { posts, rails, slats, blocks } = chair.design;
  return [posts, rails, slats, blocks].every((parts) => [...parts.keys()].every((name) => built.has(name)));
}
