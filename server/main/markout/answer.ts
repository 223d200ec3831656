/**
 * Marking-out sheets for one request, wherever the worker runs.
 */
import { study } from "../../study.ts";
import { resolveNamed } from "../named-files.ts";
import { makeMarkout } from "./make.ts";
import type { MarkoutReply, MarkoutRequest } from "./messages.ts";
import { whyNot } from "./refusal.ts";
import { remembering, versionOf } from "./version-of.ts";

/** Answers by `reply`, the last time with what was made, what is missing, or why not. */
export async function answer(request: MarkoutRequest, reply: (message: MarkoutReply) => void): Promise<void> {
  const missing = new Set<string>();
  const read = (address: string): string | undefined => {
    const text = request.files[address];
    if (text === undefined) missing.add(address);
    return text ?? undefined;
  };
  const { text, address, options, date, letters } = request;
  const { files: others, texts } = remembering({ resolve: resolveNamed, read });
  const { chair, problems } = study({ text, address, files: others });
  if (missing.size > 0) return reply({ is: "missing", addresses: [...missing] });
  const errors = problems.filter(({ severity }) => severity === "error").length;
  const because = whyNot(chair, errors);
  if (because) return reply({ is: "refused", because });
  const { files, pages } = await makeMarkout(
    chair,
    {
      ...options,
      text: await versionOf([text, ...texts()]),
      format: "pdf",
      date: new Date(date),
      ...(letters && { letters }),
    },
    (done, of) => reply({ is: "progress", done, of }),
  );
  reply({ is: "made", bytes: files[0]!.bytes, pages });
}
