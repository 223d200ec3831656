import data from "./allowances.json" with { type: "json" };

/** A size mark of EN 1729-1: seat height, and the ranges of the children it suits, mm and years. */
export interface SchoolMark {
  mark: number;
  seatHeight: number;
  popliteal: [number, number];
  stature: [number, number];
  ages: [number, number];
}

export const schoolMarks = data.schoolMarks.marks as unknown as readonly SchoolMark[];
export const schoolMarkSource = data.schoolMarks.source;

/** The mark of that number, or nothing. */
export function schoolMark(mark: number): SchoolMark | undefined {
  return schoolMarks.find((row) => row.mark === mark);
}

/** The marks that serve children of these years of age, smallest first; the ages are from memory. */
export function marksForAges(from: number, to: number): SchoolMark[] {
  return schoolMarks.filter((row) => row.ages[0] <= to && row.ages[1] >= from);
}
