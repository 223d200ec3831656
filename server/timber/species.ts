import data from "./species.json" with { type: "json" };

/** A row of the species table: what weight asks for; how strong it is stands in `strengths.ts`. Shrinkage percent green to oven-dry. */
export interface Species {
  key: string;
  name: string;
  botanical: string;
  /** Oven-dry weight over volume at 12 % moisture. */
  specificGravity12: number;
  shrinkRadial: number | null;
  shrinkTangential: number | null;
  source: string;
  /** What of the row was seen in print and what is from memory. */
  seen: string;
}

export const speciesSource = data.source;

/** Moisture the table's figures hold at, and of timber when the file says none, percent. */
export const tableMoisture = data.moisture;

/** Moisture at which wood stops shrinking and swelling, percent. */
export const fibreSaturation = data.fibreSaturation;
export const speciesList: readonly Species[] = data.species;

const byKey = new Map(data.species.map((row) => [row.key, row as Species]));

/** Everyday names that the table has several woods for, and names that are only another spelling of one. */
export const speciesAliases: Readonly<Record<string, readonly string[]>> = data.aliases;

/** The species of that name as written in a chair file (`white-ash`), or nothing. */
export function speciesOf(key: string): Species | undefined {
  return byKey.get(key);
}
