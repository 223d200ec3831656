/** Reading numbers as written: `12`, `12.5`, `3/8`, `1 1/4`, and the single characters for fractions. */

const vulgar: Record<string, string> = {
  "\u00BC": "1/4",
  "\u00BD": "1/2",
  "\u00BE": "3/4",
  "\u2150": "1/7",
  "\u2151": "1/9",
  "\u2152": "1/10",
  "\u2153": "1/3",
  "\u2154": "2/3",
  "\u2155": "1/5",
  "\u2156": "2/5",
  "\u2157": "3/5",
  "\u2158": "4/5",
  "\u2159": "1/6",
  "\u215A": "5/6",
  "\u215B": "1/8",
  "\u215C": "3/8",
  "\u215D": "5/8",
  "\u215E": "7/8",
};

/** `1½` as the language writes it: `1 1/2`. */
export function spellOut(image: string): string {
  const sign = image.at(-1) ?? "";
  const whole = image.slice(0, -1).trim();
  const fraction = vulgar[sign] ?? sign;
  return whole === "" ? fraction : `${whole} ${fraction}`;
}

/** The number a token stands for; undefined when it is not a finite number, such as `1/0`. */
export function readNumber(image: string): number | undefined {
  const last = image.charCodeAt(image.length - 1);
  const plain = last > 0x7f ? spellOut(image) : image;
  const slash = plain.indexOf("/");
  if (slash < 0) return finite(Number(plain));
  const space = plain.search(/[ \t]/);
  const whole = space < 0 ? 0 : Number(plain.slice(0, space));
  const above = Number(plain.slice(space + 1, slash));
  return finite(whole + above / Number(plain.slice(slash + 1)));
}

function finite(number: number): number | undefined {
  return Number.isFinite(number) ? number : undefined;
}
