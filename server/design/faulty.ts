/**
 * What the file at hand says of errors in a file that it names. Nothing of that file's text is repeated, only where to look.
 */

import { codes } from "../../grammar/codes.ts";
import type { Problem, Span } from "../../grammar/problem.ts";
import { sentence } from "../../grammar/sentences/sentence.ts";
import { designCodes } from "./codes.ts";

interface Faulty {
  /** As the file at hand writes it. */
  path: string;
  /** The other file's text, and its errors: at least one. */
  text: string;
  problems: readonly Problem[];
  /** The address of the file that the errors are in, when it is not the one named but one further on. */
  further?: string;
}

/** The one problem that stands for all of another file's. */
export function faulty(at: Span, { path, text, problems, further }: Faulty): Problem {
  const first = problems.reduce((one, other) => (other.start < one.start ? other : one));
  const values = {
    file: path,
    count: problems.length,
    line: lineOf(text, first.start),
    what: kindOf(first.code),
  };
  const one = problems.length === 1;
  const message =
    further === undefined
      ? sentence(one ? "faulty-file.one" : "faulty-file", values)
      : sentence(one ? "faulty-file.further-one" : "faulty-file.further", {
          ...values,
          further: shortName(further),
        });
  return problemAt("faulty-file", at, message);
}

/** The title of a code, which says what kind of error it is. */
function kindOf(code: string): string {
  const title = [...codes, ...designCodes].find((row) => row.code === code)?.title ?? code;
  return title.charAt(0).toLowerCase() + title.slice(1);
}

function lineOf(text: string, offset: number): number {
  return text.slice(0, offset).split(/\r\n|\r|\n/).length;
}

export function problemAt(code: string, { start, end }: Span, message: string): Problem {
  return { code, severity: "error", message, start, end };
}

/** The last part of an address: the file's name. */
export const shortName = (address: string): string => address.slice(address.lastIndexOf("/") + 1);
