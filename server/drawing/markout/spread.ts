/**
 * Labels moved apart along a line by as little as it takes, in their order: places no nearer than `gap`, between `low` and `high`.
 */
export function spread(wanted: readonly number[], gap: number, low: number, high: number): number[] {
  const order = wanted.map((_, k) => k).sort((a, b) => wanted[a]! - wanted[b]!);
  // Neighbours that are too near become one group, which stands about its own middle.
  const groups: { members: number[]; middle: number }[] = [];
  const settle = (group: { members: number[]; middle: number }) => {
    const half = ((group.members.length - 1) * gap) / 2;
    group.middle = Math.min(Math.max(group.middle, low + half), Math.max(high - half, low + half));
  };
  for (const k of order) {
    let group = { members: [k], middle: wanted[k]! };
    settle(group);
    for (let before = groups[groups.length - 1]; before && touches(before, group, gap); ) {
      groups.pop();
      const members = [...before.members, ...group.members];
      const middle = members.reduce((sum, m, at) => sum + wanted[m]! - at * gap, 0) / members.length;
      group = { members, middle: middle + ((members.length - 1) * gap) / 2 };
      settle(group);
      before = groups[groups.length - 1];
    }
    groups.push(group);
  }
  const places: number[] = [];
  for (const { members, middle } of groups)
    members.forEach((k, at) => {
      places[k] = middle + (at - (members.length - 1) / 2) * gap;
    });
  return places;
}

function touches(
  a: { members: number[]; middle: number },
  b: { members: number[]; middle: number },
  gap: number,
): boolean {
  const reach = ((a.members.length + b.members.length) / 2) * gap;
  return b.middle - a.middle < reach - 1e-9;
}
