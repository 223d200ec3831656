/**
 * Chair texts of a wanted size: a bench of more and more bays, each bay its own posts, rails and comments.
 */

const head = `# A bench for a long landing, made by the bay.
chair "Landing bench by the bay"
units mm
sitter adult
timber european-oak moisture 10%
limit chair-too-large to 40000mm

let seat-height = 440 within 420 to 470

joint rail-tenon {
  tenon thick 1/3 of rail, long 26
  shoulders top 8, bottom 6
  mitre
  glue pva
}
`;

const BAY = 420;
/** Bays that stand side by side; more of them stand in further rows behind. */
const IN_A_ROW = 20;
const ROW = 700;

/** A bay's posts stand in front and behind, tied by a side rail and a stretcher, and to the bay before by two of each. */
function bay(index: number): string {
  const out = 210 + BAY * (index % IN_A_ROW);
  const behind = ROW * Math.floor(index / IN_A_ROW);
  const rails = index % IN_A_ROW === 0 ? acrossRails(index) : joiningRails(index);
  return `
# Bay ${index + 1}, ${out} mm out from the centre line.
post front-${index} pair {
  section 44 x 44
  foot out ${out}, back ${24 + behind}
  height seat-height - 12
}

post back-${index} pair {
  section 44 x 44
  foot out ${out}, back ${420 + behind}
  height seat-height + ${12 + (index % 7)}
}

rail side-${index} pair {
  from front-${index} to back-${index}
  section 24 x 62
  up seat-height - 16
  joined rail-tenon
}

rail low-${index} pair {
  from front-${index} to back-${index}
  section 20 x 40
  up ${150 + (index % 5)}
  joined rail-tenon
}
${rails}`;
}

const acrossRails = (index: number): string =>
  ["front", "back"]
    .map(
      (where) => `
rail ${where}-rail-${index} {
  across ${where}-${index}
  section 24 x 62
  up seat-height - 16
  joined rail-tenon
}
`,
    )
    .join("");

const joiningRails = (index: number): string =>
  ["front", "back"]
    .map(
      (where) => `
rail ${where}-rail-${index} pair {
  from ${where}-${index - 1} to ${where}-${index}
  section 24 x 62
  up seat-height - 16
  arch ${8 + (index % 4)} below   # a little relief
  joined rail-tenon
}
`,
    )
    .join("");

/** A clean chair of about so many bytes: whole bays, then a comment to fill up. */
export function chairText(bytes: number): string {
  let text = head;
  for (let index = 0; ; index++) {
    const next = bay(index);
    if (index > 0 && text.length + next.length > bytes) break;
    text += next;
    if (text.length > bytes) break;
  }
  return filled(text, bytes, (words) => `# ${words}\n`);
}

/** Text with comment lines at its end, to its size. */
export function filled(text: string, bytes: number, comment: (words: string) => string): string {
  let full = text;
  while (full.length + 40 < bytes)
    full += comment("As long as the text that it is timed beside.".slice(0, 44));
  return full;
}
