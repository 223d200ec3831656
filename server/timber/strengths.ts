/**
 * How strong and how lively each species is, apart from what it weighs: nothing that is worked out at every keystroke asks for it.
 */
import data from "./strengths.json" with { type: "json" };

/** At the table's moisture. Strengths MPa, stiffness GPa, hardness N; null where no figure was seen. */
interface Strengths {
  bendingStrength: number | null;
  stiffness: number | null;
  crushingAlong: number | null;
  crushingAcross: number | null;
  shearAlong: number | null;
  tensionAcross: number | null;
  hardness: number | null;
  /** Share of the width per percent of moisture, 6 to 14 %. */
  movementRadial: number | null;
  movementTangential: number | null;
}

const byKey = new Map<string, Strengths>(Object.entries(data.species));

/** The figures of a species by its name as written in a chair file, or nothing. */
export const strengthsOf = (key: string): Strengths | undefined => byKey.get(key);
