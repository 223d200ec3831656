/** The line end a text uses: that of its first line, or of the line of a place, so that lines which end otherwise stay as they are. */
export function eolOf(text: string, place = 0): string {
  const there = text.slice(place).search(/[\r\n]/);
  const at = there < 0 ? text.search(/[\r\n]/) : place + there;
  if (at < 0 || text[at] === "\n") return "\n";
  return text[at + 1] === "\n" ? "\r\n" : "\r";
}

/** Where the line of a place begins. */
export function lineStart(text: string, place: number): number {
  let at = place;
  while (at > 0 && text[at - 1] !== "\n" && text[at - 1] !== "\r") at--;
  return at;
}

/** Where the line of a place ends, its line end not counted. */
export function lineEnd(text: string, place: number): number {
  let at = place;
  while (at < text.length && text[at] !== "\n" && text[at] !== "\r") at++;
  return at;
}

/** A function that gives the number of the line of a place, counted from 1; the text is gone through once. */
export function lineCounter(text: string): (place: number) => number {
  let starts: number[] | undefined;
  return (place) => {
    if (starts === undefined) {
      starts = [0];
      for (const found of text.matchAll(/\r\n|\r|\n/g)) starts.push(found.index + found[0].length);
    }
    let low = 0;
    let high = starts.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (starts[middle]! <= place) low = middle + 1;
      else high = middle;
    }
    return low;
  };
}
