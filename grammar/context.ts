import type { Problem } from "./problem.ts";
import type { Table } from "./table.ts";

/** What reading one phrase needs to know. */
export interface Context {
  table: Table;
  problems: Problem[];
  /** The line end that the text uses. */
  newLine: string;
  /** The unit that bare lengths of the file take. */
  fileUnit: string;
  /** True when a problem of spelling was already told in this stretch of text. */
  told(start: number, end: number): boolean;
}
