import { writeFileSync } from "node:fs";
import { finish } from "../../../grammar/steps.ts";
import { overlayNames } from "../../drawing/sheet.ts";
import { sheetToSvg } from "../../drawing/svg.ts";
import { type Command, ENDED, eachFile, misuse, studyOf } from "./command.ts";
import { harmless } from "./terminal.ts";

export const draw: Command = {
  name: "draw",
  usage: "draw FILE [--overlay floor|sitter|floor,sitter] [-o OUT]",
  summary: "draw the front, side and plan as SVG",
  options: { overlay: { type: "string" }, out: { type: "string", short: "o" } },
  takes: { least: 1, most: 1 },
  run(bench, files, { out, overlay }) {
    const { terminal, services } = bench;
    const asked = typeof overlay === "string" ? overlay.split(",") : [];
    const unknown = asked.find((name) => !overlayNames.some((each) => each === name));
    if (unknown !== undefined)
      return misuse(
        bench,
        `"--overlay ${unknown}" is not known; there are ${overlayNames.map((name) => `"${name}"`).join(" and ")}.`,
      );
    const overlays = overlayNames.filter((name) => asked.includes(name));
    return eachFile(bench, files, (input) => {
      const { chair, problems } = studyOf(bench, input);
      const errors = problems.filter(({ severity }) => severity === "error").length;
      if (!chair.posts.size && !chair.rails.size) {
        terminal.error(
          `${harmless(input.file)}: there are no posts or rails to draw; "seatwright check" tells why.\n`,
        );
        return ENDED.faults;
      }
      const svg = sheetToSvg(finish(services.draw(chair, overlays)));
      if (typeof out !== "string") terminal.out(svg.endsWith("\n") ? svg : `${svg}\n`);
      else {
        try {
          writeFileSync(out, svg);
        } catch (error) {
          return misuse(
            bench,
            `"${out}" cannot be written (${(error as NodeJS.ErrnoException).code ?? "unknown reason"}).`,
          );
        }
      }
      if (errors)
        terminal.error(
          `${harmless(input.file)}: drawn as far as it can be; "seatwright check" tells of ${errors === 1 ? "1 error" : `${errors} errors`}.\n`,
        );
      return errors ? ENDED.faults : ENDED.well;
    });
  },
};
