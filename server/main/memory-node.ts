/**
 * A server's process gives memory back once typing rests. What studies leave behind is collected only as far as V8 needs room, so that an
 * afternoon's garbage would stay until then.
 */
import v8 from "node:v8";
import { runInNewContext } from "node:vm";

interface Resting {
  /** How long nothing is looked at before memory is collected, ms. */
  wait: number;
  /** Less than this since the last time is left to V8, bytes. */
  least: number;
  /** Bytes in the heap. */
  used(): number;
  /** Collects all garbage and gives free pages back. */
  collect(): unknown;
}

/** Told of each look at a file, it collects once the looks have rested. */
export function collectsAtRest(given: Partial<Resting> = {}): () => void {
  const {
    wait = 4000,
    least = 24e6,
    used = () => process.memoryUsage().heapUsed,
    collect = collector(),
  } = given;
  let left = used();
  let timer: NodeJS.Timeout | undefined;
  const rest = async () => {
    if (used() - left < least) return;
    await collect();
    left = used();
  };
  return () => {
    clearTimeout(timer);
    timer = setTimeout(rest, wait);
    timer.unref();
  };
}

/** V8's own collection of everything, in a task of its own; contexts made while the flag is set have it. */
function collector(): () => Promise<unknown> {
  v8.setFlagsFromString("--expose-gc");
  const gc: (how: object) => Promise<unknown> = runInNewContext("gc");
  v8.setFlagsFromString("--no-expose-gc");
  const major = () => gc({ type: "major", execution: "async" });
  // Only the second gives back the pages that the first has left nearly empty.
  return () => major().then(major);
}
