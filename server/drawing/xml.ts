/**
 * Words put into XML.
 */

const entities: Record<string, string> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&apos;",
};

/** Text that is safe in an element or between quotes; characters that XML forbids are left out. */
export function escaped(text: string): string {
  return allowed(text).replace(/[&<>"']/g, (sign) => entities[sign]!);
}

/** Tabs and line ends become spaces; other control characters, halves of pairs and non-characters go (XML 1.0, section 2.2). */
function allowed(text: string): string {
  return [...text.replace(/[\t\r\n]/g, " ")]
    .filter((sign) => {
      const code = sign.codePointAt(0)!;
      const control = code < 0x20 || (code >= 0x7f && code < 0xa0);
      const half = code >= 0xd800 && code < 0xe000;
      return !control && !half && (code & 0xfffe) !== 0xfffe;
    })
    .join("");
}

/** A text in lines of at most so many characters, broken at spaces; what does not fit ends in an ellipsis. */
export function wrapped(text: string, most: number, lines: number): string[] {
  const made: string[] = [];
  let line = "";
  for (const word of text.split(/\s+/).filter(Boolean)) {
    if (line && line.length + 1 + word.length > most) {
      made.push(line);
      line = word;
    } else line = line ? `${line} ${word}` : word;
  }
  if (line) made.push(line);
  const kept = made.slice(0, lines);
  const cut = made.length > lines;
  return kept.map((each, index) => {
    const signs = [...each];
    const last = cut && index === lines - 1;
    return signs.length > most || last ? `${signs.slice(0, most - 1).join("")}…` : each;
  });
}
