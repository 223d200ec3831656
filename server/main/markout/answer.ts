/**
 * Marking-out sheets for one request, wherever the worker runs.
 */
import { study } from "../../study.ts";
import { resolveNamed } from "../named-files.ts";
import { makeMarkout } from "./make.ts";
import type { MarkoutReply, MarkoutRequest } from "./messages.ts";
import { whyNot } from "./refusal.ts";

/** Answers by `reply`, the last time with what was made, what is missing, or why not. */
export async function answer(request: MarkoutRequest, reply: (message: MarkoutReply) => void): Promise<void> {
  const missing = new Set<string>();
  const read = (address: string): string | undefined => {
    const text = request.files[address];
    if (text === undefined) missing.add(address);
    return text ?? undefined;
  };
  const { text, address, options, date } = request;
  const { chair, problems } = study({ text, address, files: { resolve: resolveNamed, read } });
  if (missing.size > 0) return reply({ is: "missing", addresses: [...missing] });
  const errors = problems.filter(({ severity }) => severity === "error").length;
  const because = whyNot(chair, errors);
  if (because) return reply({ is: "refused", because });
  const { files, pages } = await makeMarkout(
    chair,
    { ...options, format: "pdf", date: new Date(date) },
    (done, of) => reply({ is: "progress", done, of }),
  );
  reply({ is: "made", bytes: files[0]!.bytes, pages });
}
