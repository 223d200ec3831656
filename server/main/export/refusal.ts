/** Written into files that hold a time: fixed, so that the same text gives the same bytes. Local, as zip entries have it. */
export const STAMP = new Date(1980, 0, 1).getTime();

/** Why a chair is not exported, as the end of a sentence; nothing when it can be. */
export function whyNotExported(
  chair: { members: ReadonlyMap<string, unknown> },
  errors: number,
): string | undefined {
  if (errors > 0) {
    const [many, they] = errors === 1 ? ["1 error", "it is"] : [`${errors} errors`, "they are"];
    return `it has ${many}, and would be exported wrong before ${they} mended`;
  }
  return chair.members.size === 0 ? "there are no parts to export" : undefined;
}
