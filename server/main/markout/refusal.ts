/** Why a chair is not marked out, as the end of a sentence; nothing when it can be. */
export function whyNot(
  chair: { posts: ReadonlyMap<string, unknown>; rails: ReadonlyMap<string, unknown> },
  errors: number,
): string | undefined {
  if (errors > 0) {
    const [many, are] = errors === 1 ? ["1 error", "it is"] : [`${errors} errors`, "they are"];
    return `it has ${many}, and timber should not be cut before ${are} mended`;
  }
  return chair.posts.size + chair.rails.size === 0 ? "there are no posts or rails to mark out" : undefined;
}
