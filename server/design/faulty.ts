/**
 * What the file at hand says of errors in a file that it names. Nothing of that file's text is repeated, only where to look.
 */
import { codes } from "../../grammar/codes.ts";
import type { Problem, Span } from "../../grammar/problem.ts";
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
  const many = problems.length === 1 ? "has an error" : `has ${problems.length} errors`;
  const whose = further === undefined ? path : `${path} leads to ${shortName(further)}, which`;
  const first = problems.reduce((one, other) => (other.start < one.start ? other : one));
  const where = `${problems.length === 1 ? "it is" : "the first is"} in line ${lineOf(text, first.start)}`;
  return problemAt("faulty-file", at, `${whose} ${many}; ${where}${kindOf(first.code)}.`);
}

/** The title of a code, which says what kind of error it is. */
function kindOf(code: string): string {
  const title = [...codes, ...designCodes].find((row) => row.code === code)?.title;
  return title === undefined ? "" : ` (${title.charAt(0).toLowerCase()}${title.slice(1)})`;
}

function lineOf(text: string, offset: number): number {
  return text.slice(0, offset).split(/\r\n|\r|\n/).length;
}

export function problemAt(code: string, { start, end }: Span, message: string): Problem {
  return { code, severity: "error", message, start, end };
}

/** The last part of an address: the file's name. */
export const shortName = (address: string): string => address.slice(address.lastIndexOf("/") + 1);
