/** Milliseconds of repeated work. */
export interface Timing {
  first: number;
  samples: number[];
  /** Processor time for each sample on average, all threads: steadier than the clock on a busy machine. */
  cpu: number;
}

/** Runs half as many warm-ups as samples, then the samples; the very first call is kept apart. */
export async function timed(count: number, work: (turn: number) => unknown): Promise<Timing> {
  const once = async (turn: number) => {
    const start = performance.now();
    await work(turn);
    return performance.now() - start;
  };
  const first = await once(0);
  for (let turn = 1; turn <= count / 2; turn++) await once(turn);
  const samples: number[] = [];
  const before = process.cpuUsage();
  for (let turn = 0; turn < count; turn++) samples.push(await once(count + turn));
  const { user, system } = process.cpuUsage(before);
  return { first, samples, cpu: (user + system) / 1000 / count };
}

/** The value that so large a share of the samples does not exceed. */
export function quantile(samples: readonly number[], share: number): number {
  const sorted = [...samples].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
}

/** Three figures, as many as a noisy machine is good for. */
export const figure = (value: number): string =>
  Number.isNaN(value)
    ? "–"
    : value >= 100
      ? value.toFixed(0)
      : value >= 10
        ? value.toFixed(1)
        : value.toFixed(2);

/** Rows under their headings, columns as wide as they need to be. */
export function table(headings: readonly string[], rows: readonly (readonly string[])[]): string {
  const all = [headings, ...rows];
  const widths = headings.map((_, at) => Math.max(...all.map((row) => (row[at] ?? "").length)));
  const line = (row: readonly string[]) =>
    row.map((cell, at) => (at === 0 ? cell.padEnd(widths[at]!) : cell.padStart(widths[at]!))).join("  ");
  return [line(headings), widths.map((width) => "─".repeat(width)).join("  "), ...rows.map(line)].join("\n");
}
