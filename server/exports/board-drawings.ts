import type { Steps } from "../../grammar/steps.ts";
import { type PlannedBoard, planOf, stockList } from "../boards/plan.ts";
import type { Chair } from "../chair/chair.ts";

type Spot = readonly [number, number];

/** What a line of a board's drawing is: the board itself, what is left within its ends and wane, a defect, a piece, a cut. */
export type BoardLineKind = "board" | "clear" | "defect" | "piece" | "cut";

/** A board with what is sawn from it, at full size: mm from its first end and its lower edge, up. */
export interface BoardDrawing {
  name: string;
  long: number;
  wide: number;
  lines: { is: BoardLineKind; points: Spot[]; closed: boolean }[];
  /** Names of the pieces, in their middles. */
  words: { at: Spot; text: string }[];
}

/** Every board of the plan; none where the text names neither boards nor a yard, so that the wood is only guessed. Rests as it goes. */
export function* boardDrawings(chair: Chair): Steps<BoardDrawing[]> {
  const stock = stockList(chair);
  if (stock.wood.every(({ from }) => from === "usual")) return [];
  const { boards } = yield* planOf(stock, chair.design.matches);
  return boards.map(drawingOf);
}

function drawingOf({ name, board, pieces, cuts }: PlannedBoard): BoardDrawing {
  const { long, wide, clear, defects } = board;
  const box = (is: BoardLineKind, each: { x: number; y: number; long: number; wide: number }) => ({
    is,
    points: corners(each),
    closed: true,
  });
  const clips = clear.long < long || clear.wide < wide;
  return {
    name,
    long,
    wide,
    lines: [
      box("board", { x: 0, y: 0, long, wide }),
      ...(clips ? [box("clear", clear)] : []),
      ...defects.map((defect) => box("defect", defect)),
      ...cuts.flatMap(({ is, at, from, to }): BoardDrawing["lines"] => {
        // A cut along a curve is the piece's own outline, and one through the thickness is not seen on the face.
        if (is === "outline" || is === "resaw") return [];
        const points: Spot[] =
          is === "rip"
            ? [
                [from, at],
                [to, at],
              ]
            : [
                [at, from],
                [at, to],
              ];
        return [{ is: "cut", points, closed: false }];
      }),
      ...pieces.map((piece) =>
        piece.outline
          ? { is: "piece" as const, points: [...piece.outline], closed: true }
          : box("piece", piece),
      ),
    ],
    words: pieces.map(({ part, x, y, long, wide }) => ({ at: [x + long / 2, y + wide / 2], text: part })),
  };
}

const corners = ({ x, y, long, wide }: { x: number; y: number; long: number; wide: number }): Spot[] => [
  [x, y],
  [x + long, y],
  [x + long, y + wide],
  [x, y + wide],
];
