import { nearest } from "../../../grammar/nearest.ts";
import { finish } from "../../../grammar/steps.ts";
import { eyes } from "../../drawing/pictorial/eye.ts";
import { withCornerPicture } from "../../drawing/pictorial/in-corner.ts";
import { type PictorialOptions, pictorialSteps } from "../../drawing/pictorial/pictorial.ts";
import { pictorialToSvg } from "../../drawing/pictorial/svg.ts";
import { overlayNames } from "../../drawing/sheet.ts";
import { sheetToSvg } from "../../drawing/svg.ts";
import { type Command, ENDED, eachFile, misuse, type Options, studyOf } from "./command.ts";
import { outOption } from "./options.ts";
import { harmless } from "./terminal.ts";
import { written } from "./writing.ts";

/** From where the chair is seen in the corner beside its views. */
const CORNER = eyes["front-left"]!;

export const draw: Command = {
  name: "draw",
  usage:
    "draw FILE [--overlay floor,sitter,hidden] [--from SIDE [--above ANGLE] [--apart] [--joints]] [-o FILE]",
  summary:
    "draw the front, side and plan as SVG, with the chair from the front left beside them; or the chair from any side, taken apart, its tenons seen through",
  options: {
    overlay: {
      type: "string",
      does: "lay over it how the chair stands, its sitter, hidden lines, or several of them",
    },
    from: {
      type: "string",
      values: Object.keys(eyes).join("|"),
      does: "which side it is seen from, as a picture in space",
    },
    above: { type: "string", values: "ANGLE", does: "from how high it is seen, -90deg to 90deg" },
    apart: { type: "boolean", does: "draw it taken apart along its glue-ups" },
    joints: { type: "boolean", does: "show tenons through the wood around them" },
    out: outOption,
  },
  takes: { least: 1, most: 1 },
  run(bench, files, options) {
    const { out, overlay } = options;
    const { terminal, services } = bench;
    const pictorial = pictorialAsked(options);
    if (typeof pictorial === "string") return misuse(bench, pictorial);
    const asked = typeof overlay === "string" ? overlay.split(",") : [];
    const unknown = asked.find((name) => !overlayNames.some((each) => each === name));
    if (unknown !== undefined)
      return misuse(
        bench,
        `"--overlay ${unknown}" is not known; there are ${overlayNames.map((name) => `"${name}"`).join(", ")}.`,
      );
    const overlays = overlayNames.filter((name) => asked.includes(name));
    return eachFile(bench, files, (input) => {
      const { chair, problems } = studyOf(bench, input);
      const errors = problems.filter(({ severity }) => severity === "error").length;
      if (!chair.posts.size && !chair.rails.size) {
        terminal.error(
          `${harmless(input.file)}: there are no posts or rails to draw${errors > 0 ? '; "seatwright check" says why' : " yet"}.\n`,
        );
        return ENDED.faults;
      }
      const svg = pictorial
        ? pictorialToSvg(finish(pictorialSteps(chair, pictorial)))
        : sheetToSvg(
            withCornerPicture(
              finish(services.draw(chair, overlays)),
              finish(pictorialSteps(chair, { eye: CORNER })),
            ),
          );
      const ending = written(bench, svg.endsWith("\n") ? svg : `${svg}\n`, out);
      if (ending !== ENDED.well) return ending;
      if (errors)
        terminal.error(
          `${harmless(input.file)}: drawn as far as it can be; "seatwright check" tells of ${errors === 1 ? "1 error" : `${errors} errors`}.\n`,
        );
      return errors ? ENDED.faults : ENDED.well;
    });
  },
};

/** The pictorial view that is asked for; a sentence when it is asked for wrongly, nothing when the three views are. */
function pictorialAsked({
  from,
  above,
  apart,
  joints,
  overlay,
}: Options): PictorialOptions | string | undefined {
  if (from === undefined) {
    const alone = Object.entries({ above, apart, joints }).find(([, given]) => given !== undefined);
    return alone && `"--${alone[0]}" goes with "--from": ${Object.keys(eyes).join(", ")}.`;
  }
  if (overlay !== undefined) return '"--overlay" goes with the three views, not with "--from".';
  const eye = Object.hasOwn(eyes, String(from)) ? eyes[String(from)] : undefined;
  if (!eye) {
    const near = nearest(String(from), Object.keys(eyes));
    return `"--from ${from}" is not known.${near ? ` Did you mean "${near}"?` : ` There are ${Object.keys(eyes).join(", ")}.`}`;
  }
  const degrees = above === undefined ? undefined : /^(-?\d+(?:\.\d+)?)(?:deg|°)?$/.exec(String(above))?.[1];
  if (above !== undefined && !(Math.abs(Number(degrees ?? Number.NaN)) <= 90))
    return `"--above ${above}" is not an angle from -90deg to 90deg.`;
  return {
    eye: degrees === undefined ? eye : { ...eye, above: (Number(degrees) * Math.PI) / 180 },
    apart: apart ? 1 : 0,
    joints: joints === true,
  };
}
