/**
 * Chairs at random on a solid seat: seats of any outline, round ones too, with hollows, bevels, tails and boards; three or four legs in
 * sockets of every kind; undercarriages of every shape; above them nothing, sticks to a crest, a hoop, an arm bow with sticks through it, or
 * posts that stand on the seat. Each is a function of a scale, by which all its lengths are multiplied.
 */
import fc from "fast-check";

/** The text with every length `scale` times as large. */
export type Scaled = (scale: number) => string;

const int = (min: number, max: number) => fc.integer({ min, max });

const seats = fc.record({
  round: fc.boolean(),
  up: int(410, 460),
  fall: int(0, 20),
  thick: int(38, 55),
  deep: int(370, 440),
  wide: int(400, 500),
  waist: int(0, 12),
  corner: int(10, 35),
  tail: fc.boolean(),
  hollow: fc.constantFrom(0, 0, 8, 12, 15),
  open: fc.boolean(),
  rim: int(35, 60),
  bevel: fc.constantFrom("", "below", "above"),
  grain: fc.constantFrom("fore-and-aft", "across"),
  boards: fc.constantFrom(1, 1, 2, 3),
  species: fc.constantFrom("american-elm", "european-ash", "white-oak"),
});
export type SeatFigures = typeof seats extends fc.Arbitrary<infer T> ? T : never;

const legs = fc.record({
  socket: fc.constantFrom(
    "tapered wedged",
    "tapered",
    "straight",
    "straight wedged",
    "blind",
    "tapered blind",
  ),
  three: fc.constantFrom("no", "no", "no", "front", "back"),
  frontOut: int(120, 170),
  backOut: int(85, 125),
  front: int(75, 100),
  back: int(95, 125),
  splay: fc.tuple(int(4, 14), int(4, 14)),
  rake: fc.tuple(int(3, 12), int(8, 20)),
  round: int(34, 44),
  shaped: fc.boolean(),
  by: fc.constantFrom("angles", "angles", "lean"),
});

const below = fc.record({
  kind: fc.constantFrom("none", "h", "h", "box"),
  up: int(140, 210),
  fall: int(0, 25),
  taper: fc.boolean(),
  at: fc.constantFrom("1/2", "2/5"),
});

const above = fc.record({
  kind: fc.constantFrom("none", "crest", "crest", "hoop", "hoop", "arms", "posts"),
  count: int(3, 11),
  in: int(26, 40),
  taper: fc.boolean(),
  up: int(380, 520),
  rake: int(5, 18),
  bow: int(0, 55),
  wide: int(0, 60),
  square: fc.boolean(),
  pairs: fc.boolean(),
});

const frames = fc.record({ seats, legs, below, above });
export type Figures = typeof frames extends fc.Arbitrary<infer T> ? T : never;

export const solidSeats: fc.Arbitrary<Scaled> = frames.map((figures) => (scale) => textOf(figures, scale));

function textOf({ seats: seat, legs: leg, below: under, above: over }: Figures, scale: number): string {
  const mm = (length: number): string => String(Math.round(length * scale * 1e6) / 1e6);
  const deep = seat.round ? Math.min(seat.deep, 380) : seat.deep;
  // Where a round seat narrows the places follow.
  const outs = seat.round ? 0.75 : 1;
  const place = (out: number, back: number) => `out ${mm(out)}, back ${mm(back)}`;
  const block = (head: string, lines: (string | undefined)[]): string =>
    `${head} {\n${lines
      .filter(Boolean)
      .map((line) => `  ${line}\n`)
      .join("")}}\n`;

  function seatBlock(): string {
    const tail = seat.tail && !seat.round && over.kind === "none";
    const outline = seat.round
      ? [`round ${mm(deep)}`]
      : [
          `deep ${mm(deep)}`,
          `wide ${mm(seat.wide - 30)} at ${mm(12)}`,
          `wide ${mm(seat.wide)} at ${mm(deep * 0.4)}`,
          `wide ${mm(seat.wide - 48 - seat.waist)} at ${mm(deep * 0.72)}`,
          `wide ${mm(seat.wide - 140)} at ${mm(deep * 0.88)}`,
          `corner ${mm(seat.corner)}`,
          tail ? `tail ${mm(90)} x ${mm(40)}` : undefined,
        ];
    const hollow = seat.hollow
      ? `hollow ${mm(seat.hollow)} over ${mm(95)}${seat.open && !seat.round ? " open front" : ""}, rim ${mm(seat.rim)}`
      : undefined;
    return block("seat solid", [
      `up ${mm(seat.up)}`,
      `fall ${mm(seat.fall)}`,
      `thick ${mm(seat.thick)}`,
      ...outline,
      hollow,
      seat.bevel ? `bevel ${mm(18)} x ${mm(10)} ${seat.bevel}` : undefined,
      `grain ${seat.grain}`,
      seat.boards > 1 ? `boards ${seat.boards}` : undefined,
      `timber ${seat.species} moisture 9%`,
    ]);
  }

  const socketLines = {
    "tapered wedged": [`round ${mm(28)} to ${mm(22)}`, "through wedged"],
    tapered: [`round ${mm(28)} to ${mm(22)}`, "through"],
    straight: [`round ${mm(25)}`, "through"],
    "straight wedged": [`round ${mm(25)}`, "through wedged"],
    blind: [`round ${mm(25)}, long ${mm(25)}`],
    "tapered blind": [`round ${mm(27)} to ${mm(22)}, long ${mm(25)}`],
  }[leg.socket];

  function legBlock(name: string, pair: boolean, [out, back]: [number, number], at: 0 | 1): string {
    const way = at === 0 ? "foot forward" : "foot back";
    const angles = [pair ? `splay ${leg.splay[at]}deg` : undefined, `rake ${leg.rake[at]}deg ${way}`];
    const lean = [
      `lean ${leg.rake[at] + 2}deg, sight-line ${at === 0 ? (pair ? 135 : 180) : pair ? 40 : 0}deg`,
    ];
    return block(`post ${name}${pair ? " pair" : ""}`, [
      `into seat at ${place(pair ? out * outs : 0, back)}`,
      ...(leg.by === "lean" ? lean : angles),
      `round ${mm(leg.round)}`,
      ...(leg.shaped
        ? [
            `shape at foot round ${mm(26)}`,
            `shape at ${mm(160)} round ${mm(leg.round)}`,
            `shape at top round ${mm(29)}`,
          ]
        : []),
      "joined leg-socket",
    ]);
  }

  const frontLeg = legBlock("front-leg", leg.three !== "front", [leg.frontOut, leg.front], 0);
  const backLeg = legBlock("back-leg", leg.three !== "back", [leg.backOut, deep - leg.back], 1);

  function stretchers(): string {
    if (under.kind === "none") return "";
    const like = [`round ${mm(26)}`, under.taper ? `taper ${mm(18)} to ends` : undefined];
    const joined = "joined stretcher-tenon";
    const level = [`up ${mm(under.up)}`, under.fall ? `fall ${mm(under.fall)}` : undefined];
    const side = block("rail side-stretcher pair", ["from front-leg to back-leg", ...like, ...level, joined]);
    const slim = under.taper ? like : [`round ${mm(22)}`];
    const middle = block("rail middle-stretcher", [`across side-stretcher at ${under.at}`, ...slim, joined]);
    if (leg.three !== "no") {
      const [pair, single] = leg.three === "back" ? ["front", "back"] : ["back", "front"];
      const cross = block(`rail ${pair}-stretcher`, [
        `across ${pair}-leg`,
        ...like,
        `up ${mm(under.up)}`,
        joined,
      ]);
      return (
        cross +
        block("rail middle-stretcher", [
          `from ${pair}-stretcher at 1/2 to ${single}-leg`,
          `up ${mm(under.up)}`,
          ...slim,
          joined,
        ])
      );
    }
    const ends = ["front", "back"].map((end) =>
      block(`rail ${end}-stretcher`, [`across ${end}-leg`, ...like, `up ${mm(under.up + 45)}`, joined]),
    );
    return under.kind === "h" ? side + middle : side + ends.join("");
  }

  const stick = [`round ${mm(14)}`, over.taper ? `taper ${mm(12)} to ends` : undefined];
  const top = seat.up + over.up;
  const behind = seat.round ? deep * 0.62 : deep * 0.72;

  function sticksToCrest(): string {
    const row = block("stick back-stick", [
      "from seat to crest",
      `count ${over.count} even`,
      `feet in ${mm(over.in)}, behind ${mm(behind)}`,
      `heads margin ${mm(58)}`,
      ...stick,
      "joined stick-tenon",
    ]);
    const crest = block("rail crest", [
      "carried by back-stick",
      `up ${mm(top)}`,
      `back ${mm(deep + 60)}`,
      `rake ${over.rake}deg`,
      `long ${mm(380 + over.wide)}`,
      `section ${mm(26)} x ${mm(75)}`,
      over.bow ? `bow ${mm(over.bow)} back` : undefined,
    ]);
    return row + crest;
  }

  /** Where a bow's feet stand clear of the back corners. */
  const footOut = seat.round ? 105 : 118;
  const footBack = seat.round ? deep * 0.72 : deep * 0.79;
  const hoopWide = 2 * footOut + 30 + over.wide;

  function hoop(through?: string): string {
    const bow = block("bow hoop", [
      `feet in seat at ${place(footOut, footBack)}`,
      `rake ${over.rake}deg`,
      `wide ${mm(hoopWide)} at ${mm(260)}`,
      `rise ${mm(over.up)}`,
      over.square ? `section ${mm(18)} x ${mm(22)}` : `round ${mm(18)}`,
      over.taper && !over.square ? `taper ${mm(16)} to ends` : undefined,
      "joined hoop-foot",
    ]);
    const spread = mm(hoopWide * 0.55);
    const row = block("stick back-stick", [
      "from seat to hoop",
      `count ${over.count} even`,
      ...(through
        ? [`through ${through} spread ${mm(180)}`]
        : [`feet in ${mm(over.in)}, behind ${mm(deep * 0.83)}`]),
      `heads spread ${through ? mm(180) : spread}`,
      ...stick,
      "joined back-tenon",
    ]);
    return bow + row;
  }

  function arms(): string {
    const bow = block("bow arm-bow", [
      `hands ${place(seat.wide / 2 - 5, 110)}`,
      `lie up ${mm(seat.up + 220)}, fall ${mm(5)}`,
      `rise ${mm(deep - 150)}`,
      over.square ? `section ${mm(20)} x ${mm(32)}` : `round ${mm(24)}`,
    ]);
    const posts = block("post arm-post pair", [
      `stand on seat at ${place(seat.wide / 2 - 34, 150)}`,
      `round ${mm(26)}`,
      `top into arm-bow at ${mm(45)} with arm-tenon`,
      "joined post-socket",
    ]);
    const row = block("stick side-stick pair", [
      "from seat to arm-bow",
      "count 2 even",
      `feet in ${mm(38)}, behind ${mm(215)} to ${mm(265)}`,
      `heads margin ${mm(125)} to ${mm(185)}`,
      ...stick,
      "joined stick-tenon",
    ]);
    return bow + posts + (over.pairs ? row : "") + hoop("arm-bow");
  }

  function posts(): string {
    const stand = block("post back-post pair", [
      `stand on seat at ${place(footOut, footBack)}`,
      `rake ${over.rake}deg top back`,
      `height ${mm(top)}`,
      `round ${mm(30)}`,
      `shape at top round ${mm(24)}`,
      "joined post-socket",
    ]);
    const rails = ["lower", "upper"].map((name, k) =>
      block(`rail ${name}`, [
        "across back-post",
        `section ${mm(18)} x ${mm(55)}`,
        `up ${mm(top - 200 + 150 * k)}`,
        "joined rail-tenon",
      ]),
    );
    return stand + rails.join("");
  }

  const upper = {
    none: () => "",
    crest: sticksToCrest,
    hoop: () => hoop(),
    arms: seat.round ? () => hoop() : arms,
    posts,
  };
  return [
    'chair "Random solid seat"\nunits mm\ntimber white-ash moisture 9%\n',
    block("joint leg-socket", [...socketLines, "glue hide"]),
    block("joint stretcher-tenon", [`round ${mm(14)}, long ${mm(20)}`]),
    block("joint stick-tenon", [`round ${mm(11)}, long ${mm(22)}`]),
    block("joint back-tenon", [`round ${mm(8)}, long ${mm(10)}`]),
    block("joint arm-tenon", [`round ${mm(11)}, long ${mm(16)}`]),
    block("joint post-socket", [`round ${mm(18)}, long ${mm(22)}`]),
    block("joint hoop-foot", [`round ${mm(14)}, long ${mm(24)}`]),
    block("joint rail-tenon", [
      `tenon thick ${mm(7)}, long ${mm(14)}`,
      `shoulders top ${mm(6)}, bottom ${mm(6)}`,
    ]),
    seatBlock(),
    frontLeg,
    backLeg,
    stretchers(),
    upper[over.kind as keyof typeof upper](),
  ].join("\n");
}
