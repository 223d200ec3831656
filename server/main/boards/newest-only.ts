/**
 * One answer at a time: a newer request stops the one that is being answered.
 */
import type { answer } from "./answer.ts";
import type { BoardsReply, BoardsRequest } from "./messages.ts";

export function newestOnly(
  work: typeof answer,
  reply: (message: BoardsReply) => void,
): (request: BoardsRequest) => void {
  let newest: BoardsRequest | undefined;
  const breath = () => new Promise<void>((resolve) => setTimeout(resolve, 0));
  return (request) => {
    newest = request;
    const stale = () => newest !== request;
    work(request, reply, { stale, breath }).catch((error: unknown) => {
      reply({
        is: "refused",
        version: request.version,
        because: `an internal error stopped it (${error})`,
      });
    });
  };
}
