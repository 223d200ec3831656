/**
 * A chair exported for one request, wherever the worker runs.
 */
import { kindNamed } from "../../exports/kinds.ts";
import { exportChair } from "../../exports/make.ts";
import { study } from "../../study.ts";
import { resolveNamed } from "../named-files.ts";
import { version } from "../version.ts";
import type { ExportReply, ExportRequest } from "./messages.ts";
import { STAMP, whyNotExported } from "./refusal.ts";

/** Answers by `reply`, the last time with what was made, what is missing, or why not. */
export async function answer(request: ExportRequest, reply: (message: ExportReply) => void): Promise<void> {
  const missing = new Set<string>();
  const read = (address: string): string | undefined => {
    const text = request.files[address];
    if (text === undefined) missing.add(address);
    return text ?? undefined;
  };
  const { text, address, part } = request;
  const { chair, problems } = study({ text, address, files: { resolve: resolveNamed, read } });
  if (missing.size > 0) return reply({ is: "missing", addresses: [...missing] });
  const errors = problems.filter(({ severity }) => severity === "error").length;
  const because = whyNotExported(chair, errors);
  if (because) return reply({ is: "refused", because });
  const kind = kindNamed(request.kind);
  if (!kind)
    return reply({ is: "refused", because: `"${request.kind}" is not a kind of file it can be written as` });
  const options = { kind, version, stamp: STAMP, ...(part === undefined ? {} : { part }) };
  const made = await exportChair(chair, options, (done, of) => reply({ is: "progress", done, of }));
  if (made.files.length === 0)
    return reply({
      is: "refused",
      because: kind.kind === "dxf" ? "nothing in it is cut to a shape" : "no sound solid comes of its parts",
    });
  reply({ is: "made", ...made });
}
