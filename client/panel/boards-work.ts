/**
 * The boards of one chair, planned in a worker of its own while the panel shows them: started when that is asked for, asked again at each
 * change of the text, stopped when the maker says so.
 */
import { type Uri, workspace } from "vscode";
import * as z from "zod";
import type { BoardsShown } from "../../server/drawing/boards/shown.ts";
import type { BoardsRequest } from "../../server/main/boards/messages.ts";
import { type StartWorker, textAt } from "../in-worker.ts";
import type { BoardsTold } from "./messages.ts";

const says = z.discriminatedUnion("is", [
  z.object({ is: z.literal("missing"), addresses: z.array(z.string()) }),
  z.object({
    is: z.literal("boards"),
    version: z.number(),
    shown: z.custom<BoardsShown>((given) => typeof given === "object" && given !== null),
    pass: z.number(),
    of: z.number(),
    done: z.boolean(),
  }),
  z.object({ is: z.literal("refused"), version: z.number(), because: z.string() }),
]);

interface BoardsWork {
  /** The panel shows the boards, or no longer. */
  turn(on: boolean): void;
  /** The text may be another. */
  follow(): void;
  /** The maker has had enough: what there is stays, until the text changes. */
  stop(): void;
}

/** No worker yet. `told` gets what there is to show, again and again. */
export function createBoardsWork(
  uri: Uri,
  start: StartWorker,
  told: (boards: BoardsTold) => void,
): BoardsWork {
  let worker: ReturnType<StartWorker> | undefined;
  let on = false;
  let request: BoardsRequest | undefined;
  let last: BoardsTold | undefined;

  const tell = (boards: BoardsTold) => {
    last = boards;
    told(boards);
  };
  const end = () => {
    worker?.stop();
    worker = undefined;
  };

  async function fetchAll(addresses: readonly string[]) {
    const asked = request;
    const texts = await Promise.all(addresses.map(async (each) => [each, await textAt(each)] as const));
    if (!asked || asked !== request) return;
    request = { ...asked, files: { ...asked.files, ...Object.fromEntries(texts) } };
    worker?.send(request);
  }

  function heard(message: unknown) {
    const said = says.safeParse(message).data;
    if (said?.is === "missing") return void fetchAll(said.addresses);
    if (!said || said.version !== request?.version) return;
    if (said.is === "refused") return tell({ is: "refused", because: said.because });
    const { shown, pass, of, done } = said;
    // Until there is a plan of the new text the boards of the one before stay, told to be out of date.
    const before = last?.is === "boards" && shown.boards.length === 0 && !done ? last.shown.boards : [];
    const stale = before.length > 0;
    tell({
      is: "boards",
      shown: stale ? { ...shown, boards: before } : shown,
      stale,
      ...(!done && { progress: { pass, of } }),
    });
  }

  async function ask() {
    const document = await workspace.openTextDocument(uri);
    if (!on || request?.version === document.version) return;
    worker ??= start("boards", heard, (because) => {
      end();
      tell({ is: "refused", because });
    });
    request = { text: document.getText(), address: uri.toString(), version: document.version, files: {} };
    worker.send(request);
  }

  return {
    turn(now) {
      on = now;
      if (!on) {
        end();
        request = undefined;
        last = undefined;
      } else void ask();
    },
    follow: () => void ask(),
    stop() {
      if (!worker || last?.is !== "boards" || !last.progress) return;
      end();
      const { progress: _, ...rest } = last;
      tell({ ...rest, stopped: true });
    },
  };
}
