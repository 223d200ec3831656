/**
 * The requests of the protocol, the language's own and the editor's, each kept from taking the server down.
 */
import { ErrorCodes, ResponseError } from "vscode-languageserver";
import { comparingRequests } from "../features/comparing.ts";
import { pagingRequests } from "../features/paging.ts";
import { rangingRequests } from "../features/ranging.ts";
import { features } from "../features.ts";
import { missingIn } from "../missing-params.ts";
import type { Session } from "./session.ts";

/** Answers every feature's request. */
export function answerFeatures(session: Session): void {
  const { connection, world, runSafe } = session;
  for (const { name, method, empty, answer } of [
    ...features,
    ...rangingRequests,
    ...comparingRequests,
    ...pagingRequests,
  ]) {
    connection.onRequest(method, (params, token) => {
      const refused = session.refusal() ?? lacking(method, params);
      return refused ?? runSafe(name, empty, token, () => answer(world, params as never, token));
    });
  }
}

/** The error of a request that lacks what it cannot be answered without. */
function lacking(method: string, params: unknown): ResponseError | undefined {
  const missing = missingIn(method, params);
  return missing === undefined
    ? undefined
    : new ResponseError(ErrorCodes.InvalidParams, `${method} lacks ${missing}.`);
}
