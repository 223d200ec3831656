/**
 * A feature that fails returns its empty value and is logged once; the server goes on.
 */
import { type CancellationToken, LSPErrorCodes, ResponseError } from "vscode-languageserver";

interface Log {
  error(message: string): void;
}

/** An error's message and the place that threw it: the callers above it differ from request to request. */
function sameFault(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  const thrownAt = error.stack?.split("\n").find((line) => /^\s+at /.test(line)) ?? "";
  return error.message + thrownAt;
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
      const fault = `${name} ${sameFault(error)}`;
      if (!logged.has(fault)) {
        logged.add(fault);
        log.error(
          `${name} failed: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`,
        );
      }
      return empty;
    }
  };
}

export type RunSafe = ReturnType<typeof guard>;
