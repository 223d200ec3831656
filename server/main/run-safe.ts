/**
 * A feature that fails returns its empty value and is logged once; the server goes on.
 */
import { type CancellationToken, LSPErrorCodes, ResponseError } from "vscode-languageserver";

interface Log {
  error(message: string): void;
}

/** The error of a request that was called off. */
function calledOff(): ResponseError {
  return new ResponseError(LSPErrorCodes.RequestCancelled, "Called off.");
}

/**
 * Makes a guard for one connection. The guard runs a feature and gives its answer; if the request was called off, before
 * or meanwhile, the cancellation error; if it failed, `empty`. An error meant for the user (a `ResponseError`) passes through.
 */
export function guard(log: Log) {
  const logged = new Set<string>();
  return async <R>(
    name: string,
    empty: R,
    token: CancellationToken,
    run: () => R | Promise<R>,
  ): Promise<R | ResponseError> => {
    if (token.isCancellationRequested) return calledOff();
    try {
      const answer = await run();
      return token.isCancellationRequested ? calledOff() : answer;
    } catch (error) {
      if (error instanceof ResponseError) return error;
      const said = `${name} failed: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`;
      if (!logged.has(said)) {
        logged.add(said);
        log.error(said);
      }
      return empty;
    }
  };
}

export type RunSafe = ReturnType<typeof guard>;
