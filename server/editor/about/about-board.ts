import type { BoardDesign, LengthUnit, TimberDesign, YardDesign } from "../../design/design.ts";
import { printLength } from "../../design/units.ts";

/** A board to hand in short lines: its size, how many, what of it cannot be used. */
export function aboutBoard(board: BoardDesign, unit: LengthUnit): string[] {
  const { size, count, wane, grain, timber, price, defects } = board;
  const mm = (number: number) => printLength(number, unit);
  const lines: string[] = [];
  if (size) {
    const { long, wide, thick } = size.value;
    lines.push(`${mm(long)} long, ${mm(wide)} wide, ${mm(thick)} thick`);
  }
  const many = count?.value ?? 1;
  if (many > 1) lines.push(`${many} alike, ${board.name}.1 to ${board.name}.${many}`);
  if (timber) lines.push(wood(timber.value));
  if (grain) lines.push(`${grain.value} sawn`);
  if (wane?.value) lines.push(`${mm(wane.value)} of each edge cannot be used`);
  if (defects.length > 0) lines.push(defects.length === 1 ? "1 defect" : `${defects.length} defects`);
  if (price) lines.push(`${price.value} each`);
  return lines;
}

/** What a yard sells, in short lines. */
export function aboutYard(yard: YardDesign, unit: LengthUnit): string[] {
  const mm = (number: number) => printLength(number, unit);
  const lines: string[] = [];
  if (yard.thick) lines.push(`Sawn ${yard.thick.value.map(mm).join(", ")} thick`);
  if (yard.long) lines.push(`${mm(yard.long.value.low)} to ${mm(yard.long.value.high)} long`);
  if (yard.wide) lines.push(`${mm(yard.wide.value.low)} to ${mm(yard.wide.value.high)} wide`);
  if (yard.timber) lines.push(wood(yard.timber.value));
  if (yard.price) lines.push(`${yard.price.value} a ${unit === "in" ? "board foot" : "cubic metre"}`);
  return lines;
}

const wood = ({ species, moisture }: TimberDesign): string =>
  moisture === undefined ? species : `${species}, ${Number(moisture.toFixed(1))} % moisture`;
