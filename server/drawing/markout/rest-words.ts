import { told } from "./sheet/printer.ts";
import type { SheetMark } from "./sheet/sheet.ts";

/** A rebate, a groove or a strip in one sentence or two. */
export function restLine(mark: SheetMark): string {
  const figure = (name: string) => told(mark, name);
  switch (mark.kind) {
    case "rebate": {
      const reach = figure("from")
        ? `from ${figure("from")} to ${figure("to")}`
        : "from shoulder to shoulder";
      return `Rebate along the ${figure("edge")} edge: ${figure("wide")} off the ${mark.face}, square to it, and ${figure("deep")} off the ${figure("edge")}, ${reach}.`;
    }
    case "groove":
      return `Groove in the ${mark.face}: ${figure("wide")} wide and ${figure("deep")} deep, its nearer side ${figure("at")} from the ${figure("measured from")}${figure("measured from") === "top" ? " edge" : " face"}, from shoulder to shoulder.`;
    default:
      return stripLine(mark, figure);
  }
}

function stripLine({ face }: SheetMark, figure: (name: string) => string): string {
  const far = figure("from at its far side")
    ? `, at its far side from ${figure("from at its far side")} to ${figure("to at its far side")}`
    : "";
  const below = figure("from below")
    ? `, on the rail below from ${figure("from below")} to ${figure("to below")}`
    : "";
  const butts = figure("butts") ? ` It butts against the strip of ${figure("butts")}.` : "";
  return `Strip on the ${face}: ${figure("wide")} up and down by ${figure("thick")}, cut from ${figure("long")}, screwed on with its top ${figure("at")} below the top edge; at its top it lies on the rail from ${figure("from")} to ${figure("to")}${far}${below}.${butts}`;
}
